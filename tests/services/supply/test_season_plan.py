"""The plan of the demo's season, and what changes in the book do to its promises."""

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
from tests.demo import copied

from combwright.records.store.book_handle import Book
from combwright.services.book.book import add_entries
from combwright.services.demo import ON, Paths
from combwright.services.supply.asked import AskedSupply, WhatIf
from combwright.services.supply.season_plan import supply_plan
from combwright.services.supply.supply_sheet import SupplySheet
from combwright.terms.entries import ENTRY
from combwright.terms.errors import NotFoundError, OutOfRangeError

QUICK = AskedSupply(ON, weeks=6, scenarios=60, members=20, seconds=1.0)


@pytest.fixture(scope="module")
def book(demo: Paths, tmp_path_factory: pytest.TempPathFactory) -> Book:
    return Book(copied(demo, tmp_path_factory.mktemp("supply")))


@pytest.fixture(scope="module")
def sheet(book: Book) -> SupplySheet:
    return supply_plan(book, QUICK)


def test_every_open_order_is_answered(sheet: SupplySheet, book: Book) -> None:
    assert {each.order for each in sheet.orders} == set(book.now().orders)
    for each in sheet.orders:
        assert (each.week is None) == (each.chance is None)
        assert each.rests_on


def test_what_is_planned_hangs_together(sheet: SupplySheet) -> None:
    made = sum(each.by_cell + each.by_bought_queen for each in sheet.weeks)
    assert sum(each.nucs for each in sheet.gives) >= made
    assert sheet.weeks[0].cells_to_hand > 0  # of the first graft, ripe on 27 April
    assert 0.1 < sheet.weeks[0].lays < sheet.weeks[-1].lays < 0.9


def test_bad_news_lowers_chances_and_names_whom_to_ring(
    sheet: SupplySheet, demo: Paths, tmp_path: Path
) -> None:
    book = Book(copied(demo, tmp_path))
    many = {
        "id": "00000000-0000-0000-0000-0000000000a9",
        "kind": "order",
        "on": "2027-04-19",
        "order": "7 Hall",
        "customer": "Hall",
        "count": 6,
        "wanted_by": "2027-05-08",
    }
    promise = {
        "id": "00000000-0000-0000-0000-0000000000aa",
        "kind": "order news",
        "on": "2027-04-20",
        "order": "7 Hall",
        "event": "promised",
        "week": "2027-05-03",
    }
    colony = {
        **many, "id": "00000000-0000-0000-0000-0000000000ab", "order": "8 Kane",
        "customer": "Kane", "count": 1, "what": "colony", "price": 250.0,
    }  # fmt: skip
    lost = {
        "id": "00000000-0000-0000-0000-0000000000ac", "kind": "queen", "on": "2027-04-20",
        "colony": "Nuc Ash", "event": "lost",
    }  # fmt: skip
    add_entries(book, [ENTRY.validate_python(each) for each in (many, promise, colony, lost)])
    worse = WhatIf(lost_batches=frozenset({"First graft"}), cold_from=date(2027, 5, 2))
    told = supply_plan(book, replace(QUICK, what_if=worse))
    (late,) = [each for each in told.to_ring if each.order == "7 Hall"]
    assert "Promised for the week of 3 May" in late.ring
    assert "sure then" in late.ring or "cannot be ready" in late.ring
    assert late.possible_with  # what would help, or that nothing that was tried does
    (whole,) = told.colonies
    assert (whole.order, whole.price) == ("8 Kane", 250.0)
    giving = {each.donor for each in told.gives}
    assert len(whole.colonies) <= 1
    assert not giving & set(whole.colonies)
    assert not any("8 Kane" in each for each in told.next_spring)
    (before,), (after,) = (
        [each for each in plan.nucs if each.colony == "Nuc Ash"] for plan in (sheet, told)
    )
    assert after.chance < before.chance
    assert told.weeks[0].cells_to_hand == 0
    assert told.weeks[0].lays < sheet.weeks[0].lays
    book.close()


def test_what_cannot_be_planned_is_refused(book: Book) -> None:
    with pytest.raises(OutOfRangeError, match="40 weeks cannot be planned"):
        supply_plan(book, AskedSupply(ON, weeks=40))
    with pytest.raises(OutOfRangeError, match="hours"):
        supply_plan(book, AskedSupply(ON, hours=0.0))
    with pytest.raises(NotFoundError, match="no price of “gold”"):
        supply_plan(book, replace(QUICK, what_if=WhatIf(prices=(("gold", 1.0),))))
