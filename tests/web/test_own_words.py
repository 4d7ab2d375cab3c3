"""The keeper's own word and own order, on page."""

from uuid import uuid4

from fastapi.testclient import TestClient
from tests.web.desks import PAGE


def test_apiary_stands_on_every_page(client: TestClient) -> None:
    assert "Yards and colonies" in client.get("/yards").text
    told = {"id": str(uuid4()), "on": "2027-04-24", "place": "apiary"}
    assert client.post("/enter/wording", data=told).status_code == 303
    assert "Apiaries and colonies" in client.get("/yards").text
    settings = client.get("/settings").text
    assert "a place with colonies is “apiary”" in settings
    assert "Choose “yard” or “apiary”" in settings
    assert 'name="yard"' in settings
    wrong = client.post(
        "/enter/move",
        data={**told, "id": str(uuid4()), "colony": "Clary", "yard": "Nowhere"},
        headers=PAGE,
    )
    assert "no apiary “Nowhere”" in wrong.text
    assert "no apiary" in client.get("/history?yard=Nowhere").json()["what"]


def test_a_yard_is_changed_from_the_list_with_what_is_known_of_it(client: TestClient) -> None:
    page = client.get("/yards").text
    address = page.split('href="/enter/yard?yard=Alder', 1)[1].split('"', 1)[0]
    form = client.get(f"/enter/yard?yard=Alder{address}".replace("&amp;", "&")).text
    assert 'value="Alder Bank"' in form
    assert 'name="stop"' in form
    told = {"id": str(uuid4()), "on": "2027-04-24", "yard": "Quarry Field", "stop": "1"}
    assert client.post("/enter/yard", data=told).status_code == 303
    page = client.get("/yards").text
    assert page.index("Quarry Field") < page.index("Alder Bank")
    assert "stop 1 on the round" in page
