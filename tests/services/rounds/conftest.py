"""One small round for the tests of what is made of a round."""

from datetime import date

import pytest

from combwright.planning.sheet import RoundSheet
from combwright.records.store.book_handle import Book
from combwright.services.book.book import add_notebook
from combwright.services.rounds.from_book import round_sheet

LINES = (
    "date,yard,colony,hive,queen year,climate,frames of bees,frames of brood,eggs,frames of stores",
    "2027-04-03,Top,Oak,national timber,2026,Dublin Airport,7,3,yes,1",
    "2027-04-03,Top,Ash,nuc 6 polystyrene,2026,Dublin Airport,3,1.5,yes,0.5",
    "2027-04-03,Low,Elm,national timber,2025,Dublin Airport,9,4,yes,5",
)


@pytest.fixture(scope="session")
def small_round(tmp_path_factory: pytest.TempPathFactory) -> RoundSheet:
    folder = tmp_path_factory.mktemp("small round")
    (folder / "notes.csv").write_text("\n".join(LINES) + "\n", "utf-8")
    book = Book(folder / "a.book")
    add_notebook(book, folder / "notes.csv")
    return round_sheet(book, date(2027, 4, 10), members=30)
