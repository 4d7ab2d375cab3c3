"""One small round for the tests of what is made of a round."""

from datetime import date

import pytest
from tests.noted import noted

from combwright.planning.sheet import RoundSheet
from combwright.records.store.book_handle import Book
from combwright.services.rounds.from_book import round_sheet

LINES = (
    "2027-04-03,Top,Oak,national timber,2026,Dublin Airport,7,3,yes,1",
    "2027-04-03,Top,Ash,nuc 6 polystyrene,2026,Dublin Airport,3,1.5,yes,0.5",
    "2027-04-03,Low,Elm,national timber,2025,Dublin Airport,9,4,yes,5",
)


@pytest.fixture(scope="session")
def small_round(tmp_path_factory: pytest.TempPathFactory) -> RoundSheet:
    book = Book(noted(tmp_path_factory.mktemp("small round"), *LINES))
    return round_sheet(book, date(2027, 4, 10), members=30)
