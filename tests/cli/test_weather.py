"""``combwright weather`` as a keeper types it."""

import json
from pathlib import Path

import pytest
from tests.cli.typed import Done, typed

FILES = Path(__file__).parent.parent / "data" / "weather"


def run(*words: str) -> Done:
    return typed("weather", *words)


def test_the_weeks_of_a_climate_with_their_source() -> None:
    done = run("show", "--climate", "Cork", "--from", "2026-04-01", "--days", "14")
    assert done.returncode == 0, done.stderr
    assert "2026-04-08" in done.stdout
    assert "200 versions" in done.stdout
    assert "© Met Éireann" in done.stdout


def test_json_is_the_same_each_time() -> None:
    arguments = ("show", "--climate", "Oxford", "--from", "2026-07-01", "--json")
    one, other = run(*arguments), run(*arguments)
    assert one.stdout == other.stdout
    told = json.loads(one.stdout)
    assert len(told["weeks"]) == 4
    assert told["weeks"][0]["flight_h"]["low"] < told["weeks"][0]["flight_h"]["high"]


def test_a_file_is_kept_in_the_book_and_what_is_missing_is_said(tmp_path: Path) -> None:
    book = str(tmp_path / "my.book")
    done = run("add", str(FILES / "met_eireann_daily.csv"), "--place", "Home", "--book", book)
    assert done.returncode == 0, done.stderr
    assert "Home: 3 days kept, 1 May 2025 to 5 May 2025" in done.stdout
    assert "2 days missing" in done.stdout


def test_any_file_becomes_a_table_that_is_read_again(tmp_path: Path) -> None:
    table = tmp_path / "ours.csv"
    table.write_text(run("show", str(FILES / "met_norway.json"), "--table").stdout, "utf-8")
    again = run("show", str(table), "--table")
    assert again.stdout == table.read_text("utf-8")
    assert again.stdout.startswith("date,tmax_c,tmin_c,rain_mm,sun_h,wind_m_s\n2025-05-02,")


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("show", "none.csv"), "combwright: none.csv: It cannot be read"),
        (("show", "--climate", "Paris"), "There are: Dublin Airport"),
        (("show", "--days", "0"), "--days cannot be 0"),
        (("add", str(FILES / "README.md")), "no weather file that Combwright knows"),
    ],
)
def test_what_cannot_be_is_said_in_one_sentence(
    arguments: tuple[str, ...], said: str, tmp_path: Path
) -> None:
    more = ("--book", str(tmp_path / "x.book")) if arguments[0] == "add" else ()
    done = run(*arguments, *more)
    assert done.returncode == 2
    assert said in done.stderr


def test_a_forecast_is_fetched_for_a_yard_that_has_a_place(tmp_path: Path) -> None:
    """Without one nothing is asked of the network."""
    notes, book = tmp_path / "notes.csv", str(tmp_path / "my.book")
    notes.write_text("date,yard,colony\n2027-04-03,Home,\n", "utf-8")
    assert typed("book", "add", str(notes), "--book", book).returncode == 0
    asked = ("forecast", "--contact", "me@example.org", "--book", book)
    for yard, said in (("Home", "does not say where"), ("Away", "Yards: Home")):
        done = run(*asked, "--yard", yard)
        assert done.returncode == 2
        assert said in done.stderr


def test_what_is_kept_can_be_read_by_programs(tmp_path: Path) -> None:
    words = ("--place", "Home", "--book", str(tmp_path / "my.book"), "--json")
    told = json.loads(run("add", str(FILES / "met_eireann_daily.csv"), *words).stdout)
    assert (told["place"], told["days"], told["first"]) == ("Home", 3, "2025-05-01")
