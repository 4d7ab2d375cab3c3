"""Who may open the page: a passphrase, and sessions kept on the server's side.

They lie in two files beside the book which only its owner may read. ``access`` holds the passphrase
as an argon2 hash and is written by whoever sets it, never by a login; ``sessions`` holds each
session as the SHA-256 of its token, with the passphrase that opened it. So a new passphrase ends
every session, whichever program set it, and neither file opens a door by itself.
"""

from concurrent.futures import Future, ThreadPoolExecutor
from datetime import datetime, timedelta
from hashlib import sha256
from secrets import compare_digest, token_urlsafe
from threading import Lock
from typing import Any, Final

from combwright.records.store.book_handle import Book
from combwright.services.login_tries import LoginTries
from combwright.services.passphrases import fits, hashed, refuse_weak
from combwright.services.private_file import PrivateFile

SESSION: Final = timedelta(days=30)


class Access:
    """The passphrase and the sessions of one book."""

    def __init__(self, book: Book) -> None:
        remedy = "Restore it, or remove it and set a new passphrase."
        self._set = PrivateFile(book.beside("access"), remedy)
        self._going = PrivateFile(book.beside("sessions"), "Remove it; then log in again.")
        self._lock = Lock()
        self._one = ThreadPoolExecutor(1, thread_name_prefix="passphrase")
        self.tries = LoginTries()
        self._set.read()  # a damaged file is refused here, not at the first request

    @property
    def needs_passphrase(self) -> bool:
        """Whether a passphrase has been set."""
        return "passphrase" in self._set.read()

    @property
    def calendar_key(self) -> str:
        """The secret part of the calendar feed's address."""
        with self._lock:
            going = self._going.read()
            if "calendar" not in going:
                going["calendar"] = self._set.read().get("calendar") or token_urlsafe(18)
                self._going.write(going)
            return str(going["calendar"])

    def set_passphrase(self, words: str) -> None:
        """Set a new passphrase; whoever is logged in has to log in again."""
        refuse_weak(words)
        with self._lock:
            kept = {"calendar": key} if (key := self._set.read().get("calendar")) else {}
            self._set.write(kept | {"passphrase": hashed(words)})

    def is_right(self, words: str) -> bool:
        """Tell whether this is the passphrase."""
        return fits(words, self._hash())

    def weigh(self, words: str) -> Future[bool]:
        """Look at a passphrase when those before it are done: each takes much memory."""
        return self._one.submit(self.is_right, words)

    def begin(self, now: datetime) -> str:
        """Begin a session and give its token."""
        token = token_urlsafe(32)
        until = (now + SESSION).isoformat()
        with self._lock:
            going = {
                key: one for key, one in self._sessions().items() if one["until"] > now.isoformat()
            }
            self._keep(going | {_digest(token): {"until": until, "by": _digest(self._hash())}})
        return token

    def holds(self, token: str, now: datetime) -> bool:
        """Tell whether a token belongs to a session that goes on."""
        session = self._sessions().get(_digest(token))
        return (
            session is not None
            and session["until"] > now.isoformat()
            and compare_digest(session["by"], _digest(self._hash()))
        )

    def end(self, token: str) -> None:
        """End a session."""
        with self._lock:
            going = dict(self._sessions())
            if going.pop(_digest(token), None):
                self._keep(going)

    def opens_calendar(self, key: str) -> bool:
        """Tell whether a key opens the calendar feed."""
        return compare_digest(key.encode(), self.calendar_key.encode())

    def _hash(self) -> str:
        return str(self._set.read().get("passphrase", ""))

    def _sessions(self) -> dict[str, dict[str, str]]:
        found: dict[str, dict[str, str]] = self._going.read().get("sessions", {})
        return found

    def _keep(self, sessions: dict[str, dict[str, str]]) -> None:
        kept: dict[str, Any] = self._going.read()
        self._going.write(kept | {"sessions": sessions})


def _digest(token: str) -> str:
    return sha256(token.encode()).hexdigest()
