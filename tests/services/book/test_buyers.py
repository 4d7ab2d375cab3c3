"""Buyers are listed with how long they are kept, and deleted after that."""

from datetime import UTC, date, datetime
from pathlib import Path
from uuid import UUID

import pytest

from combwright.records.store.authorship import written_by
from combwright.records.store.book_handle import Book
from combwright.services.bees_sold.sales_register import sales_register
from combwright.services.book.book import add_entries, export
from combwright.services.book.buyers import buyer, buyers, delete_buyer, delete_due
from combwright.services.book.checking import check_book
from combwright.services.book.finding import find
from combwright.services.book.mending import mend
from combwright.terms.entries import ENTRY, AnyEntry, BeesSold
from combwright.terms.errors import ClashError, NotAllowedError, NotFoundError
from combwright.terms.person import Author, Role

SOLD, TODAY, AFTER = date(2026, 6, 13), date(2027, 4, 24), date(2031, 6, 13)


def noted(number: int, kind: str, on: str, **told: object) -> AnyEntry:
    return ENTRY.validate_python({"id": UUID(int=number), "kind": kind, "on": on, **told})


@pytest.fixture
def book(tmp_path: Path) -> Book:
    made = Book(tmp_path / "keeper.book")
    jars = {"lot": "L26232-1", "jars": 12}
    add_entries(
        made,
        [
            noted(1, "yard", "2026-01-01", yard="Home", climate="Cork Airport"),
            noted(2, "order", "2026-04-01", order="7", customer="Ryan", wanted_by="2026-06-20"),
            noted(3, "order news", "2026-06-13", order="7", event="delivered"),
            noted(4, "bees sold", "2026-06-13", sale="26-1", buyer="Ryan", address="3 Main Street",
                  contact="ryan@example.org", yard="Home", what="swarm"),
            noted(5, "order", "2027-04-01", order="8", customer="Kelly", wanted_by="2027-06-20"),
            noted(6, "honey batch", "2026-08-01", honey="Summer", kg=20),
            noted(7, "jar run", "2026-08-20", honey="Summer", jar_g=340,
                  best_before="2032-12-31", **(jars | {"jars": 40})),
            noted(8, "honey sale", "2026-08-29", buyer="Shop", address="Lane", **jars),
            noted(9, "honey sale", "2026-08-30", **jars),
        ],
        today=TODAY,
    )  # fmt: skip
    return made


def test_each_is_kept_for_its_years(book: Book) -> None:
    told = {(each.name, one.about): one.free for each in buyers(book) for one in each.notes}
    assert told == {
        ("Kelly", "order 8"): None,
        ("Ryan", "order 7"): date(2026, 4, 1),
        ("Ryan", "sale 26-1"): AFTER,
        ("Shop", "honey sale L26232-1"): date(2033, 12, 31),
    }


def test_what_may_go_goes_and_the_register_keeps_the_sale_for_its_years(book: Book) -> None:
    before = check_book(book).entries
    done = delete_buyer(book, "Ryan", TODAY)
    assert (done.deleted, [one.about for one in done.kept]) == (1, ["sale 26-1"])
    assert book.now().orders["7"].customer == "(deleted)"
    assert "ryan@example.org" in str(sales_register(book, SOLD, SOLD).tables)
    assert delete_buyer(book, "Ryan", AFTER).deleted == 1
    assert "Ryan" not in export(book) + export(book, "json")
    assert find(book, "ryan") == []
    (sale,) = sales_register(book, SOLD, SOLD).tables[0].rows
    assert (sale[1], sale[5]) == ("26-1", "(deleted)")
    found = check_book(book)
    assert (found.wrong, found.entries) == ("", before + 2)
    assert [one.says for one in find(book, "names deleted")] == ["sale 26-1", "order 7"]


def test_nothing_goes_too_early(book: Book) -> None:
    with pytest.raises(ClashError, match="while the order is open"):
        delete_buyer(book, "Kelly", TODAY)
    with pytest.raises(ClashError, match="honey sale L26232-1 until 31 December 2033"):
        delete_buyer(book, "Shop", AFTER)
    with pytest.raises(NotFoundError):
        delete_buyer(book, "Nobody", TODAY)
    with pytest.raises(NotFoundError):
        delete_buyer(book, "", TODAY)


def test_a_helper_deletes_nobody(book: Book) -> None:
    helper = Author(UUID(int=77), Role.HELPER, datetime(2027, 4, 24, tzinfo=UTC))
    with written_by(helper), pytest.raises(NotAllowedError):
        delete_buyer(book, "Ryan", AFTER)
    assert buyer(book, "Ryan").notes


def test_all_that_is_due_goes_at_once(book: Book) -> None:
    assert delete_due(book, AFTER).deleted == 2
    assert delete_due(book, AFTER).deleted == 0
    assert [each.name for each in buyers(book)] == ["Kelly", "Shop"]


def test_what_a_note_said_before_it_was_put_right_goes_too(book: Book) -> None:
    (sale,) = (each for each in book.now().entries if isinstance(each, BeesSold))
    mend(book, sale, {"address": "4 Main Street"}, change=UUID(int=99), on=TODAY, reason="slip")
    assert [one.about for one in buyer(book, "Ryan").notes] == ["sale 26-1"] * 2 + ["order 7"]
    assert delete_buyer(book, "Ryan", AFTER).deleted == 3
    assert "Main Street" not in export(book)
