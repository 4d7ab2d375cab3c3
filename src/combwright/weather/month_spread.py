"""How months differ from year to year, beyond what independent days would make them differ."""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from combwright.terms.parameters import Parameter
from combwright.weather.climate import Climate
from combwright.weather.months import LENGTHS

Floats = NDArray[np.float64]

_SEEN = "Dublin Airport 1991-2020, standard deviation from year to year"
_RAIN = (28.9, 31.3, 25.5, 27.5, 33.2, 39.3, 32.0, 41.3, 29.4, 38.9, 46.6, 32.2)
_RAIN_MEAN = (62.1, 51.6, 51.4, 55.3, 56.8, 63.5, 61.8, 73.6, 61.8, 79.1, 83.3, 72.0)
_T_MAX = (1.12, 1.35, 1.38, 1.20, 0.98, 1.04, 1.14, 1.03, 0.85, 1.27, 1.11, 1.50)
_SUN = (16, 20, 31, 34, 37, 37, 30, 34, 16, 16, 17, 13)
_SUN_MEAN = (59.8, 80.9, 115.3, 161.3, 197.1, 178.2, 157.6, 154.9, 130.5, 104.2, 72.4, 55.5)

RAIN_SPREAD = tuple(
    Parameter(sd / mean, "of the month's rain", 0.3, 0.7, _SEEN, "computed")
    for sd, mean in zip(_RAIN, _RAIN_MEAN, strict=True)
)
T_MAX_SPREAD = tuple(Parameter(sd, "°C", 0.7, 1.6, _SEEN, "computed") for sd in _T_MAX)
SUN_SPREAD = tuple(
    Parameter(sd / mean, "of the month's sunshine", 0.1, 0.35, _SEEN, "computed")
    for sd, mean in zip(_SUN, _SUN_MEAN, strict=True)
)
MOST_SHARED = 0.5  # of the variance of a day; more would leave no weather within the month


class Shared(NamedTuple):
    """What all days of a month share: a log spread of rain, and shares of variance; [month]."""

    rain: Floats
    warmth: Floats
    sun: Floats


def wet_days_variance(climate: Climate, days: Floats) -> Floats:
    r"""Variance of the number of wet days in a month.

    .. math:: \mathrm{var}\, n = N \pi (1 - \pi) \frac{1 + d}{1 - d}, \quad d = p_{ww} - p_{dw}

    References
    ----------
    .. [1] R. W. Katz, "Precipitation as a chain-dependent process", J. Appl. Meteorol. 16,
       671-676, 1977 (from memory); for long months.

    """
    wet, memory = climate.wet_share, climate.wet_after_wet - climate.wet_after_dry
    return np.asarray(days * wet * (1 - wet) * (1 + memory) / (1 - memory))


def rain_variance(climate: Climate, days: Floats = LENGTHS) -> Floats:
    r"""Variance of a month's rain if nothing is shared, in mm².

    .. math:: \mathrm{var}\, S = N \pi \sigma^2 + \mu^2\, \mathrm{var}\, n

    References
    ----------
    .. [1] Katz 1977, as above; :math:`\mu, \sigma` are of the rain of a wet day.

    """
    mean = climate.amount_shape * climate.amount_scale_mm
    variance = mean * climate.amount_scale_mm
    return np.asarray(
        days * climate.wet_share * variance + mean**2 * wet_days_variance(climate, days)
    )


def mean_variance(climate: Climate, quantity: int) -> float:
    """Variance of the mean residual of 30 days if nothing is shared.

    ``quantity`` is 0 for the highest, 1 for the lowest temperature, 2 for sunshine.
    """
    days = 30
    lagged = correlation(climate)
    total = float(lagged[quantity, quantity])
    for lag in range(1, days):
        lagged = climate.memory @ lagged
        total += 2 * (1 - lag / days) * float(lagged[quantity, quantity])
    return total / days


def correlation(climate: Climate) -> Floats:
    """Correlation of the residuals on one day: M = A M Aᵀ + B Bᵀ, solved by repetition."""
    source = climate.shock @ climate.shock.T
    found = source
    for _ in range(100):
        found = climate.memory @ found @ climate.memory.T + source
    return np.asarray(found)


def shared(climate: Climate) -> Shared:
    """Say how much the days of a month must share to make years as unlike as they are.

    The spread between years of Dublin is taken for all places, for rain and sunshine in
    proportion to the mean (judgement: it is the only table at hand).
    """
    rain_mean = LENGTHS * climate.wet_share * climate.amount_shape * climate.amount_scale_mm
    wanted = np.array([each.value for each in RAIN_SPREAD]) ** 2
    lacking = np.maximum(wanted - rain_variance(climate) / rain_mean**2, 0)
    sun_sd = np.array([each.value for each in SUN_SPREAD]) * climate.mean(climate.sun_h)
    warmth_sd = np.array([each.value for each in T_MAX_SPREAD])
    return Shared(
        np.sqrt(np.log1p(lacking)),
        _share(climate, 0, climate.t_max_c, climate.t_max_sd, warmth_sd),
        _share(climate, 2, climate.sun_h, climate.sun_sd, sun_sd),
    )


def _share(climate: Climate, quantity: int, mean: Floats, sd: Floats, wanted_sd: Floats) -> Floats:
    wet_days = wet_days_variance(climate, LENGTHS) / LENGTHS**2
    wanted = wanted_sd**2 - (mean[1] - mean[0]) ** 2 * wet_days
    within = climate.mean(sd**2)
    own = mean_variance(climate, quantity)
    return np.asarray(np.clip((wanted / within - own) / (1 - own), 0, MOST_SHARED))
