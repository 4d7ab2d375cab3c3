"""The JSON API, by hand and by a fuzzer that reads its own description."""

from collections.abc import Iterator
from datetime import timedelta
from html import escape
from typing import Any
from uuid import UUID, uuid4

import pytest
from fastapi.testclient import TestClient
from hypothesis import HealthCheck, given, settings
from tests.demo import copied
from tests.web.desks import Clock, desk_on

from combwright.services.book.book import export
from combwright.services.demo import ON, Paths
from combwright.services.work_queue import MOST_WAITING
from combwright.terms.entries import ENTRY
from combwright.web.addresses import segment
from combwright.web.app import build
from combwright.web.desk import Desk


def visit(**fields: Any) -> dict[str, Any]:  # noqa: ANN401  (fields of an entry)
    return {"id": str(uuid4()), "kind": "visit", "on": str(ON), "colony": "Bramble", **fields}


def test_entries_come_back_as_they_went_in(client: TestClient) -> None:
    sent = visit(frames_of_bees=7.5, eggs=True, remark="calm")
    assert client.post("/api/entries", json=[sent]).json()["new"] == 1
    assert client.post("/api/entries", json=[sent]).json() | {"odd": []} == {
        "new": 0,
        "known": 1,
        "odd": [],
    }
    read = client.get("/api/entries", params={"colony": "Bramble", "since": str(ON)}).json()
    assert [ENTRY.validate_python(one) for one in read] == [ENTRY.validate_python(sent)]


def test_all_or_none(client: TestClient, desk: Desk) -> None:
    before = desk.book.now().last
    good, stranger = visit(frames_of_bees=7), visit(colony="Nobody")
    answer = client.post("/api/entries", json=[good, stranger])
    assert answer.status_code == 422
    assert "Nobody" in answer.json()["what"]
    assert desk.book.now().last == before


def test_an_id_cannot_change_its_meaning(client: TestClient) -> None:
    sent = visit(frames_of_bees=7)
    client.post("/api/entries", json=[sent])
    answer = client.post("/api/entries", json=[sent | {"frames_of_bees": 3}])
    assert answer.status_code == 422
    assert client.get("/api/entries?colony=Bramble").json()[-1]["frames_of_bees"] == 7


def test_the_round_is_the_sheet_itself(client: TestClient, desk: Desk) -> None:
    sheet = desk.rounds.sheet(ON, 7)
    assert client.get(f"/api/round/{ON}").json() == sheet.model_dump(mode="json")


def test_a_round_too_far_away_is_refused(client: TestClient) -> None:
    answer = client.get("/api/round/2040-01-01")
    assert answer.status_code == 422
    assert "400 days" in answer.json()["what"]


def test_more_rounds_than_can_wait_are_asked_for_again(client: TestClient, desk: Desk) -> None:
    waiting = [desk.rounds.begin(ON + timedelta(days=n + 1), 7) for n in range(MOST_WAITING)]
    answer = client.get(f"/api/round/{ON + timedelta(days=MOST_WAITING + 1)}")
    assert answer.status_code == 503
    assert int(answer.headers["Retry-After"]) > 0
    assert not any(one.future.cancelled() for one in waiting)


@pytest.mark.parametrize(
    "body", ['[{"frames_of_bees": NaN}]', "[" * 50_000, '{"a":' * 5000, "[1e999]", "9" * 6000]
)
def test_what_is_no_json_of_ours_is_refused_without_sending_it_back(
    client: TestClient, body: str
) -> None:
    answer = client.post("/api/entries", content=body, headers={"Content-Type": "application/json"})
    assert 400 <= answer.status_code < 500
    assert len(answer.content) < 20_000


@pytest.mark.parametrize("name", ["a/b", "..", ".", "50%", "a%2Fb", "a=2Fb", "x/why", "?#&"])
def test_a_colony_of_any_name_has_a_page(client: TestClient, name: str) -> None:
    on = str(ON)
    told = {"id": str(uuid4()), "kind": "colony", "on": on, "colony": name}
    told |= {"yard": "Alder Bank", "hive": "national timber"}
    assert client.post("/api/entries", json=[told]).status_code == 200
    listed = client.get("/yards").text
    links = [part.split('"')[0] for part in listed.split('href="')[1:]]
    assert f"/colony/{segment(name)}" in links
    shown = client.get(f"/colony/{segment(name)}", headers={"Accept": "text/html"})
    assert shown.status_code == 200
    assert f"<h1>{escape(name)}" in shown.text


def test_syrup_is_the_calculator_s(client: TestClient) -> None:
    assert client.get("/api/syrup?ratio=1&litres=10").json()["sugar_kg"] == 6.148
    assert client.get("/api/syrup?ratio=1").status_code == 422


# --- fuzzed -------------------------------------------------------------------------------------


@pytest.fixture(scope="module")
def open_house(demo: Paths, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Desk]:
    made = desk_on(copied(demo, tmp_path_factory.mktemp("fuzzed")), Clock())
    made.rounds.sheet(ON, 7)
    yield made
    made.close()


OPERATIONS = (
    "GET /api/entries",
    "POST /api/entries",
    "GET /api/noted-by",
    "GET /api/colonies",
    "GET /api/colonies/{colony}",
    "GET /api/round/{on}",
    "GET /api/syrup",
)


@pytest.fixture(scope="module")
def described(open_house: Desk) -> dict[str, Any]:
    import schemathesis  # heavy, and for these tests alone

    app = build(open_house)

    async def here(scope: Any, receive: Any, send: Any) -> None:  # noqa: ANN401
        """Let the fuzzer sit at this machine: the door knows its own client by no name."""
        host = [(b"host", b"localhost"), *(h for h in scope["headers"] if h[0] != b"host")]
        await app({**scope, "headers": host, "client": ("127.0.0.1", 1)}, receive, send)

    schema = schemathesis.openapi.from_asgi("/openapi.json", here)
    operations: list[Any] = [found.ok() for found in list[Any](schema.get_all_operations())]
    return {one.label: one for one in operations}


def test_every_operation_is_fuzzed(described: dict[str, Any]) -> None:
    assert set(described) == set(OPERATIONS)


# any name may be asked for, and nothing is asked of the list: those two cannot be asked wrongly
RIGHT = [(one, "positive") for one in OPERATIONS]
WRONG = [(one, "negative") for one in OPERATIONS if "colonies" not in one]


@pytest.mark.parametrize(("operation", "mode"), [*RIGHT, *WRONG])
def test_whatever_is_sent_no_note_is_lost(
    open_house: Desk, described: dict[str, Any], operation: str, mode: str
) -> None:
    """Requests as described, and ones that break the description."""
    from schemathesis import GenerationMode
    from schemathesis.checks import not_a_server_error

    @given(case=described[operation].as_strategy(generation_mode=GenerationMode(mode)))
    @settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))
    def fuzzed(case: Any) -> None:  # noqa: ANN401
        before = [each.id for each in open_house.book.now().history]
        answer = case.call()
        case.validate_response(answer, checks=[not_a_server_error])
        after = [each.id for each in open_house.book.now().history]
        assert after[: len(before)] == before
        if case.method == "POST" and answer.status_code == 200:
            assert {UUID(one["id"]) for one in case.body} <= set(after)
        else:
            assert len(after) == len(before)

    fuzzed()


@pytest.mark.parametrize("form", ["csv", "json"])
def test_after_all_that_the_book_can_still_be_exported(open_house: Desk, form: str) -> None:
    assert export(open_house.book, form)  # type: ignore[arg-type]
