"""What a page says at a glance: no list chooses by itself, each thing has its name, and once."""

import re
from datetime import timedelta
from uuid import uuid4

import pytest
from fastapi.testclient import TestClient
from tests.web.desks import PAGE, ROUND, Clock
from tests.web.test_entering import FILLED, enter

from combwright.planning.sheet import Portion
from combwright.services.demo import ON
from combwright.terms.entries import Colony, End, Split, Visit
from combwright.web.desk import Desk
from combwright.web.showing import environment


@pytest.mark.parametrize("kind", ["end", "unite", "move", "queen"])
def test_a_form_saved_untouched_is_about_no_colony(
    client: TestClient, desk: Desk, kind: str
) -> None:
    before = desk.book.now().last
    asked = client.get(f"/enter/{kind}", headers=PAGE).text
    colonies = re.search(r'<select id="f-colony".*?</select>', asked, re.DOTALL)
    assert colonies is not None
    assert re.search(r'<option value="" selected>', colonies[0])
    untouched = {"id": str(uuid4()), "on": str(ON), "colony": ""}
    answer = client.post(f"/enter/{kind}", data=untouched, headers=PAGE)
    assert answer.status_code == 422
    assert re.search(r'id="fault-colony">[^<]+<', answer.text)
    assert desk.book.now().last == before
    assert not any(isinstance(each, End) for each in desk.book.now().entries)


def test_who_comes_from_a_colony_need_not_choose_it(client: TestClient) -> None:
    asked = client.get("/enter/end?colony=Teasel", headers=PAGE).text
    colonies = asked.partition('id="f-colony"')[2].partition("</select>")[0]
    assert re.findall(r'value="([^"]*)" selected', colonies) == ["Teasel"]


def test_a_split_is_offered_the_hive_of_the_last_one(client: TestClient, desk: Desk) -> None:
    history = desk.book.now().history
    last = [each.hive for each in history if isinstance(each, Colony | Split)][-1]
    assert f'<option value="{last}" selected>' in client.get("/enter/split", headers=PAGE).text
    other = "nuc 6 polystyrene"
    split = FILLED["split"] | {"id": str(uuid4()), "hive": other}
    assert enter(client, "split", split)[0] == 303
    colony = FILLED["colony"] | {"id": str(uuid4()), "colony": "Ivy", "hive": "national timber"}
    assert enter(client, "colony", colony)[0] == 303
    assert f'<option value="{other}" selected>' in client.get("/enter/split", headers=PAGE).text


def test_the_history_names_the_notes_that_can_be_put_right(client: TestClient, desk: Desk) -> None:
    text = client.get("/history?colony=Bramble", headers=PAGE).text
    visit = next(e for e in desk.book.now().of("Bramble")[::-1] if isinstance(e, Visit))
    assert re.search(rf'<a href="/mend/{visit.id}" aria-label="[^"]+">visit</a>', text)


def test_harms_are_called_alike_wherever_they_stand(client: TestClient, desk: Desk) -> None:
    desk.rounds.sheet(ON, 7)
    for page in (f"{ROUND}/hive/Bramble", "/settings"):
        text = client.get(page, headers=PAGE).text
        for harm in ("short of room", "chilled brood", "soured syrup"):
            assert f'<th scope="row">{harm}</th>' in text, (page, harm)


def test_a_chance_stays_on_one_line_with_its_sign(client: TestClient, desk: Desk) -> None:
    desk.rounds.sheet(ON, 7)
    for page in (f"{ROUND}/hive/Bramble", "/settings"):
        text = client.get(page, headers=PAGE).text
        told = re.findall(r'<td class="amount">([^<]*%)</td>|<small>([^<]*%)</small>', text)
        assert told
        assert not [each for each in told if re.search(r"\d %", "".join(each))]
        assert "amp;nbsp" not in text


def test_a_colony_not_seen_for_long_is_told_in_weeks(client: TestClient, clock: Clock) -> None:
    """“17 Apr” says nothing in the next February."""
    assert "17 Apr" in client.get("/yards", headers=PAGE).text
    clock.pass_days(timedelta(weeks=42).days)
    assert "43 weeks ago" in client.get("/yards", headers=PAGE).text


def test_what_is_made_ready_is_ticked_once_on_the_bench(client: TestClient, desk: Desk) -> None:
    desk.rounds.sheet(ON, 7)
    text = client.get(f"/bench/{ON}", headers=PAGE).text
    bench = text.partition("On the bench")[2].partition("In the van")[0]
    told = re.findall(r'data-tick="[^"]+"><span>([^<]+)</span>', bench)
    counted = [each for each in told if re.match(r"\d+ (drawn|frame|super|dummy)", each)]
    assert any(each.startswith("Make ready") for each in told)
    assert counted == []


def test_fondant_lies_there_and_has_no_grams_a_day() -> None:
    """As on paper: it is not eaten up by the next visit."""
    given = Portion(syrup_g=2500, per_day_g=357, days=7, sugar_fraction=0.85, feed="fondant")
    fed = Portion(syrup_g=700, per_day_g=100, days=7, sugar_fraction=0.6, litres=0.5)
    parts = environment().get_template("parts.html").module
    told = [parts.portion({"portion": each, "after_the_feed": ""}) for each in (given, fed)]  # type: ignore[attr-defined]
    assert ["a day" in each for each in told] == [False, True]
    assert "2,500 g" in told[0]


def test_on_a_cold_day_the_hive_s_own_page_says_not_to_open_it(
    client: TestClient, desk: Desk
) -> None:
    """Who stands at the hive does not look at the round's page again."""
    for tmax_c, is_cold in ((18, False), (6, True)):
        days = "".join(f"{ON + timedelta(days=n)},{tmax_c},1,0,3,2\n" for n in range(-3, 8))
        told = f"date,tmax_c,tmin_c,rain_mm,sun_h,wind_m_s\n{days}"
        file = {"file": ("week.csv", told.encode(), "text/csv")}
        answer = client.post("/weather/add", data={"yard": "Alder Bank"}, files=file, headers=PAGE)
        assert answer.status_code == 200
        desk.rounds.sheet(ON, 7)
        text = client.get(f"{ROUND}/hive/Bramble", headers=PAGE).text
        assert ("Too cold to open" in text) is is_cold


def test_one_fault_of_a_field_is_told_once(client: TestClient) -> None:
    news = FILLED["own queen news"] | {"id": str(uuid4()), "on": "2031-02-03"}
    assert enter(client, "own queen", FILLED["own queen"] | {"id": str(uuid4())})[0] == 303
    status, text = enter(client, "own queen news", news)
    assert status == 422
    assert text.count("lies years ahead of today") == 1
