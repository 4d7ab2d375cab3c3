"""Who can give brood, and who is helped by it."""

from datetime import date

import pytest
from tests.advice.situations import Case, situation

from combwright.advice.decisions.nucs import nucs

MAY = date(2027, 5, 10)


def _asks(case: Case) -> str:
    decided, _ = nucs(situation(case))
    return " ".join(decided.jobs)


def test_a_weak_colony_with_a_queen_can_take_a_frame() -> None:
    assert "Can take" in _asks(Case(MAY, 4.0, 1.5, 6.0, 7))


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
    assert "Can take" not in _asks(case)


def test_nobody_gives_and_takes_at_once() -> None:
    for bees in (3.0, 5.0, 7.0, 9.0, 11.0):
        asked = _asks(Case(date(2027, 6, 5), bees, 0.7 * bees, 8.0, 11))
        assert not ("Can take" in asked and "Can give" in asked)
