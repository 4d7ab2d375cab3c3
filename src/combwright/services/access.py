"""Who may open the page: a passphrase of the book, or people with their own.

A book of one keeper has one passphrase or none. Its Argon2id hash lies in the file ``access``
beside the book, and is written by whoever sets it, never by a login. Once people share the book
that file has none: what people are known by stands in the book. ``sessions`` holds each session as
the SHA-256 of its token, with the passphrase that opened it. So a new passphrase ends every
session, whichever program set it, and neither file opens a door by itself.
"""

from concurrent.futures import Future, ThreadPoolExecutor
from contextlib import suppress
from dataclasses import dataclass
from datetime import datetime
from functools import cache
from secrets import compare_digest, token_urlsafe
from threading import Lock
from typing import final
from uuid import UUID

from combwright.records.store.book_handle import Book
from combwright.records.store.people_rows import has_people, people, person_of, secrets_of, tell
from combwright.services.login_tries import LoginTries
from combwright.services.passphrases import fits, hashed, refuse_weak
from combwright.services.people.second_factor import passes
from combwright.services.people.sessions import SESSION, Session, Sessions
from combwright.services.people.sharing import begin_sharing
from combwright.services.private_file import PrivateFile
from combwright.terms.errors import BookError, NotAllowedError
from combwright.terms.person import Author, Person, Role

__all__ = ["SESSION", "Access", "Caller"]


@final
@dataclass(frozen=True, slots=True)
class Caller:
    """Who came in: one of the people, or the keeper of a book that has none."""

    person: Person | None = None

    @property
    def role(self) -> Role:
        """What they may do."""
        return self.person.role if self.person else Role.KEEPER

    def hand(self, now: datetime) -> Author | None:
        """Give whose hand writes."""
        return Author(self.person.id, self.person.role, now) if self.person else None


class Access:
    """The passphrase, the people and the sessions of one book."""

    def __init__(self, book: Book) -> None:
        self.book = book
        remedy = "Restore it, or remove it and set a new passphrase."
        self._set = PrivateFile(book.beside("access"), remedy)
        self._going = PrivateFile(book.beside("sessions"), "Remove it; then log in again.")
        self.sessions = Sessions(self._going)
        self._lock = Lock()
        self._one = ThreadPoolExecutor(1, thread_name_prefix="passphrase")
        self.tries = LoginTries()
        self._set.read()  # a damaged file is refused here, not at the first request

    @property
    def needs_passphrase(self) -> bool:
        """Whether one has to log in."""
        return bool(self._shared()) or self.has_people

    @property
    def has_people(self) -> bool:
        """Whether people with names share the book."""
        with self.book.reading() as db:
            return has_people(db)

    @property
    def calendar_key(self) -> str:
        """The secret part of the calendar feed's address."""
        with self._lock:
            going = self._going.read()
            if "calendar" not in going:
                going["calendar"] = self._set.read().get("calendar") or token_urlsafe(18)
                self._going.write(going)
            return str(going["calendar"])

    def opens_calendar(self, key: str) -> bool:
        """Tell whether a key opens the calendar feed."""
        return compare_digest(key.encode(), self.calendar_key.encode())

    def set_passphrase(self, words: str) -> None:
        """Set a new passphrase; whoever is logged in has to log in again."""
        if self.has_people:
            raise NotAllowedError(
                "People share this book, each with a passphrase of their own.",
                remedy="Set it with “combwright people passphrase NAME”.",
            )
        refuse_weak(words)
        self._keep({"passphrase": hashed(words)})

    def begin_people(self, name: str, words: str, now: datetime) -> Caller:
        """Give the book people, the keeper being the first."""
        first = begin_sharing(self.book, name, words, now)
        self._keep({})
        return Caller(first)

    def weigh(self, name: str, words: str, code: str, now: datetime) -> Future[Caller | None]:
        """Look at a login when those before it are done: each takes much memory."""
        return self._one.submit(self._look, name, words, code, now)

    def confirm(self, caller: Caller, words: str) -> Future[bool]:
        """Tell, before something that matters, whether it is still they who ask."""
        return self._one.submit(lambda: fits(words, self._secret(caller)))

    def is_right(self, words: str) -> bool:
        """Tell whether this is the book's one passphrase."""
        return fits(words, self._shared())

    def _look(self, name: str, words: str, code: str, now: datetime) -> Caller | None:
        if not self.has_people:
            found = Caller() if self.is_right(words) else None
            self.note(now, None, "logged in" if found else "a wrong passphrase")
            return found
        wanted = name.strip().casefold()
        with self.book.reading() as db:
            known = [one for one in people(db) if one.name.casefold() == wanted and not one.ended]
            kept = secrets_of(db, known[0].id).passphrase if known else ""
        is_theirs = fits(words, kept or _nobody()) and bool(kept)
        if is_theirs and known[0].has_second_factor:
            is_theirs = passes(self.book, known[0], code, now)
        who = known[0].id if known else None
        self.note(now, who, "logged in" if is_theirs else "a wrong name, passphrase or code")
        return Caller(known[0]) if is_theirs else None

    def note(self, now: datetime, who: UUID | None, what: str) -> None:
        """Write into the log of the door, where the book can be written."""
        with suppress(BookError), self.book.writing() as db:
            tell(db, now, who, what)

    def begin(self, now: datetime, caller: Caller | None = None, device: str = "") -> str:
        """Begin a session and give its token."""
        who = caller or Caller()
        return self.sessions.begin(now, self._secret(who), who.person and who.person.id, device)

    def who(self, token: str, now: datetime) -> Caller | None:
        """Tell whose session goes on under a token, as they stand now."""
        session = self.sessions.whose(token, now)
        return session and self._caller(session)

    def _caller(self, session: Session) -> Caller | None:
        if session.person is None:
            secret, caller = self._shared(), Caller()
        else:
            with self.book.reading() as db:
                person = person_of(db, session.person)
                secret = secrets_of(db, session.person).passphrase if person else ""
            caller = Caller(person)
        return caller if secret and session.was_opened_by(secret) else None

    def going(self, now: datetime) -> list[tuple[Session, Caller]]:
        """List the sessions that go on, and whose they are."""
        found = [(one, self._caller(one)) for one in self.sessions.going(now)]
        return [(session, caller) for session, caller in found if caller is not None]

    def _secret(self, caller: Caller) -> str:
        if caller.person is None:
            return self._shared()
        with self.book.reading() as db:
            return secrets_of(db, caller.person.id).passphrase

    def _shared(self) -> str:
        return str(self._set.read().get("passphrase", ""))

    def _keep(self, told: dict[str, str]) -> None:
        with self._lock:
            kept = {"calendar": key} if (key := self._set.read().get("calendar")) else {}
            self._set.write(kept | told)


@cache
def _nobody() -> str:
    """Give a hash that no words fit: whom nobody knows is refused no sooner than who is known."""
    return hashed(token_urlsafe(32))
