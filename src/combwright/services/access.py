"""Who may open the page: a passphrase, and sessions kept on the server's side.

They lie in a file beside the book, which only its owner may read: the passphrase as an argon2
hash, each session as the SHA-256 of its token, so that the file opens no door by itself.
"""

import json
from collections import defaultdict, deque
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from hashlib import sha256
from secrets import compare_digest, token_urlsafe
from threading import Lock
from typing import Any, Final

from argon2 import PasswordHasher
from argon2.exceptions import InvalidHashError, VerifyMismatchError

from combwright.records.store.book_handle import Book
from combwright.services.whole_file import write_whole
from combwright.terms.errors import BookError, OutOfRangeError

SHORTEST: Final = 12
LONGEST: Final = 200
SESSION: Final = timedelta(days=30)
TRIES: Final = 5  # wrong passphrases from one address ...
TRIES_OF_ALL: Final = 50  # ... and from all together, within:
TRIES_WITHIN: Final = timedelta(minutes=10)


@dataclass
class WrongTries:
    """Counts wrong passphrases, and says who has to wait."""

    _by: defaultdict[str, deque[datetime]] = field(default_factory=lambda: defaultdict(deque))

    def must_wait(self, address: str, now: datetime) -> bool:
        """Tell whether an address has tried too often."""
        return self._recent(address, now) >= TRIES or self._recent("", now) >= TRIES_OF_ALL

    def count(self, address: str, now: datetime) -> None:
        """Count a wrong try."""
        for each in (address, ""):
            self._by[each].append(now)

    def _recent(self, address: str, now: datetime) -> int:
        if address not in self._by:
            return 0
        tries = self._by[address]
        while tries and now - tries[0] > TRIES_WITHIN:
            tries.popleft()
        if not tries:
            del self._by[address]
        return len(tries)


class Access:
    """The passphrase and the sessions of one book."""

    def __init__(self, book: Book) -> None:
        self._path = book.beside("access")
        self._lock = Lock()
        self._kept = self._read()
        self.wrong = WrongTries()

    @property
    def needs_passphrase(self) -> bool:
        """Whether a passphrase has been set."""
        return "passphrase" in self._kept

    @property
    def calendar_key(self) -> str:
        """The secret part of the calendar feed's address."""
        with self._lock:
            if "calendar" not in self._kept:
                self._kept["calendar"] = token_urlsafe(18)
                self._write()
            return str(self._kept["calendar"])

    def set_passphrase(self, words: str) -> None:
        """Set a new passphrase; whoever is logged in has to log in again."""
        if not SHORTEST <= len(words) <= LONGEST:
            raise OutOfRangeError(
                f"The passphrase has {len(words)} signs.",
                remedy=f"Take {SHORTEST} or more: four words that do not belong together are good.",
            )
        with self._lock:
            self._kept |= {"passphrase": PasswordHasher().hash(words), "sessions": {}}
            self._write()

    def is_right(self, words: str) -> bool:
        """Tell whether this is the passphrase; one at a time, because each try costs memory."""
        with self._lock:
            try:
                return PasswordHasher().verify(str(self._kept["passphrase"]), words[:LONGEST])
            except (VerifyMismatchError, InvalidHashError, KeyError):
                return False

    def begin(self, now: datetime) -> str:
        """Begin a session and give its token."""
        token = token_urlsafe(32)
        with self._lock:
            going = {
                key: until for key, until in self._sessions().items() if until > now.isoformat()
            }
            self._kept["sessions"] = going | {_digest(token): (now + SESSION).isoformat()}
            self._write()
        return token

    def holds(self, token: str, now: datetime) -> bool:
        """Tell whether a token belongs to a session that goes on."""
        until = self._sessions().get(_digest(token), "")
        return until > now.isoformat()

    def end(self, token: str) -> None:
        """End a session."""
        with self._lock:
            self._sessions().pop(_digest(token), None)
            self._write()

    def opens_calendar(self, key: str) -> bool:
        """Tell whether a key opens the calendar feed."""
        return compare_digest(key.encode(), self.calendar_key.encode())

    def _sessions(self) -> dict[str, str]:
        found: dict[str, str] = self._kept.setdefault("sessions", {})
        return found

    def _read(self) -> dict[str, Any]:
        try:
            found: dict[str, Any] = json.loads(self._path.read_text("utf-8"))
        except FileNotFoundError:
            return {}
        except (OSError, ValueError) as error:
            raise BookError(
                "The file of the passphrase cannot be read.",
                where=str(self._path),
                remedy="Restore it, or remove it and set a new passphrase.",
            ) from error
        return found

    def _write(self) -> None:
        write_whole(self._path, json.dumps(self._kept).encode(), mode=0o600)


def _digest(token: str) -> str:
    return sha256(token.encode()).hexdigest()
