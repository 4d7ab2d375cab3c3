import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.mites.efficacy import (
    efficacy_without_control,
    henderson_tilton,
    natural_fall,
    removal_rate,
    survivors_of_trial,
    tray_efficacy,
)
from combwright.science.mites.growth import grown
from combwright.terms.errors import NotFoundError, OutOfRangeError

Share = st.floats(0.01, 0.99)


# COLOSS BEEBOOK 4.5.4.2.6 after EMA/CVMP/EWP/459883/2008: 95 % synthetic, 90 % others.
def test_limits_of_the_ema() -> None:
    good, fair = tray_efficacy(950, 50), tray_efficacy(900, 100)
    assert good.passes_synthetic
    assert fair.percent == 90
    assert fair.passes_other
    assert not fair.passes_synthetic


def test_natural_fall_of_six_weeks_exceeds_the_colony() -> None:
    assert natural_fall(1000, 42) == pytest.approx(1400)


def test_natural_fall_is_taken_off_and_said() -> None:
    result = tray_efficacy(1000, 100, natural_per_day=20, days=42)
    assert result.without_natural_percent == pytest.approx(100 * 160 / 260)
    assert "would have fallen anyway" in result.warnings[0]


def test_unknown_natural_fall_and_short_counts_are_said() -> None:
    assert "fall by themselves" in tray_efficacy(1000, 100).warnings[0]
    assert any("14 days" in said for said in tray_efficacy(90, 10, 0.1, 5).warnings)


@given(st.floats(1, 1e4), st.floats(0, 1e4), st.floats(0, 100), st.floats(0, 100))
def test_natural_fall_only_lowers(fallen: float, left: float, natural: float, days: float) -> None:
    result = tray_efficacy(fallen, left, natural, days)
    assert 0 <= result.without_natural_percent <= result.percent + 1e-9 <= 100 + 1e-9


def test_no_mites_show_nothing() -> None:
    with pytest.raises(OutOfRangeError, match="Without mites nothing is shown"):
        tray_efficacy(0, 0)


# Henderson & Tilton 1955: without change in the controls it is Abbott's plain reduction.
@given(st.floats(0.1, 100), st.floats(0, 100), st.floats(0.1, 100))
def test_henderson_tilton_without_change_is_the_reduction(
    before: float, after: float, control: float
) -> None:
    plain = 100 * (1 - after / before)
    assert henderson_tilton(before, after, control, control) == pytest.approx(plain)


@given(Share, st.floats(0.001, 0.03), st.floats(1, 60))
def test_growth_is_taken_off(kill: float, rate: float, days: float) -> None:
    after = float(grown(100 * (1 - kill), rate, days))
    assert efficacy_without_control(100, after, rate, days) == pytest.approx(100 * kill)


# Parasitologia 4(1):6, 2024: 90 % gone in 50.9 and 28.4 days.
@pytest.mark.parametrize(("days", "rate"), [(50.9, 0.0452), (28.4, 0.0811)])
def test_amitraz_strips(days: float, rate: float) -> None:
    assert removal_rate(days) == pytest.approx(rate, abs=5e-5)


def test_trials_leave_what_they_say() -> None:  # Coffey & Breen 2016, trial 1
    left = survivors_of_trial("oxalic acid sublimated, winter, Ireland", 1000)
    assert left == pytest.approx(48, abs=16)


def test_an_unknown_trial_names_the_known() -> None:
    with pytest.raises(NotFoundError, match="oxalic acid trickled"):
        survivors_of_trial("sugar", 1000)
