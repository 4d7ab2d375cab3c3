"""A chain of seals over the entries: each over one as it is stored and the seal before it.

Whoever changes or takes out an entry behind the book's back must write every later seal anew, and
the seal that stands on a printed register no longer fits. Entries are put into the canonical form
of RFC 8785 first, so that any other program can check the chain.
"""

import json
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from hashlib import sha256
from typing import Any, Final

import rfc8785
import sqlalchemy as sa

from combwright.records.store.tables import entry, old_seal, seal

MOST_EXACT: Final = 2**53  # whole numbers below it are exact in a double
BEFORE_ALL: Final = "0" * 64
NEWEST: Final = 25  # entries at the end that are looked at on opening; all of them by a check
GROUP: Final = 4  # signs of a code between two dashes
GROUPS: Final = 3  # of them: 48 bits, enough that nobody hits upon them by trying; judgement


@dataclass(frozen=True, slots=True)
class SealsChecked:
    """How many entries were looked at, the last seal, and the first place that does not fit."""

    entries: int
    last: str
    broken_at: int | None = None

    @property
    def code(self) -> str:
        """The last seal, short enough to be printed and compared by eye."""
        return "-".join(self.last[at : at + GROUP] for at in range(0, GROUP * GROUPS, GROUP))


def seal_of(before: str, body: Mapping[str, Any], sequence: int) -> str:
    """Seal one entry behind the seal before it.

    Examples
    --------
    >>> len(seal_of(BEFORE_ALL, {"kind": "visit"}, 1))
    64

    """
    whole: dict[str, Any] = {"prev": before, "rec": body, "seq": sequence}
    return sha256(canonical(whole)).hexdigest()


def canonical(whole: dict[str, Any]) -> bytes:
    """Put plain data into the canonical form of RFC 8785.

    What the standard library writes is that form but for some numbers; those are left to the
    library for it, which takes thirty times as long.

    Examples
    --------
    >>> canonical({"b": 2.0, "a": "é"}).decode()
    '{"a":"é","b":2}'

    """
    try:
        told = json.dumps(_plain(whole), sort_keys=True, separators=(",", ":"), ensure_ascii=False)
    except _OtherNumberError:
        return rfc8785.dumps(whole)
    return told.encode()


class _OtherNumberError(Exception):
    """A number that is written otherwise in the canonical form."""


def _plain(value: Any) -> Any:  # noqa: ANN401  (whatever JSON holds)
    """Give whole numbers as such; numbers with an exponent, and names beyond ASCII, are refused."""
    if isinstance(value, float):
        is_whole = value.is_integer() and abs(value) < MOST_EXACT
        if not is_whole and (value.is_integer() or "e" in repr(value)):
            raise _OtherNumberError
        return int(value) if is_whole else value
    if isinstance(value, int) and abs(value) >= MOST_EXACT:
        raise _OtherNumberError
    if isinstance(value, dict):
        if not all(map(str.isascii, value)):
            raise _OtherNumberError
        return {name: _plain(one) for name, one in value.items()}
    if isinstance(value, list):
        return [_plain(one) for one in value]
    return value


def seal_rows(
    before: str, rows: Iterable[tuple[int, Mapping[str, Any]]]
) -> Iterator[dict[str, Any]]:
    """Give the rows of seals for entries, in the order written."""
    for sequence, body in rows:
        before = seal_of(before, body, sequence)
        yield {"sequence": sequence, "hash": before}


def append_seals(db: sa.Connection, rows: Iterable[tuple[int, Mapping[str, Any]]]) -> None:
    """Seal entries that were just written."""
    newest = sa.select(seal.c.hash).order_by(seal.c.sequence.desc()).limit(1)
    db.execute(sa.insert(seal), list(seal_rows(db.scalar(newest) or BEFORE_ALL, rows)))


def check_seals(db: sa.Connection, *, newest: int | None = None) -> SealsChecked:
    """Go through the chain, or through its last links, and find the first that does not fit."""
    last = db.scalar(sa.select(sa.func.max(entry.c.sequence))) or 0
    first = 1 if newest is None else max(1, last - newest + 1)
    told = sa.select(seal.c.hash).where(seal.c.sequence == first - 1)
    before = db.scalar(told) or BEFORE_ALL
    count = 0
    try:
        for expected, (sequence, body, found) in enumerate(_sealed(db, first), first):
            if sequence != expected or found != seal_of(before, body, sequence):
                return SealsChecked(count, before, expected)
            before, count = found, count + 1
    except ValueError:  # what stands there is no longer an entry
        return SealsChecked(count, before, first + count)
    # what was cut off at the end leaves its seals behind
    longest = db.scalar(sa.select(sa.func.max(seal.c.sequence))) or 0
    return SealsChecked(count, before, last + 1 if longest > last else None)


def found_by(db: sa.Connection, code: str) -> tuple[int, bool] | None:
    """Find the entry whose seal a short code is of; and whether it is a seal of before."""
    plain = code.replace("-", "").strip().lower()
    for table in (seal, old_seal) if len(plain) == GROUP * GROUPS else ():
        wanted = sa.select(table.c.sequence).where(table.c.hash.startswith(plain, autoescape=True))
        if (sequence := db.scalar(wanted.limit(1))) is not None:
            return sequence, table is old_seal
    return None


def _sealed(db: sa.Connection, first: int) -> Iterator[tuple[int, Mapping[str, Any], str | None]]:
    """Read entries with their seals, from one on."""
    rows = db.execute(
        sa.select(entry.c.sequence, entry.c.body, seal.c.hash)
        .outerjoin(seal, seal.c.sequence == entry.c.sequence)
        .where(entry.c.sequence >= first)
        .order_by(entry.c.sequence)
    )
    yield from ((row.sequence, row.body, row.hash) for row in rows)
