"""Conditions of days that nobody has seen yet."""

from datetime import date, timedelta

import numpy as np
import pytest

from combwright.terms.errors import NotFoundError
from combwright.weather.conditions import (
    DAY,
    FLIGHT,
    MATING,
    MAX_C,
    MEAN_C,
    NECTAR,
    NIGHT_C,
    POLLEN,
)
from combwright.weather.sampled import sampled_conditions

FIRST = date(2026, 12, 20)
DAYS = sampled_conditions("Dublin", FIRST, 200, 3, 7)


def test_conditions_are_possible() -> None:
    assert DAYS.shape == (3, 200, 8)
    assert np.isfinite(DAYS).all()
    assert (DAYS[:, :, NIGHT_C] < DAYS[:, :, MEAN_C]).all()
    assert (DAYS[:, :, MEAN_C] < DAYS[:, :, MAX_C]).all()
    for column in (NECTAR, POLLEN, MATING):
        assert (DAYS[:, :, column] >= 0.0).all()
    assert (DAYS[:, :, MATING] <= 1.0).all()
    assert ((DAYS[:, :, FLIGHT] >= 0.0) & (DAYS[:, :, FLIGHT] <= 18.0)).all()


def test_days_are_counted_from_new_year() -> None:
    passed = [(FIRST + timedelta(days=day)).timetuple().tm_yday for day in range(200)]
    assert (DAYS[:, :, DAY] == passed).all()


def test_a_date_has_its_conditions_whatever_is_asked_for() -> None:
    later = sampled_conditions("Dublin", FIRST + timedelta(days=60), 40, 2, 7)
    assert later[:, :, [MEAN_C, MAX_C, NIGHT_C, FLIGHT]] == pytest.approx(
        DAYS[:2, 60:100][:, :, [MEAN_C, MAX_C, NIGHT_C, FLIGHT]]
    )


def test_a_warmer_climate_is_warmer_by_so_much_and_flies_more() -> None:
    warmer = sampled_conditions("Dublin", FIRST, 200, 3, 7, warmer_k=2.0)
    for column in (MEAN_C, MAX_C, NIGHT_C):
        assert warmer[:, :, column] == pytest.approx(DAYS[:, :, column] + 2.0)
    assert (warmer[:, :, FLIGHT] >= DAYS[:, :, FLIGHT] - 1e-9).all()
    assert warmer[:, :, FLIGHT].sum() > DAYS[:, :, FLIGHT].sum()


def test_an_unknown_place_or_district_is_refused() -> None:
    with pytest.raises(NotFoundError):
        sampled_conditions("Atlantis", FIRST, 2, 1, 7)
    with pytest.raises(NotFoundError):
        sampled_conditions("Dublin", FIRST, 2, 1, 7, district="the moon")
