import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from uuid import UUID, uuid4

import pytest
from fastapi.testclient import TestClient
from tests.services.book.test_photos import picture
from tests.web.desks import PAGE, ROUND, planned

from combwright.services.demo import ON
from combwright.services.rounds.planned_note import as_advised
from combwright.terms.entries import Change, Feed, Stack, Visit
from combwright.web.desk import Desk

JSON = {"Accept": "application/json"}


def noted(desk: Desk, colony: str) -> list[object]:
    return [each for each in desk.book.now().of(colony) if each.on == ON]


# A feed, whatever the plan of the day asks for.
FED = {"feed": "syrup", "feed_g": "600", "feed_sugar": "0.6", "feeder": ""}


def test_done_as_planned_is_a_visit_the_feed_and_the_stack(client: TestClient, desk: Desk) -> None:
    fields = planned(desk, "Bramble") | FED
    assert client.post("/note", data=fields, headers=JSON).json()["new"] == 3
    assert {type(each) for each in noted(desk, "Bramble")} == {Visit, Feed, Stack}


def test_a_note_sent_twice_is_kept_once(client: TestClient, desk: Desk) -> None:
    fields = planned(desk, "Bramble") | FED | {"frames_of_bees": "8,5", "eggs": "yes"}
    answers = [client.post("/note", data=fields, headers=JSON) for _ in range(2)]
    assert [answer.json()["new"] for answer in answers] == [3, 0]
    visit = next(each for each in noted(desk, "Bramble") if isinstance(each, Visit))
    assert (visit.frames_of_bees, visit.eggs) == (8.5, True)


def test_a_plain_form_is_answered_with_the_next_colony(client: TestClient, desk: Desk) -> None:
    fields = planned(desk, "Bramble") | {"following": "Teasel"}
    answer = client.post("/note", data=fields, headers=PAGE)
    assert answer.status_code == 303
    assert "/hive/Teasel" in answer.headers["Location"]


def test_supers_that_came_off_are_counted_once(client: TestClient, desk: Desk) -> None:
    before = planned(desk, "Bramble") | {"supers": "2"}
    after = planned(desk, "Bramble") | {"supers": "1", "honey_kg": "9", "harvest_supers": "1"}
    for fields in (before, after):
        assert client.post("/note", data=fields, headers=JSON).status_code == 200
    assert desk.book.now().standings["Bramble"].supers == 1


def test_a_feeder_taken_off_is_an_entry(client: TestClient, desk: Desk) -> None:
    fields = planned(desk, "Bramble") | FED | {"feeder": "-1"}
    assert client.post("/note", data=fields, headers=JSON).json()["new"] == 4
    off = [each for each in noted(desk, "Bramble") if isinstance(each, Change)]
    assert [(each.part, each.count) for each in off] == [("feeder", -1)]


def test_a_feeder_put_on_is_refused_plainly(client: TestClient, desk: Desk) -> None:
    fields = planned(desk, "Bramble") | {"feeder": "1"}
    answer = client.post("/note", data=fields, headers=JSON)
    assert answer.status_code == 422
    assert "note what was put into one as a feed" in answer.text


@pytest.mark.parametrize(("more", "feeder"), [(0, ""), (1, "-1")])
def test_a_super_put_on_as_planned_takes_the_feeder_off(desk: Desk, more: int, feeder: str) -> None:
    part = desk.rounds.sheet(ON, 7).colonies[0]
    supers = part.set_up_now.supers + more
    advised = part.model_copy(update={"set_up": part.set_up.model_copy(update={"supers": supers})})
    assert as_advised(advised, ON)["feeder"] == feeder


@pytest.mark.parametrize(
    ("field", "value", "right"),
    [
        ("frames_of_bees", "99", "Give 40 or less."),
        ("frames_of_brood", "many", "Give a number, such as 4.5."),
        ("frames", "3.5", "Give a whole number."),
        ("feed_g", "-5", "more than 0 g"),
        ("eggs", "perhaps", "Give yes or no."),
        ("queen_cells", "lots", "Choose"),
    ],
)
def test_an_impossible_value_is_explained_beside_its_field(
    client: TestClient, desk: Desk, field: str, value: str, right: str
) -> None:
    fields = planned(desk, "Bramble") | {field: value}
    answer = client.post("/note", data=fields, headers=JSON)
    assert answer.status_code == 422
    problem = next(one for one in answer.json()["problems"] if one["field"] == field)
    assert right in problem["remedy"]
    assert not noted(desk, "Bramble")
    page = client.post("/note", data=fields, headers=PAGE)
    assert f'id="fault-{field}">' in page.text
    assert f'value="{value}"' in page.text or field in {"eggs", "queen_cells"}


def test_every_wrong_field_is_named_at_once(client: TestClient, desk: Desk) -> None:
    fields = planned(desk, "Bramble") | {"frames_of_bees": "99", "tray_mites": "3"}
    told = client.post("/note", data=fields, headers=JSON).json()
    assert {one["field"] for one in told["problems"]} == {"frames_of_bees", "tray_days"}


def test_two_notes_of_one_day_that_agree_are_both_kept(client: TestClient, desk: Desk) -> None:
    first = planned(desk, "Bramble") | FED | {"frames_of_bees": "8"}
    second = planned(desk, "Bramble") | FED | {"frames_of_brood": "4"}
    assert client.post("/note", data=first, headers=JSON).status_code == 200
    answer = client.post("/note", data=second, headers=JSON)
    assert answer.status_code == 200
    assert "fed syrup already" in answer.json()["odd"][0]


