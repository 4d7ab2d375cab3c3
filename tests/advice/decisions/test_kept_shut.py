"""Whether a hive is opened goes by the forecast of its day."""

from dataclasses import replace
from datetime import date

import pytest
from tests.advice.situations import Case, situation

from combwright.advice.bee_acts import Divide, EggFrame, Give, KnockDown, Look, Requeen, TakeIn
from combwright.advice.decisions.found import at_any_colony
from combwright.advice.decisions.kept_shut import OPENED_FROM_C
from combwright.advice.kit_acts import Boards, Frames, StoresOut, SuperOn
from combwright.advice.plan import Plan, plan
from combwright.advice.situation import Situation
from combwright.weather.conditions import MAX_C

INSIDE = (Boards, Divide, EggFrame, Frames, Give, KnockDown, Requeen, StoresOut, SuperOn, TakeIn)
LOOKS = {"health", "queen cells", "every frame", "signs of a queen"}
DAYS = [date(2027, month, 12) for month in (3, 4, 5, 6, 9, 10)]
COLONIES = (
    Case(DAYS[0], 2.5, 1.0, 4.0, 8),
    Case(DAYS[0], 9.0, 5.0, 8.0, 9),
    Case(DAYS[0], 11.0, 6.0, 14.0, 11),
    Case(DAYS[0], 6.0, 0.0, 6.0, 9, queen="lost"),
)


def opened(decided: Plan) -> bool:
    looks = [each.at for each in decided.asks(Look) if each.on is None and each.by is None]
    return bool(LOOKS & set(looks)) or any(isinstance(each, INSIDE) for each in decided.actions)


def with_high(at: Situation, high_c: float) -> Situation:
    days = at.conditions.copy()
    days[:, 0, MAX_C] = high_c
    return replace(at, conditions=days)


@pytest.mark.parametrize("on", DAYS)
def test_on_a_day_under_twelve_degrees_no_hive_is_opened_in_any_month(on: date) -> None:
    for case in COLONIES:
        cold = with_high(situation(replace(case, on=on)), OPENED_FROM_C - 0.5)
        assert not opened(plan(cold, with_branches=False)), case


@pytest.mark.parametrize("on", DAYS)
def test_on_a_warmer_day_it_is_looked_into(on: date) -> None:
    warm = with_high(situation(replace(COLONIES[1], on=on)), OPENED_FROM_C + 0.5)
    assert opened(plan(warm, with_branches=False))


@pytest.mark.parametrize(("month", "said"), [(2, True), (4, True), (7, False), (10, True)])
def test_the_round_says_what_is_left_out_where_a_day_stays_cold(month: int, *, said: bool) -> None:
    codes = [each.code for each in at_any_colony(date(2027, month, 12))]
    assert ("cold day" in codes) is said


def test_a_hungry_colony_under_an_empty_super_is_fed_in_the_cold_too() -> None:
    hungry = Case(date(2027, 5, 10), 8.0, 5.0, 0.5, 11, supers=1, nectar=0.0)
    decided = plan(with_high(situation(hungry), 9.0), with_branches=False)
    assert decided.set_up.supers == 0
    assert decided.portion.grams > 0
