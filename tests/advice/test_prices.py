"""What things bring and cost: usual ones, the aim, and a colony by its strength."""

from datetime import date
from typing import get_args

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.advice.prices import AIMS, NAMES, USUAL, Prices
from combwright.terms.entries import AimedAt, Priced


def test_each_price_can_be_set_by_its_name_and_has_a_usual_one() -> None:
    assert tuple(of.replace(" ", "_").lower() for of in get_args(Priced)) == NAMES
    assert set(USUAL) == set(NAMES)
    assert all(getattr(Prices(), name) == USUAL[name].value for name in NAMES)


def test_each_aim_is_weighed() -> None:
    assert get_args(AimedAt) == tuple(AIMS)


@given(st.lists(st.floats(0.0, 15.0), min_size=2, max_size=20))
def test_more_bees_in_spring_are_never_worth_less(frames: list[float]) -> None:
    worth = Prices().colony_in_april(np.sort(frames))
    assert (np.diff(worth) >= 0.0).all()
    assert worth.max() <= Prices().strong_colony_in_april


def test_what_comes_first_counts_for_more_against_what_comes_second() -> None:
    honey, nucs = (Prices().aimed(aim) for aim in ("honey first", "nucs first"))
    assert honey.honey / honey.nuc_in_may > Prices().honey / Prices().nuc_in_may
    assert nucs.honey / nucs.nuc_in_may < Prices().honey / Prices().nuc_in_may


def test_who_wants_few_visits_counts_the_road_for_more_and_nothing_else() -> None:
    far, usual = Prices().aimed("few visits"), Prices()
    assert far.visit > usual.visit
    assert [name for name in NAMES if getattr(far, name) != getattr(usual, name)] == [
        "road_to_a_hive"
    ]


@pytest.mark.parametrize("month", range(1, 13))
def test_a_nuc_brings_nothing_in_the_cold_half_of_the_year(month: int) -> None:
    brings = Prices().nuc(date(2027, month, 15))
    assert (brings > 0.0) == (4 <= month <= 9)
