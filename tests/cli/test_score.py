"""``combwright score``: past forecasts beside what was seen."""

import json
from pathlib import Path

import pytest
from tests.cli.typed import Done, typed
from tests.noted import noted

LINES = (
    "2027-04-10,Top,Oak,national timber,2026,Dublin Airport,7,3,yes,2",
    "2027-04-17,Top,Oak,,,,8,3.5,yes,",
    "2027-04-24,Top,Oak,,,,8.5,4,yes,",
)


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return noted(tmp_path_factory.mktemp("scored"), *LINES)


def score(book: Path, *words: str) -> Done:
    return typed("score", *words, "--on", "2027-04-25", "--members", "40", "--book", str(book))


def test_each_later_visit_is_scored_beside_two_rules_of_thumb(book: Path) -> None:
    report = json.loads(score(book, "--json").stdout)
    assert {line["quantity"] for line in report["by_colony"]} == {
        "frames_of_bees",
        "frames_of_brood",
    }
    (bees,) = (each for each in report["by_colony"] if each["quantity"] == "frames_of_bees")
    assert bees["colony"] == "Oak"
    assert bees["forecasts"] == 2
    assert bees["error_last_time"] == pytest.approx((1.0 + 0.5) / 2)
    assert bees["error_trend"] == pytest.approx(0.5)  # 9 by the line, 8.5 seen; once only
    assert 0 < bees["error"] < 5
    assert 0 <= bees["within_50"] <= bees["within_90"] <= 1


def test_the_terminal_says_what_the_numbers_are(book: Path) -> None:
    shown = score(book).stdout
    for words in ("Oak", "frames of bees", "in 90 %", "same as last time"):
        assert words in shown


def test_a_colony_that_is_not_there_is_said(book: Path) -> None:
    done = score(book, "Elm")
    assert done.returncode == 2
    assert "Elm" in done.stderr
