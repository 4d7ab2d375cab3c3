"""The first day: from an empty folder to a sheet for three colonies."""

import re
from collections.abc import Iterator
from pathlib import Path
from uuid import uuid4

import pytest
from fastapi.testclient import TestClient
from tests.demo import copied
from tests.web.desks import PAGE, Clock, client_of, desk_on

from combwright.services.demo import Paths
from combwright.terms.entries import Colony, Stack, Visit, Yard
from combwright.web.desk import Desk

TODAY = "2027-04-24"
SEEN = ("colony", "frames_of_bees", "frames_of_brood", "frames_of_stores")
ROWS = {
    f"{name}-{row[0]}": value
    for row in ("1743", "2522", "3311")
    for name, value in zip(SEEN, row, strict=True)
}
HIVES = {f"hive-{number}": "national timber" for number in (1, 2, 3)}
TABLE = {"id": str(uuid4()), "yard": "Home", "place": "Bantry", **ROWS, **HIVES, "frames-1": "11"}


@pytest.fixture
def empty(tmp_path: Path) -> Iterator[Desk]:
    made = desk_on(tmp_path / "own.book", Clock())
    yield made
    made.close()


def test_an_empty_book_leads_to_its_beginning(empty: Desk) -> None:
    client = client_of(empty)
    assert client.get("/").headers["Location"] == "/begin"
    text = client.get("/begin", headers=PAGE).text
    assert "Look around in an example" in text
    assert "Begin my own" in text


def test_the_first_sheet_comes_on_the_same_day(empty: Desk) -> None:
    client = client_of(empty)
    answers = [client.post("/begin", data=TABLE, headers=PAGE) for _ in range(2)]
    assert {answer.headers["Location"] for answer in answers} == {f"/round/{TODAY}"}
    entries = empty.book.now().entries
    kinds = [type(each) for each in entries]
    assert [kinds.count(kind) for kind in (Yard, Colony, Visit, Stack)] == [1, 3, 3, 1]
    yard = next(each for each in entries if isinstance(each, Yard))
    assert (yard.latitude, yard.longitude, yard.climate) == (51.68, -9.45, "Valentia Observatory")

    sheet = empty.rounds.sheet(empty.today, 7)
    bees = {each.colony: each.expected.frames_of_bees for each in sheet.colonies}
    assert bees["1"].mid > bees["2"].mid > bees["3"].mid
    assert all(
        band.low <= seen <= band.high for band, seen in zip(bees.values(), (7, 5, 3), strict=True)
    )
    assert {each.last_visit for each in sheet.colonies} == {empty.today}
    text = client.get(f"/round/{TODAY}", headers=PAGE).text
    assert text.count("<li data-colony") == 3
    assert "a count of mites" in text
    assert "frames in the box of 2, 3" in text


def test_what_is_done_on_the_first_day_leaves_its_sheet_alone(empty: Desk) -> None:
    client = client_of(empty)
    client.post("/begin", data=TABLE, headers=PAGE)
    before = empty.rounds.begin(empty.today, 7)
    note = {"note": str(uuid4()), "on": TODAY, "colony": "1", "feed": "syrup", "feed_g": "700"}
    assert (
        client.post("/note", data=note, headers={"Accept": "application/json"}).json()["new"] == 2
    )
    assert empty.rounds.begin(empty.today, 7) is before


@pytest.mark.parametrize(
    ("change", "field", "said"),
    [
        ({"place": "Nowhereville"}, "place", "No place “Nowhereville” is known"),
        ({"place": "Newport"}, "place", "Choose one: Newport,"),
        ({"frames_of_bees-2": "99"}, "frames_of_bees-2", "Give 40 or less."),
        ({"colony-3": "1"}, "colony-3", "1"),
        ({"yard": ""}, "yard", "Name of the yard is missing."),
        (dict.fromkeys([*ROWS, "frames-1"], ""), "colony-1", "No colony is named."),
        ({"colony-2": ""}, "colony-2", "This row has no name."),
        ({"place": "", "latitude": "200", "longitude": "1"}, "latitude", "Give 90 ° or less."),
    ],
)
def test_what_is_wrong_stands_beside_its_field(
    empty: Desk, change: dict[str, str], field: str, said: str
) -> None:
    answer = client_of(empty).post("/begin", data=TABLE | change, headers=PAGE)
    assert answer.status_code == 422
    fault = re.search(rf'id="fault-{field}">([^<]*)<', answer.text)
    assert fault is not None
    assert said in fault[1]
    assert not empty.book.now().entries


