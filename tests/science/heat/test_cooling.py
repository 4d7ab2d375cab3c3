"""Cooling syrup against an integrator and CoolProp, and dew on walls."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from combwright.science.heat import cooling
from combwright.terms.errors import OutOfRangeError

FEEDER = {"outside_c": 5.0, "syrup_kg": 2.0, "heat_capacity_kj_per_kg_k": 2.8}


def test_without_sugar_syrup_is_water() -> None:
    from CoolProp.CoolProp import PropsSI

    water = PropsSI("C", "T", 293.15, "P", 101325, "Water") / 1000
    assert cooling.syrup_heat_capacity_kj_per_kg_k(0.0) == pytest.approx(water, rel=0.002)


def test_cooling_agrees_with_an_integrator() -> None:
    out, down, hive = 0.6, 0.3, 22.0

    def slope(_: float, t: np.ndarray) -> np.ndarray:
        return (out * (5 - t) + down * (hive - t)) / (2000 * 2.8)

    solved = solve_ivp(slope, (0, 6 * 3600), [40.0], rtol=1e-9, atol=1e-9)
    got = cooling.syrup_temperature_c(
        6, start_c=40, loss_w_per_k=out, to_hive_w_per_k=down, hive_c=hive, **FEEDER
    )
    assert got == pytest.approx(float(solved.y[0][-1]), abs=1e-5)


@given(st.floats(0, 100), st.floats(0, 5), st.floats(0.01, 2))
def test_a_cushion_keeps_syrup_warm_longer(hours: float, cushion: float, area: float) -> None:
    bare = cooling.feeder_loss_w_per_k(area)
    covered = cooling.feeder_loss_w_per_k(area, cushion_m2_k_per_w=cushion)
    assert covered <= bare
    warm, cold = (
        cooling.syrup_temperature_c(hours, start_c=40, loss_w_per_k=loss, **FEEDER)
        for loss in (covered, bare)
    )
    assert 5 - 1e-9 <= cold <= warm + 1e-9 <= 40 + 1e-8


def test_a_feeder_that_loses_nothing_stays_as_it_is() -> None:
    got = cooling.syrup_temperature_c(50, start_c=35, loss_w_per_k=0, **FEEDER)
    assert got == pytest.approx(35)


def test_bare_syrup_is_no_lump_under_a_strict_rule_but_cushioned_syrup_nearly_is() -> None:
    bare = cooling.biot_number(10, 25)
    cushioned = cooling.biot_number(1 / (0.1 + 1.43), 25)
    assert bare > cooling.LUMPED_BELOW > cushioned


def test_fahrenheit_syrup_is_recognised() -> None:
    with pytest.raises(OutOfRangeError, match="Fahrenheit"):
        cooling.syrup_temperature_c(3, start_c=104, loss_w_per_k=0.6, **FEEDER)
    with pytest.raises(OutOfRangeError, match="not litres"):
        cooling.syrup_temperature_c(
            3,
            start_c=40,
            loss_w_per_k=0.6,
            outside_c=5,
            syrup_kg=2000,
            heat_capacity_kj_per_kg_k=2.8,
        )
