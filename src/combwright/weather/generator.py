"""Sampled weather: equally likely days of a place, fixed by seed, scenario and date.

The weather of a date does not depend on how many days or scenarios are asked for. Two places
sampled with one seed share their luck, as neighbours share their weather.
"""

from datetime import date, timedelta
from functools import cache
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from combwright.science.flight.sun import daylight_h
from combwright.terms.data_files import parameter
from combwright.terms.errors import OutOfRangeError
from combwright.terms.ranges import within
from combwright.terms.weather import DailyWeather
from combwright.weather.chance_of_days import Chance, chance
from combwright.weather.climate import Climate
from combwright.weather.month_spread import shared
from combwright.weather.months import calendar_days, months_of, smooth
from combwright.weather.sunshine import uncensored

Floats = NDArray[np.float64]

WARM_UP_DAYS = 40  # after so many days the start is forgotten
WET_FROM_MM = 0.2  # the threshold for which the stations' chances were computed
SMALLEST_RANGE_C = 0.5  # between the lowest and the highest temperature of a day
WIND_SPREAD = parameter("weather/numbers", "wind_spread")
WIND_MEMORY = parameter("weather/numbers", "wind_memory")
_LOG_WIND = float(np.sqrt(np.log1p(WIND_SPREAD.value**2)))


class _Tables(NamedTuple):
    """A climate by calendar day, [dry or wet, 366] or [366], and by month."""

    mean: Floats  # [quantity, dry or wet, 366]
    sd: Floats
    wind: Floats
    most_sun: Floats
    own: Floats  # share of a residual that is the day's own and not the month's, [quantity, month]
    common: Floats
    rain: Floats


class _State(NamedTuple):
    """What one day hands on to the next; each [scenario] or [quantity, scenario]."""

    wet: NDArray[np.bool_]
    residual: Floats
    gust: Floats


def generate(place: Climate, first: date, days: int, scenarios: int, seed: int) -> DailyWeather:
    r"""Sample weather of a place.

    Wet and dry days follow each other as a Markov chain, the rain of a wet day is gamma
    distributed, and the residuals of temperatures and sunshine, against the mean of a dry or wet
    day of the season, remember the day before:

    .. math:: \chi_t = A \chi_{t-1} + B \epsilon_t

    Each month shares a part of its residuals and a factor on its rain, because months differ more
    from year to year than independent days would make them.

    To a tenth of each unit, as stations report it, [scenario, day].

    References
    ----------
    .. [1] C. W. Richardson, "Stochastic simulation of daily precipitation, temperature, and solar
       radiation", Water Resour. Res. 17, 182-190, 1981, doi:10.1029/WR017i001p00182 (method from
       memory and from published code; matrices read). Stations: computed from daily records.

    Examples
    --------
    >>> from combwright.weather.climates import climate
    >>> sampled = generate(climate("Dublin"), date(2026, 4, 1), 30, scenarios=3, seed=1)
    >>> sampled.t_max_c.shape, bool((sampled.t_max_c > sampled.t_min_c).all())
    ((3, 30), True)

    """
    _check(days, scenarios)
    start = first - timedelta(days=WARM_UP_DAYS)
    begin = _State(np.zeros(scenarios, dtype=bool), np.zeros((3, scenarios)), np.zeros(scenarios))
    return _cut(_sample(place, start, WARM_UP_DAYS + days, seed, begin), first)


def continue_from(
    known: DailyWeather, place: Climate, days: int, scenarios: int, seed: int
) -> DailyWeather:
    """Repeat known weather in every version and go on from its last day with sampled weather.

    What is known, happened or forecast, is one version, or as many as are wanted.

    Notes
    -----
    The first days lean on the last known one: wet or dry, warm or cold for the season. What the
    rest of its month shares is drawn afresh.

    Examples
    --------
    >>> from combwright.weather.climates import climate
    >>> place = climate("Dublin")
    >>> known = generate(place, date(2026, 4, 1), 10, scenarios=1, seed=7)
    >>> longer = continue_from(known, place, 5, scenarios=4, seed=1)
    >>> longer.days, bool((longer.rain_mm[:, :10] == known.rain_mm).all())
    (15, True)

    """
    _check(days, scenarios)
    if known.days == 0 or known.scenarios not in {1, scenarios}:
        raise OutOfRangeError(
            f"Known weather of {known.days} days in {known.scenarios} versions cannot be "
            f"continued in {scenarios} versions.",
            remedy="Give at least one day, in one version or in as many as are wanted.",
        )
    before = [np.broadcast_to(series, (scenarios, known.days)) for series in _series(known)]
    state = _state_after(place, known.last, [series[:, -1] for series in before])
    onward = _sample(place, known.last + timedelta(days=1), days, seed, state)
    joined = [np.concatenate(pair, axis=1) for pair in zip(before, _series(onward), strict=True)]
    return DailyWeather(known.first, *joined)


def _check(days: int, scenarios: int) -> None:
    within(days, 0, 40000, "The number of days")
    within(scenarios, 1, 100000, "The number of versions of the weather")


