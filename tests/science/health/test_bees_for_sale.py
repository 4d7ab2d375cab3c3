"""Standards for bees for sale and EU moves.

Sources: criteria of associations (read, in part second-hand); Delegated Regulation (EU) 2020/688,
article 48 (read).
"""

from datetime import date

import pytest

from combwright.science.health.bees_for_sale import (
    NucPoints,
    colour_caution,
    eu_move_faults,
    standard_faults,
)
from combwright.science.health.notifiable import STOPS, THINGS, notices_wanted, told_to
from combwright.terms.entries.keeper import COUNTRIES

JUNE_2025 = date(2025, 6, 10)
WELL = NucPoints(5, 5, JUNE_2025, marked=True, clipped=True)


@pytest.mark.parametrize(
    ("sold", "old"),
    [(date(2026, 4, 20), False), (date(2026, 6, 10), False), (date(2026, 7, 1), True)],
)
def test_a_queen_of_the_irish_criteria_is_not_more_than_a_year_old(sold: date, old: bool) -> None:
    assert bool(standard_faults("FIBKA", WELL, sold)) is old


@pytest.mark.parametrize(
    ("standard", "combs", "falls_short"),
    [("NBU", 3, False), ("NBU", 2, True), ("NBU", 7, True), ("BBKA", 6, True), ("FIBKA", 3, True)],
)
def test_a_nuc_has_as_many_combs_as_its_standard_says(
    standard: str, combs: float, falls_short: bool
) -> None:
    nuc = NucPoints(combs, None, None, marked=None, clipped=None)
    assert bool(standard_faults(standard, nuc, date(2026, 5, 1))) is falls_short


def test_a_mark_of_another_year_is_told_and_never_corrected() -> None:
    assert "marked blue, and she is white" in colour_caution(2025, "white")
    assert colour_caution(2025, "none") == ""


@pytest.mark.parametrize(
    ("afb_km", "afb_days", "beetle_km", "stands_against"),
    [
        (2.9, 29, 500, "foulbrood"),
        (3.1, 29, 500, ""),
        (2.9, 31, 500, ""),
        (50, 1, 99, "beetle"),
        (50, 1, 101, ""),
    ],
)
def test_moves_between_eu_countries(
    afb_km: float, afb_days: float, beetle_km: float, stands_against: str
) -> None:
    found = eu_move_faults(
        afb_km=afb_km, afb_days=afb_days, beetle_km=beetle_km, tropilaelaps_km=500
    )
    assert len(found) == bool(stands_against)
    assert stands_against in " ".join(found)


def test_varroa_is_told_once_for_each_place_where_it_is_asked_for() -> None:
    assert [
        notices_wanted(1, 0, "ENG"),
        notices_wanted(2, 1, "ENG"),
        notices_wanted(2, 2, "ENG"),
    ] == [*(1, 1, 0)]
    assert notices_wanted(3, 0, "NI") == 0


def test_every_country_has_a_duty_and_somebody_to_tell_for_every_thing() -> None:
    assert {
        "American foulbrood",
        "European foulbrood",
        "small hive beetle",
        "Tropilaelaps",
    } == STOPS
    for one in THINGS:
        assert one.duty.keys() == COUNTRIES.keys()
        assert all(told_to(one.name, country) for country in COUNTRIES)
