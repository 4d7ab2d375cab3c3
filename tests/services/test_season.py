"""A season from a start that a keeper describes."""

from datetime import date

import numpy as np
import pytest

from combwright.services.season import TITLES, Season, Start, chart, season
from combwright.simulation.hands.keeper import Keeping
from combwright.terms.errors import ClashError, CombwrightError, NotFoundError, OutOfRangeError
from combwright.terms.set_up import SetUp, set_up_of

FIRST, LAST = date(2026, 3, 20), date(2026, 5, 20)


def spring(start: Start | None = None, members: int = 40, seed: int = 1) -> Season:
    return season(start or Start(), FIRST, LAST, members=members, seed=seed)


def test_every_series_has_a_low_mid_and_high_value_for_each_day() -> None:
    told = spring().as_json()
    for name in TITLES:
        low, mid, high = (np.array(told[name][part]) for part in ("low", "mid", "high"))
        assert len(low) == len(mid) == len(high) == 62
        assert (low <= mid).all()
        assert (mid <= high).all()


def test_the_same_seed_gives_the_same_season_and_another_another() -> None:
    assert spring().as_json() == spring().as_json()
    assert spring(seed=2).as_json() != spring().as_json()


def test_whole_years_are_summed_up_and_none_that_is_not_whole() -> None:
    assert spring().years == ()
    start, first = Start(frames_of_bees=11.0, stores_kg=14.0), date(2026, 8, 1)
    long = season(start, first, date(2028, 12, 1), members=20)
    assert [year.until for year in long.years] == [date(2027, 8, 1), date(2028, 7, 31)]
    for year in long.years:
        low, mid, high = year.bands["most_bees"]
        assert low <= mid <= high
        assert year.bands["fewest_bees"][1] < mid
    lost = [year.lost for year in long.years]
    assert 0.0 <= lost[0] <= lost[1] <= long.lost


def test_two_variants_begin_alike_and_share_their_luck() -> None:
    fed, not_fed = spring(), spring(Start(keeping=Keeping(feeding="none")))
    same = fed.courses["adults"].mid[:8], not_fed.courses["adults"].mid[:8]
    assert same[0] == same[1]
    assert fed.courses["adults"].mid[-1] > not_fed.courses["adults"].mid[-1]


def test_a_warmer_place_builds_up_at_least_as_fast() -> None:
    usual, warmer = spring(), spring(Start(warmer_k=3.0))
    assert warmer.courses["adults"].mid[-1] > usual.courses["adults"].mid[-1]


def test_two_variants_are_drawn_together() -> None:
    svg = chart({"this way": spring(), "not fed": spring(seed=2)}, "frames_of_bees")
    assert svg.startswith("<svg")
    assert "not fed" in svg
    with pytest.raises(OutOfRangeError, match="Nothing is drawn"):
        chart({"this way": spring()}, "happiness")


@pytest.mark.parametrize(
    "place",
    [
        "Dublin Airport",
        *(
            pytest.param(place, marks=pytest.mark.validation)
            for place in ("Sheffield", "Cork Airport", "Shannon Airport", "Armagh")
        ),
    ],
)
def test_a_colony_of_august_looks_like_one_through_its_own_winter_and_summer(place: str) -> None:
    """Bands around published years; their sources stand in ``evidence/targets.toml``."""
    start = Start(frames_of_bees=11.0, stores_kg=14.0, queen_year=2026, climate=place)
    one = season(start, date(2026, 8, 1), date(2027, 9, 1))
    bees = dict(zip(one.courses["adults"].days, one.courses["adults"].mid, strict=True))
    assert 10_000 <= bees[date(2026, 11, 1)] <= 16_500
    assert 7_000 <= bees[date(2027, 3, 20)] <= 14_000
    assert 17_000 <= bees[date(2027, 5, 27)] <= 30_000
    assert 26_000 <= max(bees.values()) <= 42_000
    assert 7.0 <= one.courses["honey_taken_kg"].mid[-1] <= 20.0
    assert 0.05 <= one.lost <= 0.25


@pytest.mark.parametrize(
    ("start", "error", "says"),
    [
        (Start(frames_of_bees=20.0), OutOfRangeError, "do not go onto 11"),
        (Start(frames_of_brood=10.0), OutOfRangeError, "need more bees"),
        (Start(stores_kg=40.0), OutOfRangeError, "do not go into 11 frames"),
        (Start(set_up=SetUp(frames=14, hive="nuc 5 timber")), ClashError, "holds 5"),
        (Start(set_up=SetUp(frames=5, hive="tree trunk")), NotFoundError, "tree trunk"),
        (Start(climate="Paris"), NotFoundError, "Paris"),
        (Start(frames_of_bees=float("nan")), OutOfRangeError, "Frames of bees"),
        (Start(mites=-1.0), OutOfRangeError, "Mites"),
    ],
)
def test_what_cannot_be_is_refused_before_the_run(
    start: Start, error: type[CombwrightError], says: str
) -> None:
    with pytest.raises(error, match=says):
        spring(start)


def test_days_and_members_out_of_range_are_refused() -> None:
    with pytest.raises(OutOfRangeError, match="cannot be shown"):
        season(Start(), FIRST, FIRST)
    with pytest.raises(OutOfRangeError, match="simulated colonies"):
        spring(members=3)
    with pytest.raises(OutOfRangeError, match="dummy boards cannot be 5"):
        set_up_of(frames=8, dummy_boards=5)