def _series(weather: DailyWeather) -> tuple[Floats, ...]:
    w = weather
    return w.t_max_c, w.t_min_c, w.rain_mm, w.sun_h, w.wind_m_s


def _cut(weather: DailyWeather, first: date) -> DailyWeather:
    lead = (first - weather.first).days
    return DailyWeather(first, *(series[:, lead:] for series in _series(weather)))


@cache
def _tables(place: Climate) -> _Tables:
    """Bring a climate into the form that days are read from."""
    most_sun = daylight_h(np.minimum(np.arange(366) + 1, 365), place.latitude_deg)
    sun = uncensored(
        smooth(place.sun_h),
        np.maximum(smooth(place.sun_sd), 0.1),
        np.broadcast_to(most_sun, (2, 366)),
    )
    mean = np.array([smooth(place.t_max_c), smooth(place.t_min_c), sun[0]])
    sd = np.array([smooth(place.t_max_sd), smooth(place.t_min_sd), sun[1]])
    common = shared(place)
    share = np.array([common.warmth, common.warmth, common.sun])
    return _Tables(
        mean, sd, smooth(place.wind_m_s), most_sun, np.sqrt(1 - share), np.sqrt(share), common.rain
    )


def _state_after(place: Climate, day: date, values: list[Floats]) -> _State:
    """Read from a day's weather what it hands on."""
    tables, at, month = _tables(place), calendar_days(day, 1)[0], day.month - 1
    t_max, t_min, rain, sun, wind = values
    wet = rain >= WET_FROM_MM
    mean, sd = (table[:, wet.astype(int), at] for table in (tables.mean, tables.sd))
    residual = (np.array([t_max, t_min, sun]) - mean) / sd
    log = np.log(np.maximum(wind, 0.1) / tables.wind[at]) + _LOG_WIND**2 / 2
    # of a residual seen, so much is expected to be the day's own
    return _State(wet, residual * tables.own[:, month, None], log / _LOG_WIND)


def _sample(place: Climate, first: date, days: int, seed: int, state: _State) -> DailyWeather:
    scenarios = state.wet.size
    drawn = chance(first, days, scenarios, seed, place)
    wet = _wet_days(place, first, drawn, state)
    residual = _residuals(place, drawn, state)
    tables, at, month = _tables(place), calendar_days(first, days), months_of(first, days)
    own, common = tables.own[:, month, None], tables.common[:, month, None]
    total = own * residual + common * drawn.month
    kind = wet.astype(int)
    values = tables.mean[:, kind, at[:, None]] + tables.sd[:, kind, at[:, None]] * total
    t_max, t_min = _ordered(values[0], values[1])
    factor = np.exp(tables.rain[month, None] * drawn.rain_month - tables.rain[month, None] ** 2 / 2)
    amount = drawn.amount * place.amount_scale_mm[month, None] * factor
    rain = np.where(wet, np.maximum(amount, WET_FROM_MM), 0.0)
    sun = np.clip(values[2], 0, tables.most_sun[at, None])
    wind = tables.wind[at, None] * np.exp(_LOG_WIND * _gusts(drawn, state) - _LOG_WIND**2 / 2)
    return DailyWeather(
        first, *(np.ascontiguousarray(v.T).round(1) for v in (t_max, t_min, rain, sun, wind))
    )


def _wet_days(place: Climate, first: date, drawn: Chance, state: _State) -> NDArray[np.bool_]:
    """Follow the chain of wet and dry days, [day, scenario]."""
    month = months_of(first, len(drawn.occurrence))
    wet, now = np.empty(drawn.occurrence.shape, dtype=bool), state.wet
    after = zip(place.wet_after_dry[month], place.wet_after_wet[month], strict=True)
    for day, (after_dry, after_wet) in enumerate(after):
        now = drawn.occurrence[day] < np.where(now, after_wet, after_dry)
        wet[day] = now
    return wet


def _residuals(place: Climate, drawn: Chance, state: _State) -> Floats:
    """Follow the residuals, [quantity, day, scenario]."""
    shocks = np.einsum("ij,jds->dis", place.shock, drawn.residual)
    found, now = np.empty_like(shocks), state.residual
    for day, shock in enumerate(shocks):
        now = place.memory @ now + shock
        found[day] = now
    return np.asarray(found.transpose(1, 0, 2))


def _gusts(drawn: Chance, state: _State) -> Floats:
    """Follow the normal quantity behind the wind, [day, scenario]."""
    memory = WIND_MEMORY.value
    found, now, news = np.empty_like(drawn.wind), state.gust, np.sqrt(1 - memory**2)
    for day, shock in enumerate(drawn.wind):
        now = memory * now + news * shock
        found[day] = now
    return found


def _ordered(t_max: Floats, t_min: Floats) -> tuple[Floats, Floats]:
    """Keep the lowest temperature below the highest, and their mean where it is."""
    middle = (t_max + t_min) / 2
    half = np.maximum((t_max - t_min) / 2, SMALLEST_RANGE_C / 2)
    return middle + half, middle - half
