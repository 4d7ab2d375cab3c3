from io import BytesIO
from uuid import uuid4

import pytest
from fastapi.testclient import TestClient
from PIL import Image
from tests.web.desks import PAGE

from combwright.services.book.entry_form import FORMS
from combwright.services.demo import ON
from combwright.terms.entries import Queen
from combwright.web.desk import Desk

FILLED: dict[str, dict[str, str]] = {
    "yard": {"yard": "Home", "climate": "Cork Airport", "latitude": "51.9", "longitude": "-8.5"},
    "colony": {"colony": "Fern", "yard": "Alder Bank", "hive": "national timber"},
    "split": {
        "colony": "Bramble",
        "new_colony": "Fern",
        "hive": "nuc 6 polystyrene",
        "frames_of_bees": "2",
        "frames_of_brood": "1",
        "goes_with": "cell",
    },
    "unite": {"colony": "Clary", "into": "Sorrel"},
    "move": {"colony": "Clary", "yard": "Mill Orchard"},
    "end": {"colony": "Clary", "reason": "sold"},
    "queen": {"colony": "Clary", "event": "marked", "queen_year": "2027"},
    "kit": {"item": "super", "count": "7"},
    "limit": {"harm": "no room", "percent": "5"},
    "price": {"of": "honey", "amount": "9.5"},
    "aim": {"aim": "nucs first"},
    "wording": {"place": "apiary"},
    "counting": {"brood": "combs with brood", "bees": "seams"},
    "batch": {"batch": "B9", "day_0": "2027-05-10", "begun": "30", "colony": "Bramble"},
    "batch counts": {"batch": "B9", "accepted": "24", "on": "2027-05-11"},
    "own queen": {"queen": "Q9", "year": "2027", "mark": "yellow", "clipped": "yes"},
    "own queen news": {"queen": "Q9", "event": "laying", "pattern": "solid"},
    "order": {"order": "A9", "customer": "Byrne", "count": "2", "wanted_by": "2027-06-20"},
    "order news": {"order": "A9", "event": "promised", "week": "2027-06-14", "percent": "90"},
    "product": {"product": "Example strip", "withdrawal_days": "0"},
    "purchase": {"product": "Example formic pads", "quantity": "10", "unit": "strips"},
    "disposal": {
        "product": "Example formic pads",
        "quantity": "2",
        "unit": "strips",
        "how": "taken back to the supplier",
    },
    "honey batch": {"honey": "Spring", "kg": "40", "reading": "18.4"},
    "honey source": {"honey": "Spring", "yard": "Alder Bank", "supers": "3", "kg": "41"},
    "jar run": {
        "lot": "L27114-1",
        "honey": "Spring",
        "jars": "50",
        "jar_g": "340",
        "best_before": "2029-12-31",
        "shows": "year",
    },
    "jar weights": {"lot": "L27114-1", "weights": "341 340 340.5"},
    "honey sale": {"lot": "L27114-1", "jars": "12", "buyer": "Example Stores"},
    "keeper": {"keeper": "A. Keeper", "address": "1 Main Street", "country": "IE"},
    "bees sold": {
        "sale": "9",
        "buyer": "Byrne",
        "address": "3 Main Street",
        "what": "queen",
        "yard": "Alder Bank",
    },
    "movement": {"what": "brood combs", "from_yard": "Alder Bank", "yard": "Mill Orchard"},
    "scale reading": {"colony": "Clary", "weight_kg": "31.4"},
    "suspicion": {"yard": "Alder Bank", "of": "European foulbrood", "state": "suspected"},
}
BEFORE = {
    "batch counts": ("batch",),
    "own queen news": ("own queen",),
    "order news": ("order",),
    "honey source": ("honey batch",),
    "jar run": ("honey batch",),
    "jar weights": ("honey batch", "jar run"),
    "honey sale": ("honey batch", "jar run"),
}


def enter(client: TestClient, kind: str, fields: dict[str, str]) -> tuple[int, str]:
    told = {"id": str(uuid4()), "on": str(ON), **fields}
    answer = client.post(f"/enter/{kind}", data=told, headers=PAGE)
    return answer.status_code, answer.text


def test_there_is_a_case_for_every_form() -> None:
    assert FILLED.keys() == FORMS.keys()


@pytest.mark.parametrize("kind", FORMS)
def test_a_form_becomes_an_entry(client: TestClient, desk: Desk, kind: str) -> None:
    assert client.get(f"/enter/{kind}").status_code == 200
    for first in BEFORE.get(kind, ()):
        assert enter(client, first, FILLED[first])[0] == 303
    before = desk.book.now().last
    assert enter(client, kind, FILLED[kind])[0] == 303
    assert desk.book.now().last == before + 1


