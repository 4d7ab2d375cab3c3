import re
from collections.abc import Iterator
from concurrent.futures import Future
from datetime import timedelta
from pathlib import Path
from uuid import uuid4

import pytest
from fastapi.testclient import TestClient
from tests.demo import copied
from tests.web.desks import PAGE, ROUND, client_of, desk_on, desk_with_round

from combwright.planning.at_every_colony import everywhere
from combwright.records.store.book_handle import Book
from combwright.records.store.kept_entries import keep
from combwright.services.demo import ON, Paths
from combwright.services.demo_colonies import CASTS
from combwright.services.progress import BUSY, PLANNING, Step
from combwright.terms.entries import Visit
from combwright.web.addresses import segment
from combwright.web.desk import Desk

PAGES = (
    *(f"{ROUND}/hive/Bramble", f"{ROUND}/found", "/key", "/begin"),
    *(ROUND, f"{ROUND}/note/Bramble", f"/bench/{ON}", "/yards", "/colony/Bramble", "/kit"),
    *(
        "/colony/Bramble/why",
        "/colony/Bramble/ahead",
        "/colony/Bramble/what-if?feed_g=1000",
        "/settings",
        "/more",
    ),
    *(
        "/evidence",
        "/evidence/syrup",
        "/numbers",
        "/numbers/simulation.begin",
        "/worth",
        "/why",
        "/glossary",
        "/syrup",
        "/waiting",
    ),
    *(
        "/supply",
        "/enter/order",
        "/enter/order%20news",
        "/enter/batch",
        "/enter/own%20queen",
        "/register",
        "/honey",
        "/history?colony=Bramble",
        "/history?yard=Alder%20Bank&year=2027",
        "/import",
        "/bees",
        "/buyers",
        "/buyers/delete?name=Ryan",
        "/bees/register",
        "/honey/trace?of=Bramble",
        "/find?words=bramble",
        "/people",
        "/own-login",
    ),
    *("/without-signal", "/login", "/enter/yard", "/enter/colony", "/enter/split", "/enter/kit"),
)

LIGHT = 40_000  # bytes of a page for one bar of signal


@pytest.fixture(scope="module")
def desk(demo: Paths, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Desk]:
    """One desk for all tests here: they only look."""
    yield from desk_with_round(demo, tmp_path_factory.mktemp("pages"))


@pytest.fixture(scope="module")
def client(desk: Desk) -> TestClient:
    return client_of(desk)


@pytest.mark.usefixtures("some_evidence")
@pytest.mark.parametrize("path", PAGES)
def test_a_page_is_shown_under_the_strict_policy(client: TestClient, path: str) -> None:
    answer = client.get(path, headers=PAGE)
    assert answer.status_code == 200
    assert "default-src 'none'" in answer.headers["Content-Security-Policy"]
    assert not re.search(r"<style|\sstyle=|<script>|\son[a-z]+=", answer.text)


def test_the_round_names_every_colony_in_working_order(client: TestClient, desk: Desk) -> None:
    text = client.get(ROUND).text
    sheet = desk.rounds.sheet(ON, 7)
    places = [text.index(f'<li data-colony="{each.colony}"') for each in sheet.colonies]
    assert len(places) == len(CASTS)
    assert places == sorted(places)


@pytest.mark.parametrize("path", [f"{ROUND}?yard=%0A", "/colony/a%0Ab", "/enter/%0A", "/mend/%0A"])
def test_a_line_s_end_in_an_address_is_refused_as_any_other_sign(
    client: TestClient, path: str
) -> None:
    client.get(f"/api{ROUND}")
    assert 400 <= client.get(path, headers=PAGE).status_code < 500


def test_the_first_page_leads_to_the_next_round(client: TestClient) -> None:
    assert client.get("/").headers["Location"] == ROUND


def test_a_round_that_is_worked_out_says_how_far_it_is_and_others_wait_for_it(
    client: TestClient, desk: Desk
) -> None:
    answer = client.get(f"{ROUND}?days=23")
    assert answer.status_code == 202
    assert "Working out" in answer.text
    assert '<noscript><meta http-equiv="refresh"' in answer.text
    told = client.get(f"{ROUND}/progress?days=23").json()
    assert set(told) == {"doing", "done", "total", "counted", "ready", "planned"}
    for path in (f"{ROUND}/note/Bramble", f"/bench/{ON}"):  # each needs its round
        answer = client.get(f"{path}?days=24")
        assert answer.status_code == 202
        assert f'data-progress="{ROUND}/progress?days=24"' in answer.text
    first, second = (desk.rounds.begin(ON, days) for days in (23, 24))
    assert first.step.doing != BUSY
    assert second.step == Step(BUSY)
    second.future.result()
    assert second.step == Step(PLANNING, 16, 16)
    told = client.get(f"{ROUND}/progress?days=23").json()
    assert told == {
        "doing": "Planning",
        "done": 16,
        "total": 16,
        "counted": "16 of 16 colonies",
        "ready": True,
        "planned": [],
    }


