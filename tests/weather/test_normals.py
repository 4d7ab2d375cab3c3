"""A climate from monthly means: the means are met, the rest is the model's."""

from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.weather.climate import Climate
from combwright.weather.climates import ARRAYS, WORDS, climate
from combwright.weather.months import LENGTHS
from combwright.weather.normals import like

MODEL = climate("Dublin Airport")
T_MAX, T_MIN = MODEL.mean(MODEL.t_max_c), MODEL.mean(MODEL.t_min_c)
RAIN = LENGTHS * MODEL.wet_share * MODEL.amount_shape * MODEL.amount_scale_mm
SUN = LENGTHS * MODEL.mean(MODEL.sun_h)


def made(warmer: float, wetter: float, sunnier: float, windier: float) -> Climate:
    found: dict[str, Any] = like(
        MODEL,
        {
            **{word: getattr(MODEL, word) for word in WORDS},
            "t_max_c": T_MAX + warmer,
            "t_min_c": T_MIN + warmer,
            "rain_mm": RAIN * wetter,
            "sun_month_h": SUN * sunnier,
            "wind_factor": windier,
        },
    )
    return Climate(**{key: found[key] for key in (*WORDS, *ARRAYS)})


@given(st.floats(-5, 5), st.floats(0.5, 1.4), st.floats(0.6, 1.4), st.floats(0.5, 2))
def test_the_means_of_the_months_are_met(
    warmer: float, wetter: float, sunnier: float, windier: float
) -> None:
    place = made(warmer, wetter, sunnier, windier)
    assert place.mean(place.t_max_c) == pytest.approx(T_MAX + warmer)
    assert place.mean(place.t_min_c) == pytest.approx(T_MIN + warmer)
    rain = LENGTHS * place.wet_share * place.amount_shape * place.amount_scale_mm
    assert rain == pytest.approx(RAIN * wetter)
    assert LENGTHS * place.mean(place.sun_h) == pytest.approx(SUN * sunnier)
    assert place.wind_m_s == pytest.approx(MODEL.wind_m_s * windier)


@given(st.floats(1.01, 1.4))
def test_more_rain_means_more_wet_days_and_more_on_each(wetter: float) -> None:
    place = made(0.0, wetter, 1.0, 1.0)
    assert (place.wet_share > MODEL.wet_share).all()
    assert (place.amount_scale_mm > MODEL.amount_scale_mm).all()
    memory = place.wet_after_wet - place.wet_after_dry
    assert memory == pytest.approx(MODEL.wet_after_wet - MODEL.wet_after_dry)


def test_the_same_means_give_the_same_place() -> None:
    place = made(0.0, 1.0, 1.0, 1.0)
    for key in ARRAYS:
        assert np.allclose(getattr(place, key), getattr(MODEL, key), rtol=1e-9), key
