"""``combwright season`` as a keeper types it."""

import json
from pathlib import Path

import pytest
from tests.cli.typed import Done, typed

SHORT = ("--until", "2026-04-20", "--members", "30")


def run(*words: str) -> Done:
    return typed("season", *words)


def test_json_holds_dates_and_bands() -> None:
    told = json.loads(run("--json", *SHORT).stdout)
    assert told["dates"][0] == "2026-03-20"
    assert told["dates"][-1] == "2026-04-20"
    series = (
        "adults frames_of_bees frames_of_brood eggs_laid stores_kg room_cells mites "
        "honey_taken_kg syrup_taken_g"
    )
    for name in series.split():
        assert set(told[name]) == {"low", "mid", "high"}
        assert len(told[name]["mid"]) == len(told["dates"])
    assert "against" not in told


def test_two_variants_are_told_and_drawn_together(tmp_path: Path) -> None:
    drawn = tmp_path / "season.svg"
    done = run(*SHORT, "--against", "frames=7, dummy-boards=2", "--svg", str(drawn), "--json")
    told = json.loads(done.stdout)
    assert told["against"]["changes"] == "frames=7, dummy-boards=2"
    assert len(told["against"]["adults"]["mid"]) == len(told["dates"])
    assert "frames=7" in drawn.read_text("utf-8")


def test_the_table_has_a_row_a_month() -> None:
    done = run(*SHORT)
    assert done.returncode == 0, done.stderr
    assert "20 Mar" in done.stdout
    assert "1 Apr" in done.stdout
    assert "Colonies lost" in done.stdout


def test_some_years_are_told_by_month_and_year_and_drawn(tmp_path: Path) -> None:
    drawn = tmp_path / "years.svg"
    done = run("--start", "2026-08-01", "--years", "2", "--members", "20", "--svg", str(drawn))
    assert done.returncode == 0, done.stderr
    assert "1 Nov 2026" in done.stdout
    assert "1 Aug 2028" in done.stdout
    assert "lost by its end" in done.stdout
    words = drawn.read_text("utf-8")
    assert "2028" in words[words.index("<desc") : words.index("</desc")]


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (["--feeding", "champagne"], "feeding cannot be “champagne”"),
        (["--against", "colour=red"], "is not an option"),
        (["--against", "frames=many"], "is not a number"),
        (["--frames", "5", "--frames-of-bees", "9"], "do not go onto 5"),
        (["--until", "2020-01-01"], "cannot be shown"),
        (["--dummy-boards", "7"], "dummy boards cannot be 7"),
    ],
)
def test_what_cannot_be_is_said_in_a_sentence(arguments: list[str], says: str) -> None:
    done = run(*SHORT, *arguments)
    assert done.returncode == 2
    assert says in done.stderr
