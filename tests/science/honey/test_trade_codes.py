"""The text of a trade code, on the sample number that GS1 itself shows."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.honey.trade_codes import check_digit, trade_text
from combwright.terms.errors import OutOfRangeError

SAMPLE = "09501101530003"


def test_the_worked_example() -> None:
    text = trade_text(SAMPLE, date(2028, 7, 14), "26195-1", 340)
    assert text == "(01)09501101530003(15)280714(10)26195-1(3103)000340"


@given(st.text("0123456789", min_size=13, max_size=13), st.integers(0, 12), st.integers(1, 9))
def test_one_wrong_digit_always_shows(first: str, at: int, more: int) -> None:
    wrong = f"{first[:at]}{(int(first[at]) + more) % 10}{first[at + 1 :]}"
    assert check_digit(wrong) != check_digit(first)


@pytest.mark.parametrize(
    ("article", "lot", "net_g"),
    [("09501101530004", "1", 340), ("12", "1", 340), (SAMPLE, "1" * 21, 340), (SAMPLE, "é", 340),
     (SAMPLE, "1", 1e6)],
)  # fmt: skip
def test_what_does_not_fit_is_refused(article: str, lot: str, net_g: float) -> None:
    with pytest.raises(OutOfRangeError):
        trade_text(article, date(2028, 7, 14), lot, net_g)
