"""Air by buoyancy, fins and conductances against ASHRAE, CoolProp and their limits."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.heat import moving_air
from combwright.terms.errors import OutOfRangeError

AREAS = st.floats(0, 200)
POSITIVE = st.floats(0.01, 5)


def test_stack_flow_agrees_with_ashrae() -> None:
    # ASHRAE Fundamentals, eq. 37 by hand: Cd 0.6, 20 cm², 0.25 m, 20 and 5 °C.
    assert moving_air.stack_flow_l_per_s(20, 0.25, 20, 5) == pytest.approx(0.601, rel=0.005)


def test_air_carries_what_coolprop_says() -> None:
    from CoolProp.CoolProp import PropsSI

    density = PropsSI("D", "T", 293.15, "P", 101325, "Air")
    capacity = PropsSI("C", "T", 293.15, "P", 101325, "Air")
    assert moving_air.air_conductance(1) == pytest.approx(density * capacity / 1000, rel=0.01)


@given(AREAS, st.floats(0, 2), st.floats(-20, 35), st.floats(0, 15), POSITIVE)
def test_more_opening_height_and_warmth_move_more_air(
    area: float, height: float, outside: float, warmer: float, more: float
) -> None:
    flow = moving_air.stack_flow_l_per_s(area, height, outside + warmer, outside)
    assert moving_air.stack_flow_l_per_s(area + more, height, outside + warmer, outside) >= flow
    assert moving_air.stack_flow_l_per_s(area, height + more / 5, outside + warmer, outside) >= flow


@given(st.floats(-20, 30), st.floats(0, 15))
def test_no_buoyancy_when_it_is_colder_inside(inside: float, warmer: float) -> None:
    assert moving_air.stack_flow_l_per_s(20, 0.3, inside, inside + warmer) == 0
    assert moving_air.exchange_flow_l_per_s(100, 22, inside, inside + warmer) == 0


@given(AREAS, AREAS)
def test_two_openings_let_less_through_than_either(first: float, second: float) -> None:
    both = moving_air.openings_in_series(first, second)
    assert both <= min(first, second) + 1e-9
    assert both == pytest.approx(float(moving_air.openings_in_series(second, first)))


@given(POSITIVE, POSITIVE)
def test_conductances_in_series_are_resistances_added(first: float, second: float) -> None:
    assert moving_air.in_series(first, second) == pytest.approx(1 / (1 / first + 1 / second))
    assert moving_air.in_series(0, 0) == 0


@given(st.floats(0.001, 0.3), st.floats(1, 5), POSITIVE)
def test_a_fin_of_no_length_is_its_end_and_a_long_one_forgets_it(
    along: float, sideways: float, end: float
) -> None:
    assert moving_air.fin_conductance(0, along, sideways, end) == pytest.approx(end)
    long = moving_air.fin_conductance(5, along, sideways, end)
    assert long == pytest.approx((along * sideways) ** 0.5, rel=1e-5)


@given(st.floats(0.01, 1), POSITIVE, POSITIVE, POSITIVE, POSITIVE)
def test_a_leakier_fin_leaks_more(
    length: float, along: float, sideways: float, end: float, more: float
) -> None:
    leak = moving_air.fin_conductance(length, along, sideways, end)
    assert moving_air.fin_conductance(length, along, sideways + more, end) >= leak * (1 - 1e-12)
    assert moving_air.fin_conductance(length, along, sideways, end + more) >= leak * (1 - 1e-12)


def test_a_fin_agrees_with_a_ladder_of_resistors() -> None:
    length, along, sideways, end = 0.2, 0.013, 3.0, 0.22
    steps = 20_000
    step = length / steps
    ladder = end
    for _ in range(steps):
        ladder = 1 / (1 / ladder + step / along) + sideways * step
    got = moving_air.fin_conductance(length, along, sideways, end)
    assert got == pytest.approx(ladder, rel=1e-3)


def test_fahrenheit_is_recognised() -> None:
    with pytest.raises(OutOfRangeError, match=r"looks like Fahrenheit; that would be 20 °C"):
        moving_air.stack_flow_l_per_s(20, 0.25, 68, 5)
