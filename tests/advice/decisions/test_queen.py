"""The queen: left, waited for, replaced, or a successor found while there are any."""

from dataclasses import replace
from datetime import date, timedelta
from uuid import UUID

import pytest
from tests.advice.situations import Case, situation

from combwright.advice.bee_acts import EggFrame, LeaveCells, LeaveShut, Look, Requeen, Uniting, Wait
from combwright.advice.deciding import Deciding
from combwright.advice.decision import Decision
from combwright.advice.decisions import queen
from combwright.advice.prices import Prices
from combwright.advice.words.action_words import words
from combwright.simulation.columns import LAYING, QUEENLESS, VIRGIN
from combwright.terms.entries import Visit

JUNE = Case(date(2027, 6, 10), 8.0, 4.0, 8.0, 11)


def looks(on: date, missed: int) -> tuple[Visit, ...]:
    """Give weekly looks that found no eggs, before a day."""
    weeks = [on - timedelta(days=7 * (each + 1)) for each in reversed(range(missed))]
    return tuple(Visit(id=UUID(int=1), on=day, colony="colony", eggs=False) for day in weeks)


def decided(case: Case, years: float | None = None, *, missed: int = 0) -> Decision:
    """Decide about a case; ``missed`` is how many looks on end found no eggs."""
    at = replace(situation(case), history=looks(case.on, missed))
    if years is not None:
        at.colonies["queen_age"] = 365.0 * years
    return Deciding(at).of(queen.decide)


def test_a_young_laying_queen_is_left() -> None:
    assert not decided(JUNE, years=0.5).actions


def test_an_old_one_is_replaced_while_queens_are_to_be_had() -> None:
    assert decided(JUNE, years=3.0).asks(Requeen)
    assert not decided(replace(JUNE, on=date(2027, 3, 20)), years=3.0).asks(Requeen)


@pytest.mark.parametrize("years", [1.5, 2.2, 3.0])
def test_a_dearer_queen_is_never_given_sooner(years: float) -> None:
    given = [
        bool(decided(replace(JUNE, prices=replace(Prices(), mated_queen=p)), years).asks(Requeen))
        for p in (1.0, 45.0, 900.0)
    ]
    assert given == sorted(given, reverse=True)
    assert not given[-1]


@pytest.mark.parametrize("kind", ["virgin", "cell"])
def test_a_queen_to_come_is_waited_for_to_the_day_on_which_eggs_are_looked_for(kind: str) -> None:
    waiting = decided(replace(JUNE, queen=kind))
    (shut,), (look,) = waiting.asks(LeaveShut), waiting.asks(Look)
    assert shut.until == look.on
    assert look.at == "eggs"


def test_a_cell_is_waited_for_longer_than_a_virgin() -> None:
    cell, virgin = (
        decided(replace(JUNE, queen=kind)).asks(LeaveShut)[0].until for kind in ("cell", "virgin")
    )
    assert cell is not None
    assert virgin is not None
    assert cell > virgin


@pytest.mark.parametrize(
    ("on", "bees", "kind"),
    [
        (date(2027, 6, 10), 8.0, EggFrame),
        (date(2027, 6, 10), 2.0, Uniting),
        (date(2027, 9, 10), 2.0, EggFrame),
        (date(2027, 12, 10), 8.0, Wait),
    ],
)
def test_without_any_it_depends_on_the_season_and_the_bees(
    on: date, bees: float, kind: type[EggFrame | Uniting | Wait]
) -> None:
    case = replace(JUNE, on=on, frames_of_bees=bees, frames_of_brood=0.5, queen="lost")
    told = decided(case)
    assert len(told.asks(kind)) == 1
    assert len(told.asks(Look)) == (kind is EggFrame)


def test_the_shares_of_what_she_may_be_make_one() -> None:
    inputs = decided(replace(JUNE, queen="virgin")).inputs
    shares = [inputs[f"queen_{kind}"] for kind in ("laying", "virgin", "cell", "none")]
    assert sum(shares) == pytest.approx(1.0)


def test_a_drone_layer_is_replaced_while_queens_are_to_be_had_and_there_are_bees() -> None:
    assert decided(replace(JUNE, queen="drone layer"), missed=2).asks(Requeen)
    april = replace(JUNE, on=date(2027, 4, 10), frames_of_bees=4.0)
    for case in (replace(JUNE, frames_of_bees=2.0), april, replace(JUNE, on=date(2027, 9, 27))):
        (unite,) = decided(replace(case, queen="drone layer"), missed=2).asks(Uniting)
        assert unite.why == "drone layer"


def test_a_test_frame_is_looked_at_while_it_tells() -> None:
    told = decided(replace(JUNE, queen="lost"))
    (look,) = told.asks(Look)
    assert look.at == "cells on the test frame"
    assert look.on is not None
    assert 4 <= (look.on - JUNE.on).days <= 6


def test_a_strong_drone_layer_waits_for_the_day_on_which_queens_are_to_be_had() -> None:
    told = decided(replace(JUNE, queen="drone layer", on=date(2027, 4, 25)), missed=2)
    assert told.asks(Requeen)
    assert not told.asks(Uniting)


