"""Who can give brood, and who is helped by it."""

from dataclasses import replace
from datetime import date

import pytest
from tests.advice.situations import Case, gives, situation

from combwright.advice.bee_acts import Divide, Give, KnockDown, Requeen, TakeIn
from combwright.advice.deciding import Deciding
from combwright.advice.decision import Decision
from combwright.advice.decisions import nucs
from combwright.advice.plan import plan
from combwright.advice.prices import Prices

MAY = date(2027, 5, 10)


def _decided(case: Case) -> Decision:
    return Deciding(situation(case)).of(nucs.decide)


def test_a_weak_colony_with_a_queen_can_take_a_frame() -> None:
    assert _decided(Case(MAY, 4.0, 1.5, 6.0, 7)).asks(TakeIn)


@pytest.mark.parametrize(
    "case",
    [
        Case(MAY, 8.0, 4.0, 6.0, 9),
        Case(MAY, 4.0, 1.5, 6.0, 7, queen="virgin"),
        Case(date(2027, 8, 10), 4.0, 1.5, 6.0, 7),
        Case(MAY, 4.0, 1.5, 6.0, 6, hive="nuc 6 polystyrene"),
        Case(MAY, 1.2, 0.5, 4.0, 5),
    ],
    ids=["strong", "queenless", "after the flow", "a nuc", "too few to keep it warm"],
)
def test_others_cannot(case: Case) -> None:
    assert not _decided(case).asks(TakeIn)


@pytest.mark.parametrize("month", [4, 5, 6, 7, 8])
@pytest.mark.parametrize("queen", ["drone layer", "laying workers", "lost"])
def test_no_brood_helps_what_has_no_laying_queen(month: int, queen: str) -> None:
    weak = Case(date(2027, month, 12), 4.0, 1.0, 6.0, 7, queen=queen)
    assert not _decided(weak).asks(TakeIn)


def test_nobody_gives_and_takes_at_once() -> None:
    for bees in (3.0, 5.0, 7.0, 9.0, 11.0):
        decided = _decided(Case(date(2027, 6, 5), bees, 0.7 * bees, 8.0, 11))
        takes, gives = decided.asks(TakeIn), decided.asks(Give)
        assert not (takes and gives)


@pytest.mark.parametrize("on", [date(2027, 5, 25), date(2027, 6, 14)])
def test_a_hungry_colony_gives_no_brood_and_a_strong_one_fed_well_does(on: date) -> None:
    strong = Case(on, 11.0, 7.0, 10.0, 11, nectar=0.0)
    assert gives(plan(situation(strong), with_branches=False))
    hungry = plan(situation(replace(strong, stores_kg=0.8)), with_branches=False)
    assert not gives(hungry)


STRONG = Case(date(2027, 5, 25), 11.0, 7.0, 10.0, 11, nectar=0.0)


def _sells_her(case: Case) -> tuple[Divide, ...]:
    return _decided(case).asks(Divide)


@pytest.mark.parametrize("on", [date(2027, 5, 12), date(2027, 5, 25), date(2027, 6, 14)])
def test_a_strong_colony_sells_its_queen_and_is_given_a_mated_one(on: date) -> None:
    decided = plan(situation(replace(STRONG, on=on)), with_branches=False)
    (divided,) = decided.asks(Divide)
    assert (divided.way, divided.successor) == ("on purpose", "mated queen")
    assert decided.asks(KnockDown)[0].on > on  # of cells that bees raise beside her
    assert not decided.asks(Give) + decided.asks(Requeen)


@pytest.mark.parametrize(
    "case",
    [
        replace(STRONG, on=date(2027, 4, 28)),
        replace(STRONG, on=date(2027, 8, 10)),
        replace(STRONG, queen="virgin"),
        replace(STRONG, queen="drone layer"),
        replace(STRONG, frames_of_bees=6.5, frames_of_brood=4.0),
        replace(STRONG, stores_kg=0.8),
        replace(STRONG, prices=replace(Prices(), mated_queen=300.0)),
        replace(STRONG, prices=replace(Prices(), nuc_in_june=30.0, nuc_in_july=30.0)),
    ],
    ids=["none for sale", "late", "virgin", "drones", "weak", "hungry", "dear queen", "cheap nuc"],
)
def test_a_queen_stays_where_none_could_take_her_place_or_it_would_not_pay(case: Case) -> None:
    assert not _sells_her(case)
