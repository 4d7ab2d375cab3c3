import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.mites.invasion import invasion_rate, trapped_share

WORKER, DRONE = 0.56, 6.49  # Calis, Fries & Ryrie 1999, from memory
Cells, Grams = st.floats(0, 5000), st.floats(100, 10_000)


def test_trapping_comb_of_boot() -> None:  # Boot et al. 1995, Apidologie 26:109-118
    assert trapped_share(invasion_rate(462, 1000, DRONE)) == pytest.approx(0.95, abs=0.005)


def test_both_constants_follow_from_the_trapping_comb() -> None:
    per_drone_cell = math.log(20) / 462 * 1000
    assert pytest.approx(per_drone_cell, rel=0.01) == DRONE
    assert pytest.approx(per_drone_cell / 11.6, rel=0.01) == WORKER


@pytest.mark.parametrize(
    ("workers", "drones", "grams", "rate"),
    [(1000, 0, 2500, 0.224), (1500, 0, 3000, 0.280), (1500, 50, 3000, 0.388)],
)
def test_worked_examples(workers: float, drones: float, grams: float, rate: float) -> None:
    found = invasion_rate(workers, grams, WORKER) + invasion_rate(drones, grams, DRONE)
    assert found == pytest.approx(rate, abs=5e-4)


@given(Cells, Grams, st.floats(1, 10))
def test_more_bees_keep_mites_out_of_cells(cells: float, grams: float, more: float) -> None:
    assert invasion_rate(cells, grams * more, DRONE) <= invasion_rate(cells, grams, DRONE)


@given(Cells, Cells, Grams)
def test_two_batches_trap_what_one_of_both_does(one: float, other: float, grams: float) -> None:
    left = [1 - trapped_share(invasion_rate(cells, grams, WORKER)) for cells in (one, other)]
    both = trapped_share(invasion_rate(one + other, grams, WORKER))
    assert 1 - both == pytest.approx(left[0] * left[1], abs=1e-12)
