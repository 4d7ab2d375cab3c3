"""A note is put right or struck out with a reason, and what it said stays in the book."""

from datetime import date
from uuid import UUID, uuid4

import pytest
from tests.postgres import Places

from combwright.records.store.book_handle import Book
from combwright.services.book.book import add_entries
from combwright.services.book.mending import changed, entry_named, mend, mended, strike
from combwright.services.book.notes import NoteError
from combwright.terms.entries import Colony, Product, Purchase, Treatment, Visit, Yard
from combwright.terms.errors import NotFoundError

ON, LATER = date(2027, 4, 3), date(2027, 4, 24)
VISIT = Visit(id=UUID(int=7 << 96), on=ON, colony="Bramble", stores_kg=45.0, eggs=True)
ENTER = Colony(id=UUID(int=2), on=ON, colony="Bramble", yard="Home", hive="national timber")


@pytest.fixture
def book(places: Places) -> Book:
    made = Book(places("keeper.book"))
    yard = Yard(id=UUID(int=1), on=ON, yard="Home", climate="Cork Airport")
    add_entries(made, [yard, ENTER, VISIT])
    return made


def visits(book: Book) -> list[Visit]:
    return [each for each in book.now().entries if isinstance(each, Visit)]


def test_only_what_is_named_is_changed_and_the_old_note_stays(book: Book) -> None:
    fields = {"stores_kg": "4.5"}
    mend(book, VISIT, fields, change=uuid4(), on=LATER, reason="a slip of the pen")
    (now,) = visits(book)
    assert (now.stores_kg, now.eggs, now.on) == (4.5, True, ON)
    assert VISIT in book.now().history
    (told,) = mended(book.now().history, "Bramble")
    assert (told.was, told.now) == ("stores 45 kg, eggs yes", "stores 4.5 kg, eggs yes")
    assert (told.reason, told.on) == ("a slip of the pen", LATER)


def test_the_same_change_sent_twice_is_made_once_and_a_mended_note_can_be_mended(
    book: Book,
) -> None:
    change = uuid4()
    for _ in range(2):
        once = mend(book, VISIT, {"stores_kg": "4.5"}, change=change, on=LATER, reason="slip")
    mend(book, once, {"stores_kg": "5"}, change=uuid4(), on=LATER, reason="and again")
    assert [each.stores_kg for each in visits(book)] == [5.0]
    assert len(mended(book.now().history, "Bramble")) == 2


def test_a_note_that_is_struck_out_is_told_of(book: Book) -> None:
    strike(book, VISIT, change=uuid4(), on=LATER, reason="it was the next hive")
    assert visits(book) == []
    assert mended(book.now().history, "Bramble")[0].now == "struck out"


def test_no_reason_no_change(book: Book) -> None:
    with pytest.raises(NoteError) as refused:
        strike(book, VISIT, change=uuid4(), on=LATER, reason="  ")
    assert [one.field for one in refused.value.problems] == ["reason"]
    assert visits(book) == [VISIT]


def test_a_change_that_leaves_other_notes_without_their_colony_is_refused(book: Book) -> None:
    with pytest.raises(NoteError) as refused:
        strike(book, ENTER, change=uuid4(), on=LATER, reason="no such hive")
    assert "Bramble" in str(refused.value)
    assert visits(book) == [VISIT]


def test_a_treatment_is_never_left_without_its_colony_or_its_label(book: Book) -> None:
    given = Treatment(
        id=UUID(int=9), on=ON, colony="Bramble", substance="amitraz", product="Strips", quantity=2
    )
    label = Product(id=UUID(int=8), on=ON, product="Strips", withdrawal_days=0)
    bought = Purchase(id=UUID(int=10), on=ON, product="Strips", quantity=4, unit="strips")
    add_entries(book, [label, bought, given])
    with pytest.raises(NoteError, match=r"after this treatment.*Correct one of the two days"):
        mend(book, ENTER, {"on": "2027-04-20"}, change=uuid4(), on=LATER, reason="came later")
    with pytest.raises(NoteError, match=r"no medicine “Strips” here.*Note the medicine’s label"):
        strike(book, label, change=uuid4(), on=LATER, reason="sold out")
    assert {given, label, bought} <= set(book.now().entries)


def test_an_impossible_value_is_said_beside_its_field(book: Book) -> None:
    with pytest.raises(NoteError) as refused:
        changed(book, VISIT, ["stores_kg=many"], change=uuid4(), on=LATER, reason="slip")
    assert [one.field for one in refused.value.problems] == ["stores_kg"]


@pytest.mark.parametrize("settings", [["honey=4"], []])
def test_a_field_that_is_not_there_is_refused_with_those_that_are(
    book: Book, settings: list[str]
) -> None:
    with pytest.raises(NotFoundError, match=r"honey|Nothing") as refused:
        changed(book, VISIT, settings, change=uuid4(), on=LATER, reason="slip")
    assert "stores_kg" in refused.value.remedy


def test_a_note_is_found_by_the_first_letters_of_its_id(book: Book) -> None:
    assert entry_named(book, str(VISIT.id)[:8]) == VISIT
    for key in ("0000", "00", "ffff"):
        with pytest.raises(NotFoundError):
            entry_named(book, key)


def test_the_old_id_of_a_note_leads_to_what_became_of_it(book: Book) -> None:
    now = changed(book, VISIT, ["stores kg=7"], change=uuid4(), on=LATER, reason="slip")
    assert now is not None
    with pytest.raises(NotFoundError, match=f"is now {str(now.id)[:8]}"):
        entry_named(book, str(VISIT.id))
    strike(book, now, change=uuid4(), on=LATER, reason="other hive")
    with pytest.raises(NotFoundError, match="It was struck out"):
        entry_named(book, str(now.id)[:8])