def test_two_notes_of_one_day_that_contradict_are_not_both_kept(
    client: TestClient, desk: Desk
) -> None:
    first = planned(desk, "Bramble") | {"frames_of_bees": "8"}
    second = planned(desk, "Bramble") | {"frames_of_bees": "5"}
    client.post("/note", data=first, headers=JSON)
    answer = client.post("/note", data=second, headers=JSON)
    assert answer.status_code == 422
    assert answer.json()["problems"][0]["field"] == "frames_of_bees"
    assert "another note" in answer.json()["what"]


def test_undo_strikes_a_note_out_and_can_be_sent_twice(client: TestClient, desk: Desk) -> None:
    fields = planned(desk, "Bramble") | FED
    client.post("/note", data=fields, headers=JSON)
    undoing = {"undoes": fields["note"], "on": str(ON)}
    answers = [client.post("/note/undo", data=undoing, headers=JSON) for _ in range(2)]
    assert [answer.json()["struck"] for answer in answers] == [3, 0]
    assert not noted(desk, "Bramble")
    assert len(desk.book.now().history) == len({each.id for each in desk.book.now().history})


def test_undoing_what_never_came_is_no_matter(client: TestClient) -> None:
    answer = client.post("/note/undo", data={"undoes": str(uuid4()), "on": str(ON)}, headers=JSON)
    assert answer.json()["struck"] == 0


@contextmanager
def busy(book: str, monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Another program writes to the book, longer than anybody waits for it."""
    monkeypatch.setattr("combwright.records.store.sqlite_file.BUSY_TIMEOUT_MS", 20)
    with closing(sqlite3.connect(book, isolation_level=None)) as other:
        other.execute("BEGIN IMMEDIATE")
        yield


def test_a_busy_book_asks_to_send_again_and_keeps_what_was_typed(
    client: TestClient, desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    fields = planned(desk, "Bramble") | {"frames_of_bees": "7"}
    with busy(desk.book.place, monkeypatch):
        answer = client.post("/note", data=fields, headers=JSON)
        page = client.post("/note", data=fields, headers=PAGE)
    assert (answer.status_code, answer.headers["Retry-After"]) == (503, "10")
    assert "Another program is writing" in answer.json()["what"]
    assert page.status_code == 503
    assert 'name="frames_of_bees" value="7"' in page.text
    assert client.post("/note", data=fields, headers=JSON).status_code == 200


def test_an_odd_value_is_shown_to_a_plain_form_as_well(client: TestClient, desk: Desk) -> None:
    fields = planned(desk, "Bramble") | {"frames_of_bees": "2", "frames_of_brood": "6"}
    answer = client.post("/note", data=fields, headers=PAGE)
    assert answer.status_code == 200
    assert "second look" in answer.text


def test_a_photo_comes_with_its_note(client: TestClient, desk: Desk) -> None:
    fields = planned(desk, "Bramble")
    client.post("/note", data=fields, files={"photo": ("hive.jpg", picture())}, headers=JSON)
    visit = next(each for each in noted(desk, "Bramble") if isinstance(each, Visit))
    kept = client.get(f"/photo/{visit.id}")
    assert kept.headers["Content-Type"] == "image/jpeg"
    assert b"Snapper" not in kept.content
    assert f"/photo/{visit.id}" in client.get("/colony/Bramble").text


def test_what_is_no_photo_is_refused_with_its_note(client: TestClient, desk: Desk) -> None:
    page = {"photo": ("hive.png", b"<script>alert(1)</script>")}
    answer = client.post("/note", data=planned(desk, "Bramble"), files=page, headers=JSON)
    assert answer.status_code == 422
    assert answer.json()["problems"][0]["field"] == "photo"
    assert not noted(desk, "Bramble")


def test_the_form_of_an_older_version_is_understood(client: TestClient) -> None:
    """An old phone cache lacks fields and has ones that are gone: neither loses the note."""
    fields = {
        "note": str(uuid4()),
        "on": str(ON),
        "colony": "Bramble",
        "frames_of_bees": "7",
        "a_field_of_long_ago": "yes",
    }
    assert client.post("/note", data=fields, headers=JSON).json()["new"] == 1


def test_a_note_without_an_id_is_refused(client: TestClient) -> None:
    fields = {"on": str(ON), "colony": "Bramble"}
    assert client.post("/note", data=fields, headers=JSON).json()["problems"][0]["field"] == "note"


def test_the_plan_of_a_branch_fills_the_form(client: TestClient, desk: Desk) -> None:
    sheet = desk.rounds.sheet(ON, 7)
    colony, number, branch = next(
        (each, i, branch)
        for each in sheet.colonies
        for i, branch in enumerate(each.branches)
        if branch.portion and branch.portion.syrup_g != each.portion.syrup_g
    )
    text = client.get(f"{ROUND}/note/{colony.colony}?found={number}").text
    assert f'name="feed_g" value="{branch.portion and branch.portion.syrup_g}"' in text


def test_notes_of_the_day_leave_its_round_alone(client: TestClient, desk: Desk) -> None:
    before = desk.rounds.begin(ON, 7)
    client.post("/note", data=planned(desk, "Bramble"), headers=JSON)
    assert desk.rounds.begin(ON, 7) is before


def test_ids_of_a_note_s_entries_follow_from_its_own(client: TestClient, desk: Desk) -> None:
    fields = planned(desk, "Bramble")
    client.post("/note", data=fields, headers=JSON)
    assert all(isinstance(getattr(each, "id", None), UUID) for each in noted(desk, "Bramble"))
    assert "noted" in client.get(ROUND).text
