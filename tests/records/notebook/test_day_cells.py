from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.records.notebook.day_cells import day
from combwright.terms.errors import NotebookError

days = st.dates(date(1990, 1, 1), date(2100, 12, 31))


@given(days)
def test_a_day_as_we_write_it_is_read_back(on: date) -> None:
    assert day(on.isoformat()) == on


@given(days)
def test_forms_that_can_mean_one_day_only_are_taken(on: date) -> None:
    assert day(f"{on:%Y/%m/%d}") == on
    assert day(f"{on.day} {on:%B} {on.year}") == on
    assert day(f"{on.day}-{on:%b}-{on.year}") == on
    assert day(f"{on.isoformat()} 00:00:00") == on


@given(days)
def test_day_and_month_in_numbers_are_taken_only_when_no_other_day_is_possible(on: date) -> None:
    text = f"{on.day:02}/{on.month:02}/{on.year}"
    if on.day > 12 or on.day == on.month:
        assert day(text) == on
    else:
        with pytest.raises(NotebookError, match="could be"):
            day(text)


@pytest.mark.parametrize(
    ("text", "what", "remedy"),
    [
        ("3/4/2026", "3 April or 4 March 2026", "2026-04-03 or 2026-03-04"),
        ("03.04.2026", "3 April or 4 March 2026", "2026-04-03 or 2026-03-04"),
        ("4-Apr-26", "4 Apr 2026 or 26 Apr 2004", "2026-04-04"),
        ("03/04/26", "year of two digits", "2026-04-03"),
        ("46115", "count of days: 2026-04-03", "2026-04-03"),
        ("46115.0", "count of days: 2026-04-03", "2026-04-03"),
        ("2026-02-30", "not in the calendar", "year-month-day"),
        ("31/6/2026", "not in the calendar", "year-month-day"),
        ("20260403", "not a day", "2026-04-03"),
        ("0026-04-03", "the year 26", "1990 to 2100"),
        ("3 Avril 2026", "", ""),
        ("4 Mrz 2026", "not a month in English", "year-month-day"),
        ("yesterday", "not a day", "year-month-day"),
        ("2026-04-03 14:30", "not a day", "year-month-day"),
    ],
)
def test_other_forms_are_refused_with_what_was_read_and_the_right_form(
    text: str, what: str, remedy: str
) -> None:
    with pytest.raises(NotebookError) as caught:
        day(text)
    assert what in caught.value.what
    assert remedy in caught.value.remedy


def test_a_spreadsheet_counts_from_1900_or_1904() -> None:
    """ECMA-376 part 1, 18.17.4.1: serial 1 is 1 January 1900 (with a leap day that never was), or
    serial 0 is 1 January 1904; from memory. 1 January 2000 is known as 36526 in the first.
    """
    assert date(1899, 12, 30) + timedelta(days=36526) == date(2000, 1, 1)
    with pytest.raises(NotebookError, match="2000-01-01 if it counts from 1900, 2004-01-02"):
        day("36526")
