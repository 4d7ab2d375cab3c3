"""A colony that is united goes; one under a ban stays where it is."""

from dataclasses import replace
from datetime import date, timedelta
from uuid import UUID

from tests.advice.situations import Case, situation

from combwright.advice.deciding import Deciding
from combwright.advice.decisions.going import goes
from combwright.terms.entries import Visit

WORKERS = Case(date(2027, 6, 10), 8.0, 4.0, 8.0, 11, queen="laying workers")


def deciding(case: Case) -> Deciding:
    """Decide after two looks that found no eggs of a queen."""
    days = (case.on - timedelta(days=days) for days in (14, 7))
    looks = tuple(Visit(id=UUID(int=1), on=on, colony="colony", eggs=False) for on in days)
    return Deciding(replace(situation(case), history=looks))


def test_laying_workers_go_unless_nothing_may_move() -> None:
    assert goes(deciding(WORKERS))
    assert not goes(deciding(replace(WORKERS, signs_at="Sorrel")))
    assert not goes(deciding(replace(WORKERS, queen="laying")))
