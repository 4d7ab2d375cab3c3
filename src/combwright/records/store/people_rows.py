"""The people of a book, their secrets, and the log of its door, as rows."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from typing import Any, Final
from uuid import UUID

import sqlalchemy as sa

from combwright.records.store.tables import door_log, person
from combwright.terms.person import Person, Role

KEPT: Final = timedelta(days=400)  # of the log: a season and the winter after it; judgement
MOST: Final = 20_000  # lines of it, whoever tries to fill it; judgement


@dataclass(frozen=True, slots=True)
class Secrets:
    """What a person is known by: none of it can be read back into what they type."""

    passphrase: str = field(default="", repr=False)  # its Argon2id hash
    invited_until: datetime | None = None
    seed: str = field(default="", repr=False)  # of the authenticator
    step: int | None = None  # the last one used; none while the seed is only offered
    recovery: tuple[str, ...] = field(default=(), repr=False)  # SHA-256 of each code left


@dataclass(frozen=True, slots=True)
class DoorLine:
    """Something that happened at the door: when, to or by whom, and what."""

    at: datetime
    name: str
    what: str


# put together once: it is asked for at every page
ANYBODY: Final = sa.select(person.c.id).where(person.c.ended.is_(None)).limit(1)


def has_people(db: sa.Connection) -> bool:
    """Tell whether anybody shares the book."""
    return db.scalar(ANYBODY) is not None


def people(db: sa.Connection) -> list[Person]:
    """Name all who share the book or did, in the order in which they came."""
    rows = db.execute(sa.select(person).order_by(person.c.since, person.c.name))
    return [_person(row) for row in rows]


def person_of(db: sa.Connection, key: UUID) -> Person | None:
    """Find one who shares the book still."""
    row = db.execute(
        sa.select(person).where(person.c.id == key, person.c.ended.is_(None))
    ).one_or_none()
    return _person(row) if row else None


def secrets_of(db: sa.Connection, key: UUID) -> Secrets:
    """Read what a person is known by."""
    row = db.execute(sa.select(person).where(person.c.id == key)).one()
    return Secrets(
        row.passphrase or "",
        row.invited_until,
        row.seed or "",
        row.step,
        tuple(row.recovery or ()),
    )


def add_person(db: sa.Connection, new: Person, **secrets: Any) -> None:  # noqa: ANN401
    """Add one, with what they are known by."""
    row = {"id": new.id, "name": new.name, "role": str(new.role), "since": new.since}
    db.execute(sa.insert(person).values(row | secrets))


def change_person(db: sa.Connection, key: UUID, **values: Any) -> None:  # noqa: ANN401
    """Change what is kept of a person."""
    db.execute(sa.update(person).where(person.c.id == key).values(values))


def invited(db: sa.Connection, digest: str, now: datetime) -> Person | None:
    """Find whom an invitation is for, while it lasts."""
    row = db.execute(
        sa.select(person).where(
            person.c.invitation == digest,
            person.c.invited_until > now,
            person.c.ended.is_(None),
        )
    ).one_or_none()
    return _person(row) if row else None


def use_step(db: sa.Connection, key: UUID, step: int) -> bool:
    """Use up a code of an authenticator; one that was used, or an older one, is none."""
    unused = sa.or_(person.c.step.is_(None), person.c.step < step)
    done = db.execute(sa.update(person).where(person.c.id == key, unused).values(step=step))
    return done.rowcount == 1


def tell(db: sa.Connection, at: datetime, who: UUID | None, what: str) -> None:
    """Write a line of the log, and let those go that are old."""
    last = db.scalar(sa.select(sa.func.max(door_log.c.sequence))) or 0
    db.execute(sa.insert(door_log).values(sequence=last + 1, at=at, person=who, what=what))
    is_old = (door_log.c.at < at - KEPT) | (door_log.c.sequence <= last + 1 - MOST)
    db.execute(sa.delete(door_log).where(is_old))


def told(db: sa.Connection, most: int) -> Sequence[DoorLine]:
    """Read the log, newest first."""
    rows = db.execute(
        sa.select(door_log.c.at, person.c.name, door_log.c.what)
        .outerjoin(person, person.c.id == door_log.c.person)
        .order_by(door_log.c.sequence.desc())
        .limit(min(most, MOST))  # a number of sixty digits is none for a database
    )
    return [DoorLine(row.at, row.name or "", row.what) for row in rows]


def _person(row: Any) -> Person:  # noqa: ANN401  (a row of any select over the table)
    return Person(
        row.id,
        row.name,
        Role(row.role),
        row.since,
        row.ended,
        is_invited=row.passphrase is None,
        has_second_factor=row.step is not None,
    )
