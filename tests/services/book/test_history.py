"""One line a visit, with what changed."""

from pathlib import Path

import pytest
from tests.noted import noted, noted_in
from tests.postgres import Places

from combwright.records.store.book_handle import Book
from combwright.services.book.history import visit_lines, years_of
from combwright.terms.entries import Visit
from combwright.terms.errors import NotFoundError

HEADINGS = (
    "date,yard,colony,hive,frames of bees,frames of brood,syrup fed g,remark,"
    "split to,split hive,split frames of bees"
)
LINES = (
    "2026-04-03,Home,Alder,national timber,6,3,,quiet,,,",
    "2026-04-10,Home,Alder,,7.5,3,500,wasps,,,",
    "2027-05-01,Home,Alder,,9,,,,Birch,nuc 6 polystyrene,2",
    "2027-05-01,Heath,Furze,national timber,5,2,,,,,",
)


@pytest.fixture
def book(places: Places, tmp_path: Path) -> Book:
    return noted_in(Book(places("a.book")), tmp_path, *LINES, headings=HEADINGS)


def test_a_line_a_day_says_what_changed_since_the_one_before(book: Book) -> None:
    lines = visit_lines(book, colony="Alder")
    assert [str(line.on) for line in lines] == ["2027-05-01", "2026-04-10", "2026-04-03"]
    assert lines[1].says.startswith("frames of bees 7.5 (+1.5), frames of brood 3, feed: syrup")
    assert lines[1].remarks == "wasps"
    assert len(lines[1].entries) == 2
    assert "split:" in lines[0].says


def test_readings_of_a_scale_are_told_by_day_and_are_no_visits(tmp_path: Path) -> None:
    head = "date,yard,colony,hive,scale kg"
    days = ("2026-05-01,Home,Alder,national timber,31.4", "2026-05-02,Home,Alder,,32.6")
    scale = Book(noted(tmp_path, *days, headings=head))
    assert next(line.says.split("; ")[0] for line in visit_lines(scale)) == "scale 32.6 kg (+1.2)"
    assert not [each for each in scale.now().entries if isinstance(each, Visit)]


def test_a_yard_and_a_year_are_picked(book: Book) -> None:
    assert {line.colony for line in visit_lines(book, yard="Home")} == {"Alder", "Birch"}
    assert {line.colony for line in visit_lines(book, year=2026)} == {"Alder"}
    assert years_of(visit_lines(book)) == [2027, 2026]
    for unknown in ({"colony": "Ash"}, {"yard": "Moor"}):
        with pytest.raises(NotFoundError):
            visit_lines(book, **unknown)  # type: ignore[arg-type]
