"""An address that leads nowhere is answered in plain words, and a day left empty is the next."""

import pytest
from fastapi.testclient import TestClient
from tests.web.desks import PAGE


@pytest.mark.parametrize(
    ("address", "status", "said"),
    [
        ("/nowhere", 404, "There is no such page."),
        ("/static/nothing.js", 404, "There is no such page."),
        ("/round/2027-02-30", 422, "The address of this page cannot be read."),
        ("/round/2027-04-24?days=many", 422, "The address of this page cannot be read."),
        ("/round?on=tomorrow", 422, "The address of this page cannot be read."),
    ],
)
def test_an_address_that_leads_nowhere_says_so(
    client: TestClient, address: str, status: int, said: str
) -> None:
    answer = client.get(address, headers=PAGE)
    assert answer.status_code == status
    assert said in answer.text
    assert 'href="/">To the round' in answer.text
    assert "Input should" not in answer.text
    assert "draft" not in answer.text


def test_a_program_is_told_what_it_asked_wrongly(client: TestClient) -> None:
    told = client.get("/round/2027-02-30", headers={"Accept": "application/json"}).json()
    assert told["problems"][0]["field"] == "path.on"
    assert client.get("/nowhere").json()["what"] == "There is no such page."
    assert client.post("/yards").status_code == 405


def test_a_day_that_is_left_empty_is_that_of_the_next_round(client: TestClient) -> None:
    assert client.get("/round?on=").headers["Location"] == client.get("/round").headers["Location"]
    there = client.get("/round?on=2027-05-01").headers["Location"]
    assert there == "/round/2027-05-01"
