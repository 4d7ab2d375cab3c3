"""An order, a batch or a queen with a name, looked up in the book."""

from dataclasses import dataclass

from combwright.records.replay.corrections import subject
from combwright.records.store.book_handle import Book
from combwright.services.book.own_words import Owned
from combwright.terms.entries import Noted


@dataclass(frozen=True, slots=True)
class OwnPage:
    """What the book says of an order, a batch or a queen: how it stands, its entries in order."""

    word: str
    standing: Owned
    entries: tuple[Noted, ...]


def show_own(book: Book, name: str) -> OwnPage | None:
    """Look an order, a batch or a queen up; a colony of that name goes before."""
    now = book.now()
    known: dict[str, tuple[str, Owned]] = {}
    for word, some in (("queen", now.queens), ("batch", now.batches), ("order", now.orders)):
        known |= {one: (word, each) for one, each in some.items()}
    if name in now.standings or name not in known:
        return None
    word, standing = known[name]
    return OwnPage(word, standing, tuple(each for each in now.entries if subject(each) == name))
