"""People who share a book: begun with, invited, changed, ended; each step stands in the log."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import datetime, timedelta
from secrets import token_urlsafe
from typing import Any, Final
from uuid import UUID, uuid4

from pydantic import TypeAdapter, ValidationError

from combwright.records.store.authorship import authors_of
from combwright.records.store.book_handle import Book, Transaction
from combwright.records.store.people_rows import (
    DoorLine,
    add_person,
    change_person,
    invited,
    people,
    person_of,
    tell,
    told,
)
from combwright.services.passphrases import hashed, refuse_weak
from combwright.services.people.sessions import digest
from combwright.terms.entries import Name
from combwright.terms.errors import NotAllowedError, NotFoundError, OutOfRangeError
from combwright.terms.person import Person, Role

INVITED: Final = timedelta(days=7)  # that a link lasts; judgement
NAME: Final[TypeAdapter[str]] = TypeAdapter(Name)


def people_of(book: Book) -> list[Person]:
    """Name all who share the book or did."""
    with book.reading() as db:
        return people(db)


def whose_notes(book: Book, ids: Sequence[UUID]) -> Mapping[UUID, str]:
    """Name who noted those of some entries that bear a name."""
    with book.reading() as db:
        return authors_of(db, ids)


def door_lines(book: Book, most: int) -> Sequence[DoorLine]:
    """Read what happened at the door, newest first."""
    with book.reading() as db:
        return told(db, most)


def person_named(book: Book, name: str) -> Person:
    """Find one who shares the book by name."""
    with book.reading() as db:
        return _named(db, name)


def begin_sharing(book: Book, name: str, words: str, now: datetime) -> Person:
    """Make the keeper of a book the first of its people; the book's one passphrase goes."""
    refuse_weak(words, name)
    kept, first = hashed(words), _new(name, Role.KEEPER, now, is_invited=False)
    with book.writing() as db:
        if any(one.ended is None for one in people(db)):
            raise NotAllowedError("The book has people already.", remedy="Log in as one of them.")
        add_person(db, first, passphrase=kept)
        tell(db, now, first.id, "began to share the book")
    return first


def invite(book: Book, name: str, role: Role, now: datetime, by: Person | None) -> str:
    """Add a person, and give the secret part of a link that works once and for a week."""
    token, new = token_urlsafe(24), _new(name, role, now, is_invited=True)
    secrets = {"invitation": digest(token), "invited_until": now + INVITED}
    with book.writing() as db:
        sharing = [one for one in people(db) if one.ended is None]
        if not sharing:
            raise NotAllowedError(
                "The book has no keeper with a name yet.", remedy="Begin with your own."
            )
        if any(one.name.casefold() == new.name.casefold() for one in sharing):
            raise OutOfRangeError(f"There is a “{new.name}” already.", remedy="Add a surname.")
        add_person(db, new, **secrets)
        tell(db, now, by and by.id, f"invited {new.name} as {role}")
    return token


def invite_again(book: Book, person: Person, now: datetime, by: Person | None) -> str:
    """Give a new link, for one who lost the first or forgot the passphrase; the old one is void.

    The second factor stays: a link alone does not let in who has set one up.
    """
    token = token_urlsafe(24)
    with book.writing() as db:
        change_person(db, person.id, invitation=digest(token), invited_until=now + INVITED)
        tell(db, now, by and by.id, f"gave {person.name} a new link")
    return token


def invited_by(book: Book, token: str, now: datetime) -> Person:
    """Tell whom a link is for, or that it is used up."""
    with book.reading() as db:
        return _invited(db, token, now)


def join(book: Book, token: str, words: str, now: datetime) -> Person:
    """Set the passphrase of who was invited; the link is used up by it."""
    kept = hashed(words)
    with book.writing() as db:
        found = _invited(db, token, now)
        refuse_weak(words, found.name)
        change_person(db, found.id, passphrase=kept, invitation=None, invited_until=None)
        tell(db, now, found.id, "set a passphrase by a link")
        return replace(found, is_invited=False)


def set_own_passphrase(book: Book, person: Person, words: str, now: datetime) -> None:
    """Set another passphrase, which ends every session of that person."""
    refuse_weak(words, person.name)
    kept = hashed(words)
    with book.writing() as db:
        change_person(db, person.id, passphrase=kept, invitation=None, invited_until=None)
        tell(db, now, person.id, "has a new passphrase")


def change_role(book: Book, person: Person, role: Role, now: datetime, by: Person | None) -> None:
    """Make somebody a keeper, a helper or a reader; it counts at once."""
    with book.writing() as db:
        if role is not Role.KEEPER:
            _refuse_last_keeper(db, person)
        change_person(db, person.id, role=str(role))
        tell(db, now, by and by.id, f"made {person.name} a {role}")


def end_person(book: Book, person: Person, now: datetime, by: Person | None) -> None:
    """Let somebody in no longer; the name stays beside what they noted.

    At the machine itself the last of all may go too: the book is then a single keeper's again, and
    has no passphrase until one is set.
    """
    with book.writing() as db:
        if by is not None or sum(one.ended is None for one in people(db)) > 1:
            _refuse_last_keeper(db, person)
        gone: dict[str, Any] = dict.fromkeys(
            ("passphrase", "invitation", "invited_until", "seed", "step", "recovery")
        )
        change_person(db, person.id, ended=now, **gone)
        tell(db, now, by and by.id, f"ended what {person.name} may do")


def _new(name: str, role: Role, now: datetime, *, is_invited: bool) -> Person:
    try:
        plain = NAME.validate_python(name.strip())
    except ValidationError as error:
        raise OutOfRangeError(
            "This is no name.", remedy="Give 1 to 60 letters on one line."
        ) from error
    return Person(uuid4(), plain, role, now, is_invited=is_invited)


def _named(db: Transaction, name: str) -> Person:
    for one in people(db):
        if one.ended is None and one.name.casefold() == name.strip().casefold():
            return one
    raise NotFoundError(f"Nobody called “{name}” shares this book.", remedy="Look at the list.")


def _invited(db: Transaction, token: str, now: datetime) -> Person:
    found = invited(db, digest(token), now)
    if found is None:
        raise NotFoundError(
            "This link has been used, or is too old.", remedy="Ask a keeper for a new one."
        )
    return found


def _refuse_last_keeper(db: Transaction, person: Person) -> None:
    others = [
        one
        for one in people(db)
        if one.role is Role.KEEPER and not one.is_invited and one.ended is None
    ]
    if person_of(db, person.id) is None:
        raise NotFoundError(f"{person.name} no longer shares this book.", remedy="See the list.")
    if [one.id for one in others] == [person.id]:
        raise NotAllowedError(
            f"{person.name} is the only keeper.", remedy="Make somebody else a keeper first."
        )
