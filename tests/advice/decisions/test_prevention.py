"""A swarm is held back where that is worth its price, before it must be repaired."""

from dataclasses import replace
from datetime import date

import pytest
from tests.advice.situations import Case, situation

from combwright.advice.bee_acts import CutCells, Demaree, Divide
from combwright.advice.plan import Plan, plan
from combwright.advice.prices import Prices
from combwright.advice.situation import Situation
from combwright.advice.stacking import set_up_after
from combwright.advice.trial import doing
from combwright.simulation import observe

MAY = Case(date(2027, 5, 20), 10.0, 6.0, 8.0, 11)
DAYS = [date(2027, 5, 5), date(2027, 5, 25), date(2027, 6, 15)]


def with_cells(case: Case, share: float) -> Situation:
    """Let cells of four days stand in a share of the members."""
    at = situation(case)
    at.colonies["swarm_clock"][: round(share * len(at.colonies))] = 4.0
    return at


def planned(case: Case, share: float) -> Plan:
    return plan(with_cells(case, share), with_branches=False)


@pytest.mark.parametrize("on", DAYS)
def test_where_cells_may_have_been_begun_they_are_looked_for_and_held_back(on: date) -> None:
    told = planned(replace(MAY, on=on), 0.35)
    (cut,) = told.asks(CutCells)
    assert told.chances["swarm"] < 0.5 * told.inputs["swarm: swarm_as_it_is"]
    assert told.next_visit <= cut.again_by


@pytest.mark.parametrize("on", DAYS)
def test_a_trifling_chance_is_left_and_a_sure_one_repaired_in_one_way(on: date) -> None:
    assert not planned(replace(MAY, on=on), 0.0).asks(CutCells)
    sure = planned(replace(MAY, on=on), 0.9)
    assert bool(sure.asks(Divide)) is not bool(sure.asks(CutCells))


def test_the_dearer_an_hour_the_less_often_cells_are_cut() -> None:
    shares = (0.1, 0.2, 0.3, 0.4)
    cut = [
        sum(bool(planned(replace(MAY, prices=Prices(hour=hour)), s).asks(CutCells)) for s in shares)
        for hour in (5.0, 20.0, 150.0)
    ]
    assert cut == sorted(cut, reverse=True)
    assert cut[0] > cut[-1]


def test_an_upper_box_gives_the_queen_empty_comb_and_keeps_all_brood() -> None:
    at = with_cells(MAY, 0.5)
    upper = Demaree(frames=11, again_by=date(2027, 5, 26))
    after = at.colonies.copy()
    doing(at, (upper,))(after)
    assert set_up_after(at.standing.set_up, (upper,)).brood_boxes == 2
    assert (after["swarm_clock"] == 0.0).all()
    assert observe.brood(after) == pytest.approx(observe.brood(at.colonies))
    assert (after["drawn"] > at.colonies["drawn"]).all()
