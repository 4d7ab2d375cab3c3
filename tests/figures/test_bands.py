"""Season charts: the same bytes for the same data, and no chart of nonsense."""

import math
import os
import re
import subprocess
import sys
import xml.etree.ElementTree as ET
from datetime import date, timedelta
from time import sleep

import pytest

from combwright.figures.bands import Course, Seen, describe_season, season_chart, theme_css
from combwright.terms.errors import OutOfRangeError

SVG = "{http://www.w3.org/2000/svg}"
DAYS = [date(2026, 3, 28) + timedelta(days=i) for i in range(20)]


def course(slope: float) -> Course:
    mid = [4 + slope * i for i in range(20)]
    return Course(DAYS, [v - 1 for v in mid], mid, [v + 1.5 for v in mid])


def chart() -> str:
    return season_chart(
        {"as advised": course(0.2), "no feed <b>": course(0.1)},
        title="Bees & brood",
        unit="frames",
        seen=[Seen(DAYS[0], 4.1), Seen(DAYS[7], 5.0)],
        today=DAYS[8],
    )


def test_the_same_courses_give_the_same_bytes() -> None:
    first = chart()
    sleep(1.1)  # the clock must tick
    assert chart() == first


def test_a_time_zone_does_not_move_the_days() -> None:
    program = (
        "from datetime import date; from combwright.figures.bands import *;"
        "d = [date(2026, 3, 28), date(2026, 3, 30)];"
        "print(season_chart({'a': Course(d, [1, 1], [2, 2], [3, 3])}, title='t', unit='u'))"
    )
    drawings = {
        subprocess.run(
            [sys.executable, "-c", program],
            env=os.environ | {"TZ": zone},
            capture_output=True,
            check=True,
        ).stdout
        for zone in ("UTC", "Pacific/Auckland", "America/Los_Angeles")
    }
    assert len(drawings) == 1


def test_the_chart_is_valid_and_says_what_it_shows() -> None:
    root = ET.fromstring(chart())  # noqa: S314 - our own drawing
    assert root.findtext(f"{SVG}title") == "Bees & brood, frames"
    assert "to 7.8 (6.8 to 9.3) on 16 April 2026" in (root.findtext(f"{SVG}desc") or "")
    texts = [text.text for text in root.iter(f"{SVG}text")]
    assert {"as advised", "no feed <b>", "Bees & brood [frames]"} <= set(texts)


def test_every_note_is_a_dot_and_every_course_a_line_of_its_own() -> None:
    drawing = chart()
    symbols = re.findall(r'<g class="mark-symbol[^>]*>(.*?)</g>', drawing)
    assert sum(group.count("<path") for group in symbols) == 2
    thick = re.findall(r'stroke="(#\w+)" stroke-width="2.6" stroke-dasharray="([\d,]+)"', drawing)
    assert len(set(thick)) == len({colour for colour, _ in thick}) == 2
    assert len({dashes for _, dashes in thick}) == 2


def test_the_theme_reaches_the_colours_that_are_used() -> None:
    used = set(re.findall(r'stroke="(#[0-9a-f]{6})"', chart()))
    assert used
    assert all(f'.season [stroke="{colour}"]' in theme_css() for colour in used)


GOOD = course(0.1)


@pytest.mark.parametrize(
    "bad",
    [
        Course(DAYS, GOOD.low, [math.nan] * 20, GOOD.high),
        Course(DAYS, GOOD.low, GOOD.mid, [math.inf] * 20),
        Course(DAYS, GOOD.high, GOOD.mid, GOOD.low),
        Course(DAYS[:5], GOOD.low, GOOD.mid, GOOD.high),
        Course(DAYS[::-1], GOOD.low, GOOD.mid, GOOD.high),
        Course([], [], [], []),
    ],
)
def test_a_course_that_cannot_be_drawn_is_refused(bad: Course) -> None:
    with pytest.raises(OutOfRangeError, match="W1"):
        season_chart({"W1": bad}, title="t", unit="u")


def test_too_many_courses_and_none_are_refused() -> None:
    for names in ("", "abcd"):
        with pytest.raises(OutOfRangeError, match="1 to 3"):
            season_chart(dict.fromkeys(names, GOOD), title="t", unit="u")


def test_a_note_that_is_no_number_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="noted"):
        season_chart({"a": GOOD}, title="t", unit="u", seen=[Seen(DAYS[0], math.nan)])


def test_words_tell_of_the_last_note() -> None:
    words = describe_season(
        {"a": GOOD}, title="t", unit="", seen=[Seen(DAYS[3], 5), Seen(DAYS[1], 4)]
    )
    assert words.startswith("t. ")
    assert words.endswith("Noted 2 times, last 5 on 31 March 2026.")
