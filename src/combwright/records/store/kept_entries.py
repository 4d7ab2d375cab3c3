"""Keeping entries, and reading them back as they stand after corrections."""

import json
from collections.abc import Collection, Iterable, Iterator, Sequence
from itertools import count
from secrets import token_hex
from typing import Any
from uuid import UUID

import sqlalchemy as sa

from combwright.records.replay.corrections import names, standing
from combwright.records.store.authorship import refuse_beyond, sign, writing_hand
from combwright.records.store.dialect import insert
from combwright.records.store.id_batches import in_batches
from combwright.records.store.personal import put_back, taken_out
from combwright.records.store.seals import append_seals
from combwright.records.store.stored_rows import entries_in, readable
from combwright.records.store.tables import entry, personal
from combwright.terms.entries import ENTRY, KINDS, AnyEntry, Correction, Noted
from combwright.terms.errors import ClashError

SALT_BYTES = 16
# who is in the book, and what is not about one colony
ALWAYS_READ = (
    "colony",
    "split",
    "correction",
    *(
        kind.model_fields["kind"].default
        for kind in KINDS
        if "colony" not in kind.model_fields or not kind.model_fields["colony"].is_required()
    ),
)
WHOLE = sa.select(entry.c.body, personal.c.told).outerjoin(
    personal, personal.c.sequence == entry.c.sequence
)
CORRECTED = sa.select(entry.c.corrects).where(entry.c.corrects.is_not(None))


def keep(db: sa.Connection, entries: Iterable[AnyEntry]) -> int:
    """Write entries in the order in which they happened, and tell how many were new.

    Writing the same ones again changes nothing; an id used for something else is a clash.
    """
    wanted: dict[UUID, AnyEntry] = {}
    for each in entries:
        if wanted.setdefault(each.id, each) != each:
            raise clash(each)
    known = bodies_of(db, list(wanted))
    for key, stored in known.items():
        # compared as entries: a field that a later version adds makes no difference
        with readable(db):
            was = ENTRY.validate_python(put_back(*stored))
        if was not in (wanted[key], without_buyer(wanted[key])):
            raise clash(wanted[key])
    new = [each for each in wanted.values() if each.id not in known]
    if new:
        following = (db.scalar(sa.select(sa.func.max(entry.c.sequence))) or 0) + 1
        rows = [row(each, sequence) for each, sequence in zip(new, count(following), strict=False)]
        author = writing_hand()
        refuse_beyond(db, author, new)
        apart = list(kept_apart(rows))
        db.execute(insert(db, entry).on_conflict_do_nothing(), rows)
        if apart:
            db.execute(sa.insert(personal), apart)
        append_seals(db, ((one["sequence"], one["body"]) for one in rows))
        sign(db, author, [one["sequence"] for one in rows])
    return len(new)


def history(db: sa.Connection) -> list[AnyEntry]:
    """Read every entry as it was written, corrections included, oldest writing first."""
    return entries_in(db, WHOLE.order_by(entry.c.sequence))


def all_entries(db: sa.Connection) -> list[Noted]:
    """Read the whole book as it stands: corrections applied, by day, then as written."""
    return standing(history(db))


def entries_of(db: sa.Connection, colony: str) -> list[Noted]:
    """Read what stands in the book about one colony, splits and unites with others included."""
    found = standing(
        entries_in(
            db,
            WHOLE.where(
                (entry.c.colony == colony)
                | (entry.c.other_colony == colony)
                # a correction may move a note from one colony to another, so both ends are read
                | entry.c.corrects.is_not(None)
                | entry.c.id.in_(CORRECTED)
            ).order_by(entry.c.sequence),
        )
    )
    return [each for each in found if colony in names(each)]


def written_about(db: sa.Connection, colonies: Collection[str]) -> list[AnyEntry]:
    """Read as written what bears on some colonies, and who else is in the book, and where."""
    return entries_in(
        db,
        WHOLE.where(
            entry.c.kind.in_(ALWAYS_READ)
            | entry.c.colony.in_(colonies)
            | entry.c.other_colony.in_(colonies)
            | entry.c.id.in_(CORRECTED)
        ).order_by(entry.c.sequence),
    )


def kept_apart(rows: Iterable[dict[str, Any]]) -> Iterator[dict[str, Any]]:
    """Take out of rows in place what they say of buyers, and give it for its own table."""
    for one in rows:
        salt = token_hex(SALT_BYTES)  # not from a seed: nobody may be able to make it again
        one["body"], told = taken_out(one["body"], salt)
        if told:
            yield {"sequence": one["sequence"], "salt": salt, "told": told}


def without_buyer(each: AnyEntry) -> AnyEntry:
    """Give an entry as it reads once its buyer is deleted."""
    body, _ = taken_out(each.model_dump(mode="json", exclude_none=True), "")
    return ENTRY.validate_python(put_back(body, None))


def bodies_of(db: sa.Connection, ids: Sequence[UUID]) -> dict[UUID, tuple[Any, Any]]:
    """Read the stored contents of those of the ids that the book knows, and what is kept apart."""
    found: dict[UUID, tuple[Any, Any]] = {}
    for some in in_batches(ids):
        asked = WHOLE.add_columns(entry.c.id).where(entry.c.id.in_(some))
        with readable(db):
            found |= {row.id: (row.body, row.told) for row in db.execute(asked)}
    return found


def row(each: AnyEntry, sequence: int) -> dict[str, Any]:
    """Lay an entry out for its table."""
    return {
        "id": each.id,
        "sequence": sequence,
        "kind": each.kind,
        "happened": each.on,
        "colony": getattr(each, "colony", None),
        "other_colony": getattr(each, "new_colony", None) or getattr(each, "into", None),
        "yard": getattr(each, "yard", None),
        "corrects": each.corrects if isinstance(each, Correction) else None,
        "body": each.model_dump(mode="json", exclude_none=True),
    }


def clash(each: AnyEntry) -> ClashError:
    """Say that an id stands for two different things."""
    content = json.dumps(each.model_dump(mode="json", exclude_defaults=True))
    return ClashError(
        f"This entry's id is already used for an entry with other content: {content}.",
        where=f"entry {each.id}",
        remedy="Entries are never changed: write a correction that names the old one.",
    )
