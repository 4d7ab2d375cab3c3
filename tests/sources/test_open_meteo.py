"""Answers of Open-Meteo in each shape that the service gives, and in those it should not give."""

import json
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import pytest

from combwright.sources.days import Day
from combwright.sources.hours import sun_from_radiation_h
from combwright.sources.open_meteo import read_open_meteo
from combwright.terms.errors import SourceError

Answer = dict[str, Any]
FILES = Path(__file__).parent.parent / "data" / "weather"


def held(name: str) -> Answer:
    found: Answer = json.loads((FILES / name).read_text("utf-8"))
    return found


@pytest.fixture
def answer() -> Answer:
    return held("open_meteo_daily.json")


@pytest.fixture
def hours() -> Answer:
    return held("open_meteo_hourly.json")


def read(answer: object) -> list[Day]:
    return list(read_open_meteo(json.dumps(answer), "answer.json").days)


def drop(answer: Answer, block: str, key: str) -> None:
    del answer[block][key], answer[f"{block}_units"][key]


def test_sunshine_is_worked_out_of_the_light_where_it_is_not_told(answer: Answer) -> None:
    drop(answer, "daily", "sunshine_duration")
    answer["daily"]["shortwave_radiation_sum"] = [20.0, 5.0, None]
    answer["daily_units"]["shortwave_radiation_sum"] = "MJ/m²"
    bright, dull = read(answer)
    assert bright.sun_h == sun_from_radiation_h(bright.on, 53.35, 20.0)
    assert dull.sun_h == sun_from_radiation_h(dull.on, 53.35, 5.0) < bright.sun_h


def test_wind_of_a_day_is_the_mean_of_its_hours_where_the_day_has_none(answer: Answer) -> None:
    drop(answer, "daily", "wind_speed_10m_mean")
    answer["hourly_units"] = {"wind_speed_10m": "km/h"}
    answer["hourly"] = {
        "time": ["2025-05-01T11:00", "2025-05-01T12:00", "2025-05-01T13:00", "2025-05-03T00:00"],
        "wind_speed_10m": [18.0, None, 36.0, 90.0],
    }
    first, second = read(answer)
    assert first.wind_m_s == pytest.approx(7.5)
    assert second.wind_m_s is None


def test_seconds_since_1970_are_read_as_times_of_the_place(answer: Answer) -> None:
    """Midnight of 1 May by Irish clocks is 23 h of 30 April in UTC."""
    iso = read(answer)
    answer["daily"]["time"] = [
        int(datetime(2025, month, day, 23, tzinfo=UTC).timestamp())
        for month, day in ((4, 30), (5, 1), (5, 2))
    ]
    answer["daily_units"]["time"] = "unixtime"
    assert read(answer) == iso


def test_one_place_in_a_list_is_that_place(answer: Answer) -> None:
    assert read([answer]) == read(answer)


def test_hours_are_taken_where_days_lack_a_temperature(hours: Answer) -> None:
    alone = read(hours)
    hours["daily"] = {"time": ["2025-05-01"], "temperature_2m_max": [40.0]}
    hours["daily_units"] = {"temperature_2m_max": "°C"}
    assert read(hours) == alone


def test_more_than_one_place_is_refused(answer: Answer) -> None:
    with pytest.raises(SourceError, match="holds 2 places"):
        read([answer, answer])


def test_the_word_of_the_service_on_what_went_wrong_is_passed_on() -> None:
    with pytest.raises(SourceError, match="Daily API request limit exceeded"):
        read({"error": True, "reason": "Daily API request limit exceeded"})


def test_an_answer_from_nowhere_is_refused(answer: Answer) -> None:
    answer["latitude"] = None
    with pytest.raises(SourceError, match="latitude is missing"):
        read(answer)


def test_a_series_shorter_than_its_times_is_refused(answer: Answer) -> None:
    answer["daily"]["precipitation_sum"].pop()
    with pytest.raises(SourceError, match="“precipitation_sum” has not one value for each time"):
        read(answer)


@pytest.mark.parametrize("time", ["the first of May", 10**20])
def test_what_is_no_time_is_named(answer: Answer, time: object) -> None:
    answer["daily"]["time"][1] = time
    with pytest.raises(SourceError, match=f"“{time}” is no time"):
        read(answer)


def test_a_unit_nobody_knows_is_named(answer: Answer) -> None:
    answer["daily_units"]["precipitation_sum"] = "furlong"
    with pytest.raises(SourceError, match="unit “furlong” is not known"):
        read(answer)


def test_neither_days_nor_hours_with_rain_says_what_to_ask_for(hours: Answer) -> None:
    drop(hours, "hourly", "precipitation")
    with pytest.raises(SourceError, match="temperature_2m and precipitation"):
        read(hours)
