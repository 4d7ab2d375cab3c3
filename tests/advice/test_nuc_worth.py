"""What a nuc is worth that is made today: more where nucs are dear, less where means are."""

from dataclasses import replace
from datetime import date

import pytest

from combwright.advice.nuc_worth import nuc_made, nuc_with_her, nucs_ahead
from combwright.advice.prices import Prices

MAY = date(2027, 5, 10)


def test_a_nuc_of_june_brings_less_where_it_is_cheaper_or_work_dearer() -> None:
    usual = nuc_made(MAY, Prices()).brings
    for change in ({"hour": 60.0}, {"sugar": 5.0}, {"frame_of_foundation": 9.0}):
        assert nuc_made(MAY, replace(Prices(), **change)).brings < usual
    cheap = replace(Prices(), nuc_in_may=50.0, nuc_in_june=50.0, nuc_in_july=50.0)
    assert nuc_made(MAY, cheap).brings < usual


def test_a_nuc_brings_the_price_of_the_month_in_which_it_is_ready() -> None:
    made = date(2027, 4, 5)  # with a cell it is ready after a month and a half
    april, may = (nuc_made(made, replace(Prices(), **{name: 500.0})).brings
                  for name in ("nuc_in_april", "nuc_in_may"))  # fmt: skip
    assert april == nuc_made(made, Prices()).brings < may


def test_the_queen_is_bought_where_she_is_cheap_and_there_are_any() -> None:
    free, dear = (replace(Prices(), mated_queen=price) for price in (1.0, 500.0))
    assert nuc_made(MAY, free).queen == "mated queen"
    assert nuc_made(MAY, dear).queen == "cell"
    assert nuc_made(date(2027, 4, 5), free).queen == "cell"  # nobody sells any yet


@pytest.mark.parametrize("honey", [2.0, 8.0, 30.0])
def test_nobody_makes_nucs_out_of_season_or_for_less_than_the_honey_missed(honey: float) -> None:
    brings, makers = nucs_ahead(date(2027, 1, 1), 365, replace(Prices(), honey=honey)).T
    assert ((makers >= 0.0) & (makers <= 1.0)).all()
    assert makers[:60].sum() == makers[-60:].sum() == 0.0
    assert (makers[brings <= 0.0] == 0.0).all()


def test_the_dearer_the_honey_the_fewer_make_nucs() -> None:
    cheap, dear = (nucs_ahead(MAY, 60, replace(Prices(), honey=kg))[:, 1] for kg in (4.0, 20.0))
    assert (dear <= cheap).all()


def test_a_nuc_with_an_old_queen_brings_less_and_one_with_a_young_one_all() -> None:
    brought = [nuc_with_her(MAY, Prices(), years) for years in (0.1, 0.8, 1.8, 2.8)]
    assert brought[0] == brought[1] > brought[2] > brought[3]
