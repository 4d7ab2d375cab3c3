"""The demo: an invented keeper's spring, the same wherever and whenever it is written."""

import csv
from collections import defaultdict
from datetime import date
from pathlib import Path

import numpy as np
import pytest

from combwright.planning.sheet import RoundSheet
from combwright.records.store.book_handle import Book
from combwright.records.store.kept_entries import all_entries
from combwright.services.book.book import add_notebook
from combwright.services.demo import ON, VISITS, Paths, write_demo
from combwright.services.demo_colonies import CASTS, FIRST
from combwright.services.rounds.from_book import round_sheet
from combwright.terms.entries import Kit, TrayCount, Visit
from combwright.terms.errors import BookError


@pytest.fixture(scope="module")
def sheet(demo: Paths) -> RoundSheet:
    return round_sheet(Book(demo.book), demo.on)


def test_it_has_three_yards_sixteen_colonies_and_four_nucs(demo: Paths) -> None:
    assert len(CASTS) >= 16
    assert len({cast.yard for cast in CASTS}) == 3
    assert sum(cast.hive.startswith("nuc") for cast in CASTS) == 4
    assert 6 <= VISITS <= 8
    with Book(demo.book).reading() as db:
        entries = all_entries(db)
    visits = [entry for entry in entries if isinstance(entry, Visit)]
    assert len(visits) == VISITS * len(CASTS)
    assert {visit.on for visit in visits} == _dates()
    assert any(isinstance(entry, Kit) for entry in entries)
    assert any(isinstance(entry, TrayCount) for entry in entries)


def _dates() -> set[date]:
    return {FIRST + (ON - FIRST) / VISITS * visit for visit in range(VISITS)}


def test_the_book_is_what_the_notebook_says(demo: Paths) -> None:
    again = add_notebook(Book(demo.book), demo.notebook)
    assert (again.new, again.corrected) == (0, 0)


def test_the_weather_file_has_a_line_for_every_day(demo: Paths) -> None:
    with demo.weather.open(encoding="utf-8") as file:
        rows = list(csv.DictReader(file))
    assert len(rows) == (ON - FIRST).days
    assert rows[0]["date"] == FIRST.isoformat()
    highs = np.array([float(row["tmax_c"]) for row in rows])
    lows = np.array([float(row["tmin_c"]) for row in rows])
    assert (highs >= lows).all()
    assert 5.0 < highs.mean() < 18.0
    days = np.arange(len(highs))
    assert (days[highs == highs[28:].min()] >= 35).all()  # the cold spell of April
    assert highs[35:41].mean() < highs[28:35].mean() - 2.0


def test_its_spring_comes_out_of_a_winter(demo: Paths) -> None:
    """Bees are fewest in late March, and brood grows; common practice, no source."""
    bees: dict[date, float] = defaultdict(float)
    brood: dict[date, float] = defaultdict(float)
    with demo.notebook.open(encoding="utf-8") as file:
        for row in csv.DictReader(file):
            on = date.fromisoformat(row["date"])
            bees[on] += float(row["frames of bees"])
            brood[on] += float(row["frames of brood"] or 0.0)
    assert date(2027, 3, 13) <= min(bees, key=bees.__getitem__) <= date(2027, 4, 3)
    looked = [brood[on] for on in sorted(brood) if brood[on]]
    assert looked == sorted(looked)
    assert looked[-1] > 3.0 * looked[0]


def test_it_is_the_same_each_time_and_replaces_an_old_one_alone(
    demo: Paths, tmp_path: Path
) -> None:
    (tmp_path / "mine.txt").write_text("keep me")
    for name in ("demo.book", "demo.notebook.csv"):
        (tmp_path / name).write_text("an old one")
    other = write_demo(tmp_path)
    assert other.notebook.read_bytes() == demo.notebook.read_bytes()
    assert other.weather.read_bytes() == demo.weather.read_bytes()
    histories = [Book(each).now().history for each in (demo.book, other.book)]
    assert histories[0] == histories[1]
    assert (tmp_path / "mine.txt").read_text() == "keep me"


def test_its_colonies_are_as_they_are_at_the_end_of_april(sheet: RoundSheet) -> None:
    """Bands a keeper in a mild, wet climate would expect; common practice, no source."""
    hives = [each for each in sheet.colonies if not each.colony.startswith("Nuc")]
    nucs = [each for each in sheet.colonies if each.colony.startswith("Nuc")]
    bees = [each.expected.frames_of_bees.mid for each in hives]
    assert 3.0 <= min(bees) <= 6.0
    assert 8.5 <= max(bees) <= 12.0
    assert all(2.0 <= each.expected.frames_of_bees.mid <= 6.5 for each in nucs)
    queenright = [each for each in sheet.colonies if each.expected.frames_of_brood.low > 1.0]
    assert len(queenright) >= 13
    for each in queenright:
        share = each.expected.frames_of_brood.mid / each.expected.frames_of_bees.mid
        assert 0.3 <= share <= 0.75
        assert 1.0 <= each.expected.stores_kg.mid <= 10.0


def test_every_story_is_told(sheet: RoundSheet) -> None:
    jobs = {each.colony: " ".join(each.jobs) for each in sheet.colonies}
    assert any("syrup" in job for job in jobs.values())
    assert any(each.portion.syrup_g == 0 for each in sheet.colonies)
    assert any("Add" in job and "frame" in job for job in jobs.values())
    assert "scrape" in jobs["Burdock"]
    (sedge,) = (each for each in sheet.colonies if each.colony == "Sedge")
    assert sedge.questions or sedge.inputs["queen: queen_laying"] < 0.5


def test_a_file_instead_of_a_folder_is_refused(tmp_path: Path) -> None:
    file = tmp_path / "a file"
    file.write_text("mine")
    with pytest.raises(BookError, match="cannot be written") as refused:
        write_demo(file)
    assert "--dir" in str(refused.value)
    assert file.read_text() == "mine"
