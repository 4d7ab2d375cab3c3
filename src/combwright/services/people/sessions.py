"""Sessions of the page, kept on its side: of each token only its SHA-256."""

from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from hashlib import sha256
from secrets import compare_digest, token_urlsafe
from threading import Lock
from typing import Any, Final, final
from uuid import UUID

from combwright.services.private_file import PrivateFile
from combwright.terms.errors import BookError

SESSION: Final = timedelta(days=30)
UNUSED: Final = timedelta(
    days=14
)  # after which one ends sooner: two rounds a week apart; judgement
SEEN: Final = timedelta(days=1)  # how exactly its last use is known, so that few pages write it
SHOWN: Final = 12  # signs by which a session is named where it is ended from afar


@final
@dataclass(frozen=True, slots=True)
class Session:
    """A session that goes on: whose, on what device, since when and until when."""

    key: str
    person: UUID | None
    device: str
    began: datetime | None
    until: datetime
    by: str = field(repr=False)

    def was_opened_by(self, secret: str) -> bool:
        """Tell whether it was opened with a secret that still holds."""
        return compare_digest(self.by, digest(secret))


class Sessions:
    """The sessions of one book; each ends when the secret that opened it is another."""

    def __init__(self, file: PrivateFile) -> None:
        self._file = file
        self._lock = Lock()

    def begin(self, now: datetime, secret: str, person: UUID | None, device: str) -> str:
        """Begin a session and give its token."""
        token = token_urlsafe(32)
        begun = {
            "until": (now + SESSION).isoformat(),
            "began": now.isoformat(timespec="seconds"),
            "by": digest(secret),
            "device": device,
            "person": str(person or ""),
        }
        self._change(lambda going: _left(going, now) | {digest(token): begun})
        return token

    def whose(self, token: str, now: datetime) -> Session | None:
        """Find the session of a token, while it lasts."""
        key = digest(token)
        one = _left(self._all(), now).get(key)
        if one is None:
            return None
        if now - _seen(one) >= SEEN:
            with suppress(BookError):  # on a disk that is read-only the book may still be read
                self._change(lambda going: _used(going, key, now))
        return _session(key, one)

    def going(self, now: datetime) -> list[Session]:
        """List the sessions that go on, newest first."""
        found = [_session(key, one) for key, one in _left(self._all(), now).items()]
        return sorted(found, key=lambda one: one.until, reverse=True)

    def end(self, key: str) -> None:
        """End a session, by its key as it is shown or whole."""
        self._change(lambda going: {one: going[one] for one in going if not one.startswith(key)})

    def _all(self) -> dict[str, dict[str, str]]:
        found: dict[str, dict[str, str]] = self._file.read().get("sessions", {})
        return found

    def _change(
        self, change: Callable[[dict[str, dict[str, str]]], dict[str, dict[str, str]]]
    ) -> None:
        with self._lock:
            kept: dict[str, Any] = self._file.read()
            self._file.write(kept | {"sessions": change(self._all())})


def digest(token: str) -> str:
    """Give what is kept of a token."""
    return sha256(token.encode()).hexdigest()


def _left(going: dict[str, dict[str, str]], now: datetime) -> dict[str, dict[str, str]]:
    return {
        key: one
        for key, one in going.items()
        if one["until"] > now.isoformat() and now - _seen(one) < UNUSED
    }


def _used(going: dict[str, dict[str, str]], key: str, now: datetime) -> dict[str, dict[str, str]]:
    # one that was ended meanwhile stays ended
    return going | {each: going[each] | {"seen": now.isoformat()} for each in {key} & going.keys()}


def _seen(one: dict[str, str]) -> datetime:
    """Tell when a session was used last, to a day."""
    told = one.get("seen") or one.get("began")
    return datetime.fromisoformat(told) if told else datetime.fromisoformat(one["until"]) - SESSION


def _session(key: str, one: dict[str, str]) -> Session:
    began = one.get("began")
    return Session(
        key[:SHOWN],
        UUID(one["person"]) if one.get("person") else None,
        one.get("device", ""),
        datetime.fromisoformat(began) if began else None,
        datetime.fromisoformat(one["until"]),
        one["by"],
    )