def test_a_hive_that_is_planned_can_be_read_while_the_others_are_in_work(
    client: TestClient, desk: Desk
) -> None:
    working = desk.rounds.begin(ON, 23)
    whole = working.future.result()
    working.future = Future()  # as it is before the last of them is ready
    name = whole.colonies[0].colony
    wait = client.get(f"{ROUND}?days=23").text
    assert f'href="{ROUND}/hive/{segment(name)}?days=23"' in wait
    told = client.get(f"{ROUND}/progress?days=23").json()
    assert [colony for colony, _ in told["planned"]] == [each.colony for each in whole.colonies]
    hive = client.get(f"{ROUND}/hive/{segment(name)}?days=23")
    assert hive.status_code == 200
    assert name in hive.text
    working.future.set_result(whole)


def test_a_colony_that_never_came_is_told_of_at_the_top(demo: Paths, tmp_path: Path) -> None:
    book = copied(demo, tmp_path)
    with Book(book).writing() as db:
        keep(db, [Visit(id=uuid4(), on=ON - timedelta(days=7), colony="Brambel", eggs=True)])
    desk = desk_on(book)
    desk.rounds.sheet(ON, 7)
    text = client_of(desk).get(ROUND).text
    desk.close()
    assert text.count("if “Bramble” is meant") == 1
    assert text.index("“Brambel” is noted") < text.index('<nav class="order')


def test_a_day_before_the_first_note_is_explained(client: TestClient) -> None:
    assert "from the first note on" in client.get("/round/2020-01-01").text


def test_one_yard_is_planned_with_its_own_bench_list(client: TestClient, desk: Desk) -> None:
    whole = desk.rounds.sheet(ON, 7)
    yards = {each.yard for each in whole.colonies}
    litres = 0.0
    for yard in yards:
        text = client.get(ROUND, params={"yard": yard}).text
        assert text.count("<li data-colony") == sum(each.yard == yard for each in whole.colonies)
        found = re.search(r"L of syrup left of ([\d.]+) L", text)
        litres += float(found[1]) if found else 0.0
    assert litres == pytest.approx(whole.bench.syrup_l, abs=0.05 * (len(yards) + 1))


def test_an_unknown_colony_is_answered_with_what_to_do(client: TestClient) -> None:
    answer = client.get("/colony/Nobody", headers=PAGE)
    assert answer.status_code == 404
    assert "no colony “Nobody”" in answer.text


def test_a_hive_is_a_light_page_whose_drawings_say_in_words_what_they_show(
    client: TestClient, desk: Desk
) -> None:
    for each in desk.rounds.sheet(ON, 7).colonies:
        text = client.get(f"{ROUND}/hive/{each.colony}").text
        assert len(text.encode()) < LIGHT
        drawings = re.findall(r"<svg[^>]*>.*?</svg>", text, re.DOTALL)
        assert len(drawings) == (1 if each.before == each.after else 2)
        assert all("Brood box with" in drawing for drawing in drawings)
        assert text.index('class="line"') < text.index("<svg")  # the answer first


def test_the_syrup_calculator_stands_a_wrong_number_beside_its_field(client: TestClient) -> None:
    answer = client.get("/syrup?ratio=two&amount=10", headers=PAGE)
    assert answer.status_code == 422
    assert re.search(r'id="fault-ratio">[^<]*“two” is not a number', answer.text)


def test_what_if_compares_three_ways(client: TestClient) -> None:
    text = client.get("/colony/Bramble/what-if?feed_g=1000").text
    assert all(way in text for way in ("the plan", "your idea", "nothing done"))


def test_a_phone_takes_along_no_more_hives_than_it_should(
    client: TestClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert "data-take" in client.get(ROUND).text
    monkeypatch.setattr("combwright.web.pages.sheet.CARRIED", 10)
    overview = client.get(ROUND).text
    assert "data-take" not in overview  # three hundred pages would be too many for a phone
    assert overview.count("<li data-colony") == len(CASTS)


def test_what_is_said_at_every_colony_stands_on_the_round_alone(
    client: TestClient, desk: Desk
) -> None:
    said = everywhere(desk.rounds.sheet(ON, 7)).jobs
    assert said
    overview, one = client.get(ROUND).text, client.get(f"{ROUND}/hive/Bramble").text
    assert all(job in overview and job not in one for job in said)
