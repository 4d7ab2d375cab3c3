"""Readers of weather files: each form by a small file, then all that can be wrong with it."""

from datetime import date
from pathlib import Path

import aquacrop
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from combwright.sources.days import Read, runs
from combwright.sources.hours import sun_from_radiation_h
from combwright.sources.met_eireann_forecast import read_met_eireann_forecast
from combwright.sources.source_files import read_weather
from combwright.sources.table import HEADINGS, read_table, write_table
from combwright.terms.errors import CombwrightError, SourceError
from combwright.terms.weather import DailyWeather, Floats
from combwright.weather.climates import climate
from combwright.weather.generator import generate

FILES = Path(__file__).parent.parent / "data" / "weather"
DUBLIN = climate("Dublin Airport")
HEAD = ",".join(HEADINGS)
GOOD = "2025-05-01,15.2,6.1,0.0,9.4,5.1"


def read(name: str) -> Read:
    return read_weather((FILES / name).read_text("utf-8"), name)


def table(*lines: str, head: str = HEAD) -> Read:
    return read_weather("\n".join([head, *lines]) + "\n", "may.csv")


def said(found: Read) -> str:
    return " | ".join(str(problem) for problem in found.problems)


@settings(max_examples=20)
@given(st.dates(date(1990, 1, 1), date(2040, 1, 1)), st.integers(1, 40), st.integers(0, 99))
def test_what_is_written_is_read_again(first: date, days: int, seed: int) -> None:
    weather = generate(DUBLIN, first, days, 1, seed)
    found = read_weather(write_table(weather), "ours.csv")
    assert not found.problems
    (again,) = runs(found)
    assert again.first == weather.first
    for key in ("t_max_c", "t_min_c", "rain_mm", "sun_h", "wind_m_s"):
        assert (getattr(again, key) == getattr(weather, key)).all()


def test_a_daily_file_of_met_eireann() -> None:
    found = read("met_eireann_daily.csv")
    assert [day.on.day for day in found.days] == [1, 2, 5]
    assert found.days[0].wind_m_s == pytest.approx(5.14444)  # 10 knots
    assert found.days[1].t_min_c == -0.5
    assert found.days[2].on == date(2025, 5, 5)
    assert "© Met Éireann" in found.attribution
    assert "line 15, rain_mm: 3 May 2025 has no value" in said(found)
    assert "3 May 2025 to 4 May 2025: 2 days missing; none was made up" in said(found)


def test_a_year_beyond_all_calendars_is_left_out_and_said() -> None:
    text = (FILES / "met_eireann_daily.csv").read_text("utf-8")
    found = read_weather(text.replace("01-may-2025", f"01-may-{'9' * 30}"), "far.csv")
    assert [day.on.day for day in found.days] == [2, 5]
    assert "is no date" in said(found)


def test_head_lines_padded_with_commas_and_a_byte_order_mark_do_no_harm() -> None:
    text = (FILES / "met_eireann_daily.csv").read_text("utf-8")
    padded = "\ufeff" + text.replace("Station Name: NOWHERE", "Station Name: NOWHERE,,,,,")
    assert len(read_weather(padded, "padded.csv").days) == 3


def test_days_of_open_meteo_in_the_units_they_come_in() -> None:
    found = read("open_meteo_daily.json")
    assert [day.on.day for day in found.days] == [1, 2]
    assert found.days[0].sun_h == 10
    assert found.days[0].wind_m_s == pytest.approx(5)
    assert "3 May 2025 has no value" in said(found)


def test_hours_of_open_meteo() -> None:
    found = read("open_meteo_hourly.json")
    # ten hours without temperature hide the warmest of the second day
    assert [day.on.day for day in found.days] == [1, 3]
    assert found.days[0].t_max_c == 16
    assert found.days[0].t_min_c == 6
    assert found.days[0].rain_mm == 0.5
    assert found.days[0].wind_m_s == pytest.approx(5)
    assert found.days[0].sun_h is not None
    assert "2 May 2025 is not covered" in said(found)


def test_a_forecast_of_met_norway() -> None:
    found = read("met_norway.json")
    # the first day begins at five in the morning, the last holds one time only
    assert [day.on.day for day in found.days] == [2, 3, 4]
    second, third = found.days[0], found.days[1]
    assert second.t_max_c == 16
    assert second.rain_mm == pytest.approx(0.2)
    assert third.t_max_c == 17.5
    assert third.t_min_c == 4.5
    assert third.rain_mm == pytest.approx(6.0)
    # half the sky clear in 14.8 h of daylight
    assert second.sun_h == pytest.approx(7.4, abs=0.1)
    assert "1 May 2025 is not covered" in said(found)


def test_a_forecast_of_met_eireann() -> None:
    found = read("met_eireann_forecast.xml")
    assert [day.on.day for day in found.days] == [1, 2]
    assert found.days[0].rain_mm == pytest.approx(0.3)
    assert found.days[0].wind_m_s == pytest.approx(3.9)
    assert found.days[0].t_max_c == 16
    # radiation on the first day, cloud of 40 % on the second
    assert found.days[0].sun_h != found.days[1].sun_h
    assert found.days[1].sun_h == pytest.approx(0.6 * 14.66, abs=0.2)


