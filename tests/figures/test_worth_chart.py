"""The chart of worths: the same bytes for the same data, said in words too."""

from datetime import date, timedelta

import pytest

from combwright.figures.worth_chart import describe_worth, worth_chart
from combwright.terms.errors import OutOfRangeError

WEEKS = [date(2027, 4, 5) + timedelta(days=7 * week) for week in range(6)]
CURVES = {"a frame of <b>": [6.0, 5, 4, 3, 2, 1], "a super today": [0.0, 1, 2, 3, 2, 1]}


def test_the_same_worths_give_the_same_bytes_with_a_description() -> None:
    drawn = worth_chart(WEEKS, CURVES, title="Worth & week")
    assert drawn == worth_chart(WEEKS, CURVES, title="Worth & week")
    assert 'role="img" aria-label="Worth &amp; week"' in drawn
    assert "a frame of &lt;b&gt;: April 6.0, May 2.0." in drawn
    assert "<b>" not in drawn


def test_each_thing_is_described() -> None:
    told = describe_worth(WEEKS, CURVES, title="Worth")
    assert all(name in told for name in CURVES)


@pytest.mark.parametrize("weeks", [WEEKS[:2], []])
def test_what_does_not_match_is_refused(weeks: list[date]) -> None:
    with pytest.raises(OutOfRangeError):
        worth_chart(weeks, CURVES, title="Worth")