def test_all_that_is_wrong_is_told_at_once_and_nothing_typed_is_lost(empty: Desk) -> None:
    """Also what was seen at a colony without a name, which was left out without a word."""
    wrong = {"place": "Nowhereville", "frames_of_bees-1": "seven", "colony-3": "", "frames-2": "99"}
    answer = client_of(empty).post("/begin", data=TABLE | wrong, headers=PAGE)
    assert answer.status_code == 422
    told = set(re.findall(r'id="fault-([\w-]+)">', answer.text))
    assert told == {"place", "frames_of_bees-1", "frames-2", "colony-3"}
    typed = {name: value for name, value in (TABLE | wrong).items() if value and "hive" not in name}
    for name, value in typed.items():
        assert f'name="{name}" value="{value}"' in answer.text, name
    assert not empty.book.now().entries


def test_what_is_odd_is_worth_a_second_look_before_the_first_sheet(empty: Desk) -> None:
    client = client_of(empty)
    answer = client.post("/begin", data=TABLE | {"frames_of_brood-3": "9"}, headers=PAGE)
    assert answer.status_code == 200
    assert "Worth a second look" in answer.text
    assert f'href="/round/{TODAY}">It is so' in answer.text
    (mend,) = re.findall(r'href="([^"]+)">Put it right', answer.text)
    assert "frames of brood 9" in client.get(mend, headers=PAGE).text


def test_more_rows_keep_what_was_typed(empty: Desk) -> None:
    """Without a script, which adds them on the page."""
    answer = client_of(empty).post("/begin", data=TABLE | {"more": "6"}, headers=PAGE)
    assert answer.status_code == 200
    assert 'id="f-colony-6"' in answer.text
    assert 'name="place" value="Bantry"' in answer.text
    assert 'name="frames_of_bees-2" value="5"' in answer.text
    assert not empty.book.now().entries


def test_places_are_found_while_they_are_typed(empty: Desk) -> None:
    found = client_of(empty).get("/places?words=athl").json()
    assert found[0] == "Athlone, Ireland, Leinster (53.42, -7.94)"


def test_more_colonies_join_a_yard_in_the_hive_used_last(client: TestClient, desk: Desk) -> None:
    text = client.get("/begin", headers=PAGE).text
    assert "Look around" not in text
    table = {"id": str(uuid4()), "yard": "Mill Orchard", "colony-1": "Fern", "hive-1": "nuc 5 ply"}
    assert client.post("/begin", data=table, headers=PAGE).status_code == 303
    assert desk.book.now().colony("Fern").yard == "Mill Orchard"
    assert "<option selected>nuc 5 ply" in client.get("/begin", headers=PAGE).text
    assert 'value="nuc 5 ply" selected' in client.get("/enter/colony", headers=PAGE).text


def test_an_example_lies_beside_the_own_book(empty: Desk, demo: Paths) -> None:
    folder = empty.book.beside("example")
    folder.mkdir()
    copied(demo, folder).rename(folder / "demo.book")
    client = client_of(empty)
    assert client.post("/example", headers=PAGE).status_code == 303
    assert "Bramble" in client.get("/yards").text
    assert client.post("/example/leave", headers=PAGE).headers["Location"] == "/begin"
    assert "Bramble" not in client.get("/yards").text
    assert not empty.book.now().entries


def test_a_note_never_makes_the_day_jump(client: TestClient) -> None:
    note = {"note": str(uuid4()), "on": TODAY, "colony": "Bramble", "frames_of_bees": "7"}
    client.get(f"/bench/{TODAY}")
    assert client.get("/").headers["Location"] == f"/round/{TODAY}"
    client.post("/note", data=note, headers={"Accept": "application/json"})
    assert client.get("/").headers["Location"] == f"/round/{TODAY}"