@pytest.mark.parametrize(
    "entity",
    ['SYSTEM "file:///etc/hostname"', '"&b;&b;&b;&b;&b;&b;"', "SYSTEM 'http://203.0.113.9/'"],
)
def test_a_forecast_brings_nothing_in_from_elsewhere(entity: str) -> None:
    text = (FILES / "met_eireann_forecast.xml").read_text("utf-8")
    head, _, rest = text.partition("<weatherdata")
    made = f'{head}<!DOCTYPE w [<!ENTITY b "bees"><!ENTITY a {entity}>]><weatherdata{rest}'
    put = made.replace("<temperature ", "&a;<temperature ", 1)
    with pytest.raises(SourceError):
        read_met_eireann_forecast(put.replace('percent="', 'percent="&a;', 1), "made.xml")


def test_order_of_blocks_in_a_forecast_does_not_matter() -> None:
    lines = (FILES / "met_eireann_forecast.xml").read_text("utf-8").splitlines()
    blocks = [line for line in lines if "<time" in line]
    turned = [line for line in lines if "<time" not in line]
    turned[2:2] = reversed(blocks)
    found = read_weather("\n".join(turned), "turned.xml")
    assert found.days == read("met_eireann_forecast.xml").days


@pytest.mark.parametrize(
    ("line", "sentence"),
    [
        ("2025-05-02,6.1,15.2,0,1,1", "6.1 °C, is below the lowest, 15.2 °C"),
        ("2025-05-02,59,40,0,1,1", "line 3, t_max_c: 59 °C is not possible"),
        ("2025-05-02,15,6,-1,1,1", "-1 mm is not possible"),
        ("2025-05-02,15,6,0,25,1", "25 h is not possible"),
        ("2025-05-02,15,6,,1,1", "line 3, rain_mm: 2 May 2025 has no value"),
        ("2025-05-02,warm,6,0,1,1", "line 3: tmax_c is no number: “warm”"),
        ("2025-05-02,nan,6,0,1,1", "tmax_c is no number: “nan”"),
        ("2025-05-02,15,5,6,1,0,1,1", "A comma as decimal sign? Write 12.5."),
        ("02/05/2025,15,6,0,1,1", "“02/05/2025” is no date such as 2026-05-01"),
        ("2025-02-30,15,6,0,1,1", "“2025-02-30” is no date"),
        (GOOD, "line 3: 1 May 2025 comes twice. The first is used."),
        ("2025-05-04,15,6,0,1,1", "2 May 2025 to 3 May 2025: 2 days missing"),
        ("2025-05-03,15,6,0,1,1", "2 May 2025: 1 day missing"),
    ],
)
def test_a_bad_line_is_reported_with_its_place_and_the_others_are_read(
    line: str, sentence: str
) -> None:
    found = table(GOOD, line)
    assert sentence in said(found)
    assert found.days[0].on == date(2025, 5, 1)


@pytest.mark.parametrize(
    ("head", "sentence"),
    [
        ("date,tmax_c,tmin_c,rain_mm,wind", "“wind” does not say its unit. Write wind_m_s"),
        ("date,tmax,tmin_c,rain_mm", "“tmax” does not say its unit. Write tmax_c or tmax_f"),
        ("date,tmax_c,tmin_c", "no column for rain"),
        ("date,sun_h", "no column for tmax, tmin, rain"),
    ],
)
def test_headings_that_will_not_do_are_refused(head: str, sentence: str) -> None:
    with pytest.raises(SourceError, match=sentence):
        table(GOOD, head=head)


def test_other_units_are_brought_to_ours() -> None:
    found = table("2025-05-01,59,41,1,36", head="date,tmax_f,tmin_f,rain_in,wind_km_h")
    day = found.days[0]
    assert (day.t_max_c, day.t_min_c, day.rain_mm, day.wind_m_s) == pytest.approx((15, 5, 25.4, 10))


def test_sunshine_and_wind_may_be_missing_and_are_filled_on_demand_only() -> None:
    found = table("2025-05-01,15,6,0", "2025-05-02,14,7,3", head="date,tmax_c,tmin_c,rain_mm")
    assert found.unknown("sun_h") == found.unknown("wind_m_s") == 2
    assert runs(found) == ()
    (weather,) = runs(found, DUBLIN)
    dry, wet = weather.sun_h[0]
    assert dry > wet > 0


def test_a_gap_parts_the_runs() -> None:
    found = table(GOOD, "2025-05-02,15,6,0,1,1", "2025-05-04,15,6,0,1,1")
    assert [(run.first.day, run.days) for run in runs(found)] == [(1, 2), (4, 1)]


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("", "no weather file"),
        ("hello", "no weather file"),
        (HEAD + "\n", "No day of weather could be read"),
        ("{", "not whole JSON"),
        ('{"error": true, "reason": "Latitude must be in range"}', "Latitude must be in range"),
        ('{"latitude": 53.0}', "no “hourly”"),
        ("[]", "0 places"),
        ('{"properties": {}}', "no “geometry”"),
        ("<weatherdata>", "not whole XML"),
        ("<weatherdata/>", "no times"),
        ('<!DOCTYPE x [<!ENTITY a "b">]><x>&a;</x>', "document type"),
        ("[" * 100000, "JSON"),
    ],
)
def test_a_file_that_is_nothing_is_refused_in_words(text: str, sentence: str) -> None:
    with pytest.raises(SourceError, match=sentence):
        read_weather(text, "file")


