"""Who noted what: beside the entries, so that neither their ids nor their seals depend on it.

The hand that writes is set once, where a person comes in, and holds for all that is written on
their behalf: no way into the book can forget it. Nobody's hand is that of the machine itself.
"""

from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from contextvars import ContextVar
from typing import Final
from uuid import UUID

import sqlalchemy as sa

from combwright.records.store.id_batches import in_batches
from combwright.records.store.tables import entry, noted_by, person
from combwright.terms.entries import AnyEntry, Correction
from combwright.terms.errors import NotAllowedError
from combwright.terms.person import SETTINGS, Author

HAND: Final[ContextVar[Author | None]] = ContextVar("hand", default=None)


@contextmanager
def written_by(author: Author | None) -> Iterator[None]:
    """Have all that is written meanwhile bear a person's name."""
    before = HAND.set(author)
    try:
        yield
    finally:
        HAND.reset(before)


def writing_hand() -> Author | None:
    """Tell who writes."""
    return HAND.get()


def sign(db: sa.Connection, author: Author | None, sequences: Sequence[int]) -> None:
    """Put a person's name beside entries that were just written."""
    if author is not None:
        rows = [{"sequence": one, "person": author.person, "at": author.at} for one in sequences]
        db.execute(sa.insert(noted_by), rows)


def refuse_beyond(db: sa.Connection, author: Author | None, new: Sequence[AnyEntry]) -> None:
    """Refuse what a person of that role may not write."""
    if author is None or author.role.settles:
        return
    if not author.role.notes:
        raise NotAllowedError(
            "You may read this book, not write to it.", remedy="Ask a keeper to make you a helper."
        )
    for each in new:
        said = each.replacement if isinstance(each, Correction) else each
        if said is not None and said.kind in SETTINGS:
            raise NotAllowedError(f"A {said.kind} holds for all.", remedy="Ask a keeper to set it.")
    corrected = {each.corrects for each in new if isinstance(each, Correction)}
    others = corrected - {each.id for each in new}
    if others and not others <= _own(db, author):
        raise NotAllowedError(
            "Another person noted this, so it is not yours to change.",
            remedy="Ask them or a keeper.",
        )


def _own(db: sa.Connection, author: Author) -> set[UUID]:
    return set(
        db.scalars(
            sa.select(entry.c.id)
            .join(noted_by, noted_by.c.sequence == entry.c.sequence)
            .where(noted_by.c.person == author.person)
        )
    )


def authors_of(db: sa.Connection, ids: Sequence[UUID]) -> Mapping[UUID, str]:
    """Name who noted those of some entries that bear a name."""
    found: dict[UUID, str] = {}
    for some in in_batches(ids):
        rows = db.execute(
            sa.select(entry.c.id, person.c.name)
            .join(noted_by, noted_by.c.sequence == entry.c.sequence)
            .join(person, person.c.id == noted_by.c.person)
            .where(entry.c.id.in_(some))
        )
        found |= {row.id: row.name for row in rows}
    return found
