"""Forage through the year: what the trade says of it, and what must hold in any weather."""

from datetime import date

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from combwright.terms.errors import NotFoundError
from combwright.terms.weather import DailyWeather
from combwright.weather.climates import climate
from combwright.weather.forage import (
    SEASON_LUCK,
    average_year,
    calendar,
    districts,
    forage_index,
)
from combwright.weather.generator import generate
from combwright.weather.months import smooth

DUBLIN = climate("Dublin Airport")
YEAR = date(2026, 1, 1)
SAMPLED = generate(DUBLIN, YEAR, 365, 100, 3)
SERIES = (*(SAMPLED.t_max_c, SAMPLED.t_min_c, SAMPLED.rain_mm, SAMPLED.sun_h, SAMPLED.wind_m_s),)


def changed(weather: DailyWeather, **series: np.ndarray) -> DailyWeather:
    kept = {
        key: getattr(weather, key) for key in ("t_max_c", "t_min_c", "rain_mm", "sun_h", "wind_m_s")
    }
    return DailyWeather(weather.first, **kept | series)


def month(index: object, number: int) -> float:
    values = np.asarray(index)
    starts = np.cumsum([0, 31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31])
    return float(values[..., starts[number - 1] : starts[number]].mean())


def test_the_usual_district_peaks_at_one() -> None:
    nectar, pollen = average_year(calendar("lowland mixed farmland"), DUBLIN)
    assert nectar.max() == pytest.approx(1)
    assert pollen.max() == pytest.approx(1)


@pytest.mark.parametrize("district", ["lowland mixed farmland", "rape and clover"])
def test_two_peaks_with_a_gap_in_june(district: str) -> None:
    """Trade: gap from late May to about 20 June; farms peak in May and July (Timberlake 2019)."""
    nectar, _ = average_year(calendar(district), DUBLIN)
    may, gap, july = nectar[121:145].max(), nectar[158:165].mean(), nectar[190:215].max()
    assert gap < 0.4 * may
    assert gap < 0.3 * july


def test_each_district_has_its_own_harvest() -> None:
    """Trade: rape in May, ling from mid August on the moor, lime and gardens in town."""
    by_district = {name: average_year(calendar(name), DUBLIN)[0] for name in districts()}
    assert max(districts(), key=lambda name: month(by_district[name], 5)) == "rape and clover"
    late = {name: float(index[225:250].mean()) for name, index in by_district.items()}
    assert max(late, key=late.__getitem__) == "heather moor"
    lime = {name: float(index[180:195].mean()) for name, index in by_district.items()}
    assert max(lime, key=lime.__getitem__) == "garden town"


def test_ivy_feeds_in_september_and_october_and_nothing_in_winter() -> None:
    nectar, pollen = forage_index(calendar("lowland mixed farmland"), SAMPLED, DUBLIN, seed=1)
    assert month(nectar, 10) > 0.1
    assert month(nectar, 12) == 0
    assert month(pollen, 12) == 0


def test_clover_wants_warmth() -> None:
    """Irish press: white clover and bramble both want about 20 °C."""
    summer = [
        plant for plant in calendar("rape and clover") if plant.name in {"white clover", "bramble"}
    ]
    assert len(summer) == 2
    for plant in summer:
        assert float(plant.flowing(np.array(20.0))) == 1
        assert float(plant.flowing(np.array(14.0))) == 0


@settings(max_examples=20)
@given(st.floats(0.2, 3), st.sampled_from(districts()))
def test_a_warmer_july_gives_more_nectar_and_no_other_pollen(warmer: float, district: str) -> None:
    plants = calendar(district)
    july = np.zeros(365)
    july[181:212] = warmer
    warm = changed(SAMPLED, t_max_c=SAMPLED.t_max_c + july)
    before, after = (forage_index(plants, each, DUBLIN, seed=1) for each in (SAMPLED, warm))
    assert (after[0] >= before[0]).all()
    assert after[0].sum() > before[0].sum()
    assert (after[1] == before[1]).all()


@settings(max_examples=20)
@given(st.floats(0.5, 3))
def test_a_warm_spring_is_early(warmer: float) -> None:
    spring = np.zeros(365)
    spring[31:120] = warmer
    warm = changed(SAMPLED, t_max_c=SAMPLED.t_max_c + spring, t_min_c=SAMPLED.t_min_c + spring)
    plants = tuple(one for one in calendar("lowland mixed farmland") if one.name == "hawthorn")
    middles = []
    for weather in (SAMPLED, warm):
        _, pollen = forage_index(plants, weather, DUBLIN, seed=1)
        middles.append((pollen.sum(axis=0) * np.arange(365)).sum() / pollen.sum())
    assert 4 * warmer < middles[0] - middles[1] < 8 * warmer


def test_luck_belongs_to_the_year_and_the_version_of_the_weather() -> None:
    plants = calendar("lowland mixed farmland")
    whole = forage_index(plants, SAMPLED, DUBLIN, seed=1)[0]
    fewer = DailyWeather(YEAR, *(series[:10] for series in SERIES))
    assert (forage_index(plants, fewer, DUBLIN, seed=1)[0] == whole[:10]).all()
    assert (forage_index(plants, SAMPLED, DUBLIN, seed=2)[0] != whole).any()


def test_luck_is_one_on_the_average() -> None:
    """One warm year 20 000 times: only luck differs, so the mean is that of a year without it."""
    plants = calendar("heather moor")
    versions = (20000, 365)
    warm, cool, rest = np.full(versions, 25.0), np.full(versions, 10.0), np.zeros(versions)
    weather = DailyWeather(YEAR, warm, cool, rest, rest, rest)
    nectar, _ = forage_index(plants, weather, DUBLIN, seed=1)
    days = np.arange(366.0)
    ivy = plants[-1]
    usual = ivy.nectar * ivy.bloom(days) * ivy.flowing(smooth(DUBLIN.mean(DUBLIN.t_max_c)))
    scale = average_year((ivy,), DUBLIN)[0].max() / usual.max()
    without = scale * sum(plant.nectar * float(plant.bloom(days).sum()) for plant in plants)
    assert nectar.sum(axis=1).mean() == pytest.approx(without, rel=0.01)


def test_years_differ_by_more_than_their_weather() -> None:
    plants = calendar("lowland mixed farmland")
    one_weather = DailyWeather(YEAR, *(np.repeat(series[:1], 200, axis=0) for series in SERIES))
    july = forage_index(plants, one_weather, DUBLIN, seed=1)[0][:, 181:212].sum(axis=1)
    assert july.std() / july.mean() > SEASON_LUCK.value


def test_a_period_over_new_year_is_two_years() -> None:
    weather = generate(DUBLIN, date(2025, 7, 1), 730, 2, 1)
    nectar, pollen = forage_index(calendar("lowland mixed farmland"), weather, DUBLIN, seed=1)
    assert nectar.shape == pollen.shape == (2, 730)
    assert np.isfinite(nectar).all()
    assert (nectar >= 0).all()


def test_an_unknown_district_is_answered_with_the_known_ones() -> None:
    with pytest.raises(NotFoundError, match="heather moor"):
        calendar("jungle")
