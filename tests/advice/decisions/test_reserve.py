"""The reserve goes by what it is kept in, not by how much is there."""

from dataclasses import replace
from datetime import date

from tests.advice.situations import Case, situation

from combwright.advice.decisions.reserve import reserve_kg

HIVE = Case(date(2027, 5, 8), 6.0, 3.0, 3.0, 9)


def test_a_hive_keeps_more_in_reserve_than_a_nuc() -> None:
    nuc = replace(HIVE, hive="nuc 6 polystyrene", frames=6, frames_of_bees=3.0)
    assert reserve_kg(situation(HIVE)) > reserve_kg(situation(nuc)) > 0.0
    assert reserve_kg(situation(replace(HIVE, stores_kg=9.0))) == reserve_kg(situation(HIVE))
