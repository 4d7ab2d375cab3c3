"""Small books that a good keeper reads at a glance, and what their sheets say."""

from datetime import date, timedelta
from pathlib import Path
from uuid import UUID

import pytest
from tests.noted import noted

from combwright.advice.bee_acts import LeaveCells, LeaveShut
from combwright.planning.sheet import ColonySheet
from combwright.records.store.book_handle import Book
from combwright.services.book.book import add_entries
from combwright.services.rounds.from_book import round_sheet
from combwright.terms.entries import Product, Treatment

HEADINGS = (
    "date,yard,colony,hive,queen year,climate,frames of bees,frames of brood,eggs,stores kg,"
    "queen cells,supers"
)
# each colony's last three weekly notes: bees, brood, eggs, stores, cells; and its supers
COLONIES = {
    "Bare": ((8, 5, "yes", 4, "none"), (8, 5, "yes", 2, "none"), (8, 5, "yes", 1, "none"), 0),
    "Nothing": ((9, 5, "yes", 5, "none"), (9, 5, "yes", 2, "none"), (9, 5, "yes", 0, "none"), 0),
    "Supered": ((10, 6, "yes", 6, "none"), (10, 6, "yes", 3, "none"), (10, 6, "yes", 1, "none"), 1),
    "Thrice": ((8, 5, "yes", 0, "none"), (8, 5, "yes", 0, "none"), (8, 5, "yes", 0, "none"), 1),
    "Starved": ((8, 5, "yes", 3, "none"), (8, 4, "yes", 1, "none"), (4, 1, "yes", 0, "none"), 0),
    "Dwindled": ((6, 4, "yes", 2, "none"), (5, 2, "yes", 1, "none"), (3, 1, "yes", 0, "none"), 0),
    "Swarmed": (
        (9, 6, "yes", 6, "cups"),
        (10, 6, "yes", 6, "charged"),
        (5, 5, "no", 5, "sealed"),
        0,
    ),
}
HUNGRY = ("Bare", "Nothing", "Supered", "Thrice", "Starved", "Dwindled")
MONTHS = (5, 7)


@pytest.fixture(scope="module", params=MONTHS)
def sheets(
    request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory
) -> dict[str, ColonySheet]:
    last, lines = date(2027, request.param, 12), []
    for week in range(3):
        day = last - timedelta(days=7 * (2 - week))
        for name, (*notes, supers) in COLONIES.items():
            first = "national timber,2026,Dublin Airport" if week == 0 else ",,"
            seen = ",".join(str(value) for value in notes[week])
            lines.append(f"{day},Top,{name},{first},{seen},{supers}")
    book = Book(noted(tmp_path_factory.mktemp("small"), *lines, headings=HEADINGS))
    sheet = round_sheet(book, last + timedelta(days=1), members=60)
    return {each.colony: each for each in sheet.colonies}


@pytest.mark.parametrize("name", HUNGRY)
def test_what_was_counted_bare_is_fed_and_nothing_stands_over_it(
    sheets: dict[str, ColonySheet], name: str
) -> None:
    """Counted above forecast: of such notes, nearly all were once taken for full larders."""
    told = sheets[name]
    assert told.portion.syrup_g >= 500
    assert told.set_up.supers == 0


@pytest.mark.parametrize("name", ["Starved", "Dwindled"])
def test_few_bees_without_food_under_a_laying_queen_have_not_swarmed(
    sheets: dict[str, ColonySheet], name: str
) -> None:
    assert not [each for each in sheets[name].actions if isinstance(each, LeaveShut)]


def test_what_has_swarmed_keeps_one_cell_and_is_left(sheets: dict[str, ColonySheet]) -> None:
    kinds = [type(each) for each in sheets["Swarmed"].actions]
    assert LeaveCells in kinds
    assert LeaveShut in kinds


def test_no_starving_colony_is_asked_for_brood(sheets: dict[str, ColonySheet]) -> None:
    for name in HUNGRY:
        assert not [job for job in sheets[name].jobs if "Can give" in job]


def test_honey_that_waits_is_said_at_its_colony_alone(tmp_path: Path) -> None:
    lines = [
        "2027-07-05,Top,Given,national timber,2026,Dublin Airport,9,5,yes,9,none,1",
        "2027-07-05,Top,Free,national timber,,,9,5,yes,9,none,1",
    ]
    book = Book(noted(tmp_path, *lines, headings=HEADINGS))
    label = Product(id=UUID(int=1), on=date(2027, 7, 1), product="Strip", withdrawal_days=30)
    given = Treatment(
        id=UUID(int=2), on=date(2027, 7, 5), colony="Given", substance="other", product="Strip"
    )
    add_entries(book, [label, given])
    told = {
        each.colony: " ".join(each.because)
        for each in round_sheet(book, date(2027, 7, 12), members=20).colonies
    }
    assert "Take no honey before 4 Aug" in told["Given"]
    assert "Take no honey" not in told["Free"]
