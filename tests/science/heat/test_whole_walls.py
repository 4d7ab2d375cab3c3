"""Bridged walls: between their limits, and one section is no bridge."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.heat import surfaces, whole_walls
from combwright.terms.errors import OutOfRangeError


@given(
    st.floats(0, 1),
    st.lists(st.tuples(st.floats(0.05, 5), st.floats(0.05, 5)), min_size=1, max_size=4),
)
def test_a_bridged_wall_lies_between_its_limits(
    share: float, pairs: list[tuple[float, float]]
) -> None:
    sections = [[first for first, _ in pairs], [second for _, second in pairs]]
    mean, straight, shared = whole_walls.bridged_transmittance([share, 1 - share], sections)
    assert straight <= mean * (1 + 1e-9)
    assert mean <= shared * (1 + 1e-9)


def test_a_wall_of_one_section_has_no_bridge() -> None:
    mean, straight, shared = whole_walls.bridged_transmittance([1.0], [[0.13, 0.146, 0.04]])
    assert mean == pytest.approx(straight) == pytest.approx(shared)
    assert mean == pytest.approx(float(surfaces.transmittance([0.13, 0.146, 0.04])))


def test_shares_must_make_a_whole() -> None:
    with pytest.raises(OutOfRangeError, match="The sum of the shares"):
        whole_walls.bridged_transmittance([0.5, 0.4], [[1], [1]])


def test_the_mean_resistance_by_hand() -> None:
    # A fifth of the wall 0.63, the rest 1.13 m² K/W; layers 0.13 shared, then 0.5 beside 1.0.
    upper = 1 / (0.2 / 0.63 + 0.8 / 1.13)
    lower = 0.13 + 1 / (0.2 / 0.5 + 0.8 / 1.0)
    mean, _, _ = whole_walls.bridged_transmittance([0.2, 0.8], [[0.13, 0.5], [0.13, 1.0]])
    assert mean == pytest.approx(2 / (upper + lower))
