"""Buyers: what the book says of each, how long it must be kept, and deleting it after that."""

from dataclasses import dataclass
from datetime import date
from typing import Final
from uuid import UUID, uuid4

from combwright.records.replay.corrections import subject
from combwright.records.store.book_handle import Book
from combwright.records.store.contents import Contents
from combwright.records.store.kept_entries import keep
from combwright.records.store.personal import DELETED, forget
from combwright.science.health.bees_for_sale import DATA
from combwright.science.honey.lots import papers_kept_until
from combwright.terms.dated import dated
from combwright.terms.dates import years_later
from combwright.terms.entries import (
    BeesSold,
    Correction,
    HoneySale,
    Movement,
    NamesDeleted,
    Noted,
    Order,
)
from combwright.terms.errors import ClashError, NotFoundError

WARNING: Final = (
    "What is deleted cannot be had again: the notes stay, with “(deleted)” in place of name, "
    "address, contact and remark. Backups of before, papers and files that you gave out still hold "
    "it, and so do names that you wrote into numbers of orders and sales, or into reasons. How "
    "long records of sales must be kept is said as far as we know it: check the current law."
)
MOST: Final = 2000  # letters that one entry can say


@dataclass(frozen=True, slots=True)
class NoteOfBuyer:
    """One note that names a buyer: what it is about, and from when on the name may go."""

    entry: UUID
    on: date
    about: str
    free: date | None

    def may_go(self, today: date) -> bool:
        """Tell whether nothing known keeps the name any longer."""
        return self.free is not None and self.free <= today

    @property
    def kept(self) -> str:
        """Say how long the name is kept."""
        return "while the order is open" if self.free is None else f"until {dated(self.free)}"


@dataclass(frozen=True, slots=True)
class KnownBuyer:
    """A buyer, and the notes that name them, newest first."""

    name: str
    notes: tuple[NoteOfBuyer, ...]

    def may_go(self, today: date) -> bool:
        """Tell whether the name may go from any note."""
        return any(one.may_go(today) for one in self.notes)


@dataclass(frozen=True, slots=True)
class BuyersDeleted:
    """Of how many notes the names went, and which are kept."""

    deleted: int
    kept: tuple[NoteOfBuyer, ...]


def buyers(book: Book) -> list[KnownBuyer]:
    """List who the book names as a buyer or customer, by name."""
    now = book.now()
    found: dict[str, list[NoteOfBuyer]] = {}
    for each in now.history:
        told = each.replacement if isinstance(each, Correction) else each
        if told is not None and (name := _named(told)) not in {"", DELETED}:
            note = NoteOfBuyer(each.id, told.on, _about(told), _free(told, now))
            found.setdefault(name, []).append(note)
    return [KnownBuyer(name, tuple(found[name][::-1])) for name in sorted(found, key=str.casefold)]


def buyer(book: Book, name: str) -> KnownBuyer:
    """Look one buyer up."""
    found = [each for each in buyers(book) if each.name == name]
    if not found:
        raise NotFoundError(
            f"No note names “{name}” as a buyer.", remedy="“combwright buyers list” names them all."
        )
    return found[0]


def delete_buyer(book: Book, name: str, today: date) -> BuyersDeleted:
    """Delete what the book says of a buyer, but for what must still be kept."""
    found = buyer(book, name)
    going = [one for one in found.notes if one.may_go(today)]
    kept = tuple(one for one in found.notes if not one.may_go(today))
    if not going:
        told = "; ".join(f"{one.about} {one.kept}" for one in kept)
        raise ClashError(
            f"Nothing of “{name}” may go yet: the name is kept for {told}.",
            remedy="Delete it after that; an open order can be cancelled first.",
        )
    return BuyersDeleted(_delete(book, going, today), kept)


def delete_due(book: Book, today: date) -> BuyersDeleted:
    """Delete every name that nothing known keeps any longer."""
    going = [one for each in buyers(book) for one in each.notes if one.may_go(today)]
    return BuyersDeleted(_delete(book, going, today) if going else 0, ())


def _delete(book: Book, going: list[NoteOfBuyer], today: date) -> int:
    """Delete names, and note that they were deleted, not of whom: all of it, or nothing."""
    told = ", ".join(dict.fromkeys(one.about for one in going))
    with book.writing() as db:
        gone = forget(db, [one.entry for one in going])
        keep(db, [NamesDeleted(id=uuid4(), on=today, notes=told[:MOST])])
    return gone


def _named(note: Noted) -> str:
    match note:
        case Order():
            return note.customer
        case BeesSold() | HoneySale():
            return note.buyer
        case Movement():
            return note.to
    return ""


def _about(note: Noted) -> str:
    return (
        f"sale {note.sale}"
        if isinstance(note, BeesSold)
        else f"{note.kind} {subject(note)}".strip()
    )


def _free(note: Noted, now: Contents) -> date | None:
    """Give the first day on which a name may go; none while an order is open."""
    match note:
        case Order():
            known = now.orders.get(note.order)
            return None if known and known.open else note.on
        case HoneySale() if note.lot in now.lots:
            return papers_kept_until(note.on, now.lots[note.lot].durable_until)
    return years_later(note.on, DATA["kept"]["years_after_sale"])