@pytest.mark.parametrize(("share", "looks_again"), [(1.0, False), (0.7, True)])
def test_a_queen_in_doubt_is_looked_for_soon(share: float, *, looks_again: bool) -> None:
    at = situation(JUNE)
    at.colonies["queen"][round(share * len(at.colonies)) :] = QUEENLESS
    looks = Deciding(at).of(queen.decide).asks(Look)
    assert bool(looks) is looks_again
    assert all(look.on == JUNE.on + timedelta(days=7) for look in looks)
    dear = replace(at, prices=Prices(road_to_a_hive=500.0))
    assert not Deciding(dear).of(queen.decide).asks(Look)


def test_eggs_of_a_bought_queen_are_looked_for_unless_a_visit_is_dear() -> None:
    replaced = decided(replace(JUNE, queen="drone layer"), missed=2)
    assert [look.at for look in replaced.asks(Look)] == ["eggs"]
    dear = replace(JUNE, queen="drone layer", prices=Prices(road_to_a_hive=500.0))
    assert not decided(dear, missed=2).asks(Look)


def test_a_colony_that_may_have_a_virgin_is_not_given_up() -> None:
    """One in five may mate yet: to unite it would throw that away for its bees."""
    at = situation(replace(JUNE, queen="laying workers", on=date(2027, 4, 10)))
    at = replace(at, history=looks(at.on, 2))
    assert Deciding(at).of(queen.decide).asks(Uniting)
    at.colonies["queen"][: len(at.colonies) // 5] = VIRGIN
    told = Deciding(at).of(queen.decide)
    assert told.asks(Look)
    assert not told.asks(Uniting)


@pytest.mark.parametrize("kind", ["drone layer", "laying workers"])
@pytest.mark.parametrize("missed", [0, 1])
def test_what_cannot_be_undone_waits_for_a_second_look(kind: str, missed: int) -> None:
    told = decided(replace(JUNE, queen=kind, on=date(2027, 4, 10)), missed=missed)
    assert told.asks(Look)
    assert not told.asks(Uniting)


@pytest.mark.parametrize("bees", [2.0, 8.0])
def test_laying_workers_get_neither_brood_nor_a_queen(bees: float) -> None:
    workers = decided(replace(JUNE, frames_of_bees=bees, queen="laying workers"), missed=2)
    (unite,) = workers.asks(Uniting)
    assert unite.why == "laying workers"
    assert not workers.asks(EggFrame)
    assert not workers.asks(Requeen)
    assert "no brood" in words(unite)


@pytest.mark.parametrize("on", [date(2027, 5, 12), date(2027, 6, 10), date(2027, 7, 8)])
@pytest.mark.parametrize(("swarmed", "one_left"), [(1.0, True), (0.0, False)])
def test_a_colony_on_the_cells_of_its_swarm_keeps_one_before_it_is_shut(
    on: date, swarmed: float, *, one_left: bool
) -> None:
    """Shut up alone, it would send casts after the first swarm."""
    at = situation(Case(on, 6.0, 4.0, 5.0, 11, queen="cell"))
    at.colonies["swarmed"] = swarmed
    told = Deciding(at).of(queen.decide)
    assert bool(told.asks(LeaveCells)) is one_left
    assert told.asks(LeaveShut)


def test_a_queen_is_given_without_a_test_frame_where_two_looks_leave_little_doubt() -> None:
    (given,) = decided(replace(JUNE, queen="lost"), missed=2).asks(Requeen)
    assert given.is_lost
    assert "knock down every cell" in words(given)
    assert not decided(replace(JUNE, queen="lost"), missed=1).asks(Requeen)
    late = replace(JUNE, queen="lost", on=date(2027, 9, 27))
    assert not decided(late, missed=2).asks(Requeen), "none are to be had"


@pytest.mark.parametrize(("share", "is_given"), [(0.0, True), (0.3, False)])
def test_doubt_asks_for_the_test_frame_first(share: float, *, is_given: bool) -> None:
    at = situation(replace(JUNE, queen="lost"))
    at.colonies["queen"][: round(share * len(at.colonies))] = LAYING
    told = Deciding(replace(at, history=looks(at.on, 2))).of(queen.decide)
    assert bool(told.asks(Requeen)) is is_given
    assert bool(told.asks(EggFrame)) is not is_given


def test_a_colony_that_most_likely_lays_is_not_left_shut_for_a_virgin() -> None:
    """A fifth may be a virgin of this week: the look for eggs does not wait for her month."""
    at = situation(JUNE)
    many = len(at.colonies)
    at.colonies["queen"][: many // 4] = VIRGIN
    at.colonies["queen"][many // 4 : many * 55 // 100] = QUEENLESS
    told = Deciding(at).of(queen.decide)
    assert not told.asks(LeaveShut)
    assert [look.on for look in told.asks(Look)] == [JUNE.on + timedelta(days=7)]
