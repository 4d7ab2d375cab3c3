"""Warm syrup in a feeder: what must hold whatever the feeder and the weather."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.services.calculators.feeder_cooling import UNDER_THE_BOARD_C, feeder_cooling
from combwright.terms.errors import NotFoundError, OutOfRangeError


@given(st.floats(0.4, 0.7), st.floats(25, 50), st.floats(-5, 15), st.floats(0.5, 13))
def test_it_cools_and_a_cushion_keeps_it_warmer(
    sugar: float, poured: float, outside: float, litres: float
) -> None:
    told = feeder_cooling(sugar, poured_c=poured, outside_c=outside, litres=litres)
    for course in (told.bare_c, told.under_cushion_c):
        assert list(course) == sorted(course, reverse=True)
        assert outside - 0.05 <= min(course) <= max(course) <= poured + 0.05
    assert all(warm >= bare for warm, bare in zip(told.under_cushion_c, told.bare_c, strict=True))


def test_in_the_end_it_stands_between_the_air_and_the_hive() -> None:
    told = feeder_cooling(0.6, poured_c=40, outside_c=5)
    assert 5 < told.bare_c[-1] < told.under_cushion_c[-1] < UNDER_THE_BOARD_C.value + 1


def test_more_syrup_cools_slower() -> None:
    little = feeder_cooling(0.6, poured_c=40, outside_c=5, feeder="tray feeder", litres=1)
    much = feeder_cooling(0.6, poured_c=40, outside_c=5, feeder="tray feeder")
    assert much.litres > little.litres
    assert all(more > less for more, less in zip(much.bare_c, little.bare_c, strict=True))


def test_an_unknown_feeder_names_the_known() -> None:
    with pytest.raises(NotFoundError, match="There are"):
        feeder_cooling(0.6, poured_c=40, outside_c=5, feeder="bucket")


def test_a_feeder_beside_the_nest_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="stands over the frames"):
        feeder_cooling(0.6, poured_c=40, outside_c=5, feeder="frame feeder")