@pytest.mark.parametrize("name", sorted(path.name for path in FILES.glob("*.*[!d]")))
def test_a_file_cut_off_anywhere_is_read_or_refused_in_words(name: str) -> None:
    text = (FILES / name).read_text("utf-8")
    for length in range(0, len(text), max(1, len(text) // 60)):
        try:
            found = read_weather(text[:length], name)
        except CombwrightError as error:
            assert str(error)  # noqa: PT017  # both outcomes are right
        else:
            assert found.days


@given(
    st.sampled_from(["open_meteo_daily.json", "open_meteo_hourly.json", "met_norway.json"]),
    st.integers(0, 4000),
    st.sampled_from(['"x"', "null", "1e999", "-1", "[]", "{}", "true"]),
)
def test_a_damaged_answer_is_read_or_refused_in_words(name: str, at: int, put: str) -> None:
    text = (FILES / name).read_text("utf-8")
    numbers = [place for place, sign in enumerate(text) if sign.isdigit()]
    place = numbers[at % len(numbers)]
    try:
        found = read_weather(text[:place] + put + text[place + 1 :], name)
    except CombwrightError as error:
        assert str(error)  # noqa: PT017  # both outcomes are right
    else:
        values = [value for day in found.days for value in (day.t_max_c, day.t_min_c, day.rain_mm)]
        assert np.isfinite(np.array(values, dtype=np.float64)).all()


def test_sunshine_from_radiation_is_the_way_back() -> None:
    """Dublin 27 June 1995 had 32.47 MJ/m², most of 30 years (computed): full sun."""
    assert sun_from_radiation_h(date(1995, 6, 27), 53.43, 32.47) == pytest.approx(16.7, abs=0.1)


def real_weather(area: str) -> DailyWeather:
    """Give daily weather of England, 1991 to 2021, as the package aquacrop ships it."""
    path = Path(aquacrop.__file__).parent / "data" / f"{area}_climate.txt"
    rows = [line.split() for line in path.read_text("utf-8").splitlines()[1:] if line.strip()]
    lines = [
        f"{year}-{int(month):02}-{int(day):02},{warm},{cold},{rain}"
        for day, month, year, cold, warm, rain, *_ in rows
    ]
    found = read_table("\n".join(["date,tmax_c,tmin_c,rain_mm", *lines]), f"{area}.csv")
    assert not found.problems
    (weather,) = runs(found, climate("Oxford"))
    return weather


def test_thirty_one_years_of_real_weather() -> None:
    """aquacrop data: 11 323 days of Lincolnshire, mean 10.030 °C, 710 mm a year (computed)."""
    weather = real_weather("lincolnshire")
    assert weather.days == 11323
    mean = (weather.t_max_c + weather.t_min_c)[0] / 2
    assert mean.mean() == pytest.approx(10.030, abs=0.002)
    assert weather.rain_mm.sum() / 31 == pytest.approx(710, abs=1)
    # October 2019 to March 2020: 183 days, mean 6.7975 °C, 2050.06 K·d below 18 °C
    start = (date(2019, 10, 1) - weather.first).days
    winter = mean[start : start + 183]
    assert winter.mean() == pytest.approx(6.7975, abs=0.001)
    assert np.maximum(18 - winter, 0).sum() == pytest.approx(2050.06, abs=0.05)


def remembering(series: Floats) -> tuple[float, float]:
    """Give the correlation with the day before, and the spread of months against that of days."""
    anomaly = series - series.mean(axis=0)
    lagged = np.corrcoef(anomaly[:, :-1].ravel(), anomaly[:, 1:].ravel())[0, 1]
    months = [slice(start, start + 30) for start in range(0, 360, 30)]
    shares = [
        series[:, month].mean(axis=1).std(ddof=1) / anomaly[:, month].std() for month in months
    ]
    return float(lagged), float(np.mean(shares))


@pytest.mark.parametrize("key", ["t_max_c", "t_min_c"])
@pytest.mark.parametrize("area", ["cambridge", "north_yorks", "northumberland", "suffolk"])
def test_sampled_english_weather_remembers_as_real_weather_does(area: str, key: str) -> None:
    """Real days of England, averaged over areas and so smoother, against sampled ones."""
    place = climate("Sheffield" if area.startswith("north") else "Oxford")
    real = getattr(real_weather(area), key)[0, : 31 * 365].reshape(31, 365)
    lagged, spread = remembering(real)
    our_lagged, our_spread = remembering(
        getattr(generate(place, date(2023, 1, 1), 365, 200, 2), key)
    )
    assert our_lagged == pytest.approx(lagged, abs=0.15)
    assert our_spread == pytest.approx(spread, abs=0.09)
