from datetime import date, timedelta
from uuid import uuid4

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tests.postgres import Places

from combwright.records.store.book_handle import Book
from combwright.services.book.book import add_entries
from combwright.terms.entries import AnyEntry, Colony, Correction, Visit, Yard
from combwright.terms.errors import NotFoundError

FIRST = date(2027, 4, 1)


def begun(places: Places) -> Book:
    book = Book(places(f"{uuid4()}.book"))
    add_entries(
        book,
        [
            Yard(id=uuid4(), on=FIRST, yard="Home"),
            Colony(id=uuid4(), on=FIRST, colony="Fern", yard="Home", hive="national timber"),
        ],
    )
    return book


def visit(day: int, bees: float = 5.0) -> Visit:
    return Visit(id=uuid4(), on=FIRST + timedelta(days=day), colony="Fern", frames_of_bees=bees)


def test_it_keeps_up_with_what_others_write(places: Places) -> None:
    book = begun(places)
    live = Book(book.place)
    assert len(live.now().entries) == 2
    assert live.now() is live.now()
    add_entries(book, [visit(1)])
    assert len(live.now().of("Fern")) == 2
    live.close()


@settings(max_examples=15, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(steps=st.lists(st.tuples(st.booleans(), st.integers(1, 60)), max_size=12))
def test_read_bit_by_bit_it_is_the_same_book(places: Places, steps: list[tuple[bool, int]]) -> None:
    book = begun(places)
    live = Book(book.place)
    noted: list[Visit] = []
    for is_correction, day in steps:
        each: AnyEntry
        if is_correction and noted:
            each = Correction(id=uuid4(), on=FIRST, corrects=noted.pop().id)
        else:
            each = visit(day)
            noted.append(each)
        add_entries(book, [each])
        live.now()
    assert live.now().entries == Book(book.place).now().entries
    live.close()


def test_a_note_of_the_day_leaves_the_mark_alone_and_an_earlier_one_does_not(
    places: Places,
) -> None:
    book = begun(places)
    live = Book(book.place)
    on = FIRST + timedelta(days=10)
    before = live.now().mark(before=on)
    add_entries(book, [visit(10)])
    assert live.now().mark(before=on) == before
    late = visit(9)
    add_entries(book, [late])
    after = live.now().mark(before=on)
    assert after != before
    add_entries(book, [Correction(id=uuid4(), on=on, corrects=late.id)])
    assert live.now().mark(before=on) not in {before, after}
    live.close()


def test_the_next_round_is_today_or_a_week_after_a_book_that_is_ahead(places: Places) -> None:
    live = begun(places)
    assert live.now().next_round(date(2027, 5, 1)) == date(2027, 5, 1)
    assert live.now().next_round(FIRST) == FIRST
    assert live.now().next_round(date(2026, 1, 1)) == FIRST + timedelta(days=7)
    live.close()


def test_an_unknown_colony_is_named(places: Places) -> None:
    live = begun(places)
    with pytest.raises(NotFoundError, match="Nobody"):
        live.now().colony("Nobody")
    live.close()