@pytest.mark.parametrize("kind", FORMS)
def test_an_empty_form_says_what_is_missing_beside_its_field(
    client: TestClient, desk: Desk, kind: str
) -> None:
    before = desk.book.now().last
    status, text = enter(client, kind, {})
    assert status == 422
    assert "is missing." in text
    assert desk.book.now().last == before


def test_the_photo_of_a_label_is_kept_and_found_again(client: TestClient, desk: Desk) -> None:
    made = BytesIO()
    Image.new("RGB", (40, 30), "orange").save(made, "PNG")
    told = {"id": str(uuid4()), "on": "2027-04-24", **FILLED["product"]}

    def sent(content: bytes) -> int:
        files = {"photo": ("label.png", content, "image/png")}
        return client.post("/enter/product", data=told, files=files, headers=PAGE).status_code

    before = desk.book.now().last
    assert (sent(b"no photo"), desk.book.now().last) == (422, before)
    assert sent(made.getvalue()) == 303
    address = f"/photo/{told['id']}"
    for page in (
        "/find?photos=true",
        "/find?words=example+strip&on=2027-04-24",
        f"/mend/{told['id']}",
    ):
        assert address in client.get(page).text
    assert client.get(address).headers["content-type"] == "image/jpeg"
    assert client.get("/find?on=2027-13-40").status_code == 422


def test_a_name_that_is_taken_is_refused(client: TestClient) -> None:
    fields = {"colony": "Bramble", "yard": "Alder Bank", "hive": "national timber"}
    status, text = enter(client, "colony", fields)
    assert status == 422
    assert "There is a colony “Bramble” already" in text


def test_the_first_yard_and_colony_of_an_empty_book(client: TestClient, desk: Desk) -> None:
    assert enter(client, "yard", FILLED["yard"])[0] == 303
    assert "Home" in client.get("/yards").text
    assert desk.book.now().yards["Home"].latitude == 51.9


@pytest.mark.parametrize(
    ("kind", "told", "beside", "words"),
    [
        ("batch", {"day_0": ""}, "day_0", "missing"),
        ("batch counts", {"accepted": "31"}, "accepted", "31 accepted, but only 30 begun"),
        ("order news", {"week": "2027-04-12"}, "week", "was over on 24 April 2027"),
    ],
)
def test_batches_and_promises_that_cannot_be_are_refused_beside_their_field(
    client: TestClient, kind: str, told: dict[str, str], beside: str, words: str
) -> None:
    for needed in BEFORE.get(kind, ()):
        assert enter(client, needed, FILLED[needed])[0] == 303
    status, text = enter(client, kind, FILLED[kind] | told)
    assert status == 422
    at = text.index(f'id="fault-{beside}">')
    assert words in text[at : at + 300]


@pytest.mark.parametrize(
    ("told", "beside", "words"),
    [
        ({"wanted_by": "2027-04-17"}, "wanted_by", "was over when it was ordered"),
        ({"frames": "12"}, "frames", "more than a nuc box holds"),
        ({"price": "0"}, "price", "more than 0"),
    ],
)
def test_an_order_that_cannot_be_is_refused_beside_its_field(
    client: TestClient, told: dict[str, str], beside: str, words: str
) -> None:
    status, text = enter(client, "order", FILLED["order"] | told)
    assert status == 422
    at = text.index(f'id="fault-{beside}">')
    assert words in text[at : at + 300]


def test_a_queen_with_a_name_that_is_lost_leaves_her_colony_without_one(
    client: TestClient, desk: Desk
) -> None:
    news = {"queen": "White 7", "event": "lost"}
    assert enter(client, "own queen news", news)[0] == 303
    (noted,) = [each for each in desk.book.now().on(ON) if isinstance(each, Queen)]
    assert (noted.colony, noted.event) == ("Bramble", "lost")
    assert desk.book.now().queens["White 7"].is_gone


def test_a_buyer_is_deleted_after_a_warning(client: TestClient, desk: Desk) -> None:
    order = FILLED["order"] | {"customer": "Devlin"}
    assert enter(client, "order", order)[0] == 303
    gone = {"order": "A9", "event": "cancelled"}
    assert enter(client, "order news", gone)[0] == 303
    assert "Devlin" in client.get("/buyers").text
    assert "cannot be had again" in client.get("/buyers/delete?name=Devlin").text
    done = client.post("/buyers/delete", data={"name": "Devlin"}, headers=PAGE)
    assert (done.status_code, done.headers["location"]) == (303, "/buyers")
    assert "Devlin" not in client.get("/buyers").text
    assert desk.book.now().orders["A9"].customer == "(deleted)"
    kept = client.post("/buyers/delete", data={"name": "Ryan"}, headers=PAGE)
    assert (kept.status_code, "until 13 June 2031" in kept.text) == (422, True)
