"""Keys that stand for all that led to a belief: entries, weather, neighbours, seed and version.

Each day's key is made from the day before's and from what came in between, so that a new note
leaves all earlier keys as they were, and a changed old note changes its own and all later ones.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from datetime import date
from hashlib import blake2b
from itertools import groupby
from typing import Any, Final
from weakref import ref

import numpy as np
from numpy.typing import NDArray

from combwright.belief.sharing.pooling import NOTHING, Pooled
from combwright.terms.entries import Colony, Move, Noted

Floats = NDArray[np.float64]
Season = Callable[[str, date, date], Floats]  # yard, first day, day after the last -> conditions

DIGEST_BYTES: Final = 16
At = tuple[str, date]  # colony, and the day up to which
NONE: Final[frozenset[At]] = frozenset()


class Keys:
    """Keys of the colonies of one book."""

    def __init__(
        self,
        by_colony: Mapping[str, Sequence[Noted]],
        season: Season,
        pooled: Mapping[str, Pooled],
        root: str,
    ) -> None:
        self._by_colony, self._season, self._pooled = by_colony, season, pooled
        self._root = root
        self._found: dict[At, tuple[str, str]] = {}
        self._weather: dict[tuple[str, date, date], bytes] = {}
        self._digests: dict[tuple[object, ...], tuple[Floats, bytes]] = {}

    def before(self, colony: str, on: date) -> tuple[str, str]:
        """Key of a colony with all that was noted of it before a day, and where it then stood."""
        return self._last(colony, [e for e in self._by_colony.get(colony, []) if e.on < on])

    def chain(self, colony: str, days: Sequence[tuple[date, Sequence[Noted]]]) -> Iterator[str]:
        """Give for each day with entries the key of all that led to the belief after it."""
        for key, _ in self._chain(colony, days):
            yield key

    def _chain(
        self, colony: str, days: Sequence[tuple[date, Sequence[Noted]]], asked: frozenset[At] = NONE
    ) -> Iterator[tuple[str, str]]:
        key, yard, last = f"{self._root} {colony}", "", days[0][0]
        for day, entries in days:
            digest = blake2b(key.encode(), digest_size=DIGEST_BYTES)
            digest.update(self._days(yard, last, day))
            for entry in entries:
                digest.update(_said(entry))
                yard = entry.yard if isinstance(entry, Colony | Move) else yard
                other = _depends_on(colony, entry)
                if other is not None:
                    their_key, their_yard = self._upto((other, day), asked)
                    digest.update(their_key.encode())
                    yard = yard or their_yard
            digest.update(self._pooled.get(yard, NOTHING).key.encode())
            key, last = digest.hexdigest(), day
            yield key, yard

    def _upto(self, at: At, asked: frozenset[At]) -> tuple[str, str]:
        """Key and yard of a colony with all that was noted of it up to a day."""
        if at in asked:
            return "", ""  # two colonies that begin from each other end here
        if at not in self._found:
            colony, on = at
            past = [entry for entry in self._by_colony.get(colony, []) if entry.on <= on]
            self._found[at] = self._last(colony, past, asked | {at})
        return self._found[at]

    def _last(
        self, colony: str, past: Sequence[Noted], asked: frozenset[At] = NONE
    ) -> tuple[str, str]:
        days = [(day, list(found)) for day, found in groupby(past, lambda entry: entry.on)]
        return list(self._chain(colony, days, asked))[-1] if days else ("", "")

    def _days(self, yard: str, first: date, until: date) -> bytes:
        at = (yard, first, until)
        if at not in self._weather:
            table = self._season(yard, first, until)
            # yards of one climate share a table, which is read once; it is held, so that no other
            # comes to lie in its place
            place = (table.ctypes.data, table.shape, table.strides)
            if place not in self._digests:
                read = blake2b(np.ascontiguousarray(table).tobytes(), digest_size=DIGEST_BYTES)
                self._digests[place] = table, read.digest()
            self._weather[at] = self._digests[place][1]
        return self._weather[at]


_SAID: Final[dict[int, tuple[Any, bytes]]] = {}


def _said(entry: Noted) -> bytes:
    """Write an entry out, once as long as somebody holds it: entries never change."""
    place = id(entry)
    known = _SAID.get(place)
    if known is None or known[0]() is not entry:
        known = ref(entry, lambda _: _SAID.pop(place, None)), entry.model_dump_json().encode()
        _SAID[place] = known
    return known[1]


def _depends_on(colony: str, entry: Noted) -> str | None:
    """Give the other colony on which an entry makes this one depend."""
    if entry.kind == "split" and entry.new_colony == colony != entry.colony:
        return entry.colony
    if entry.kind == "unite" and entry.into == colony != entry.colony:
        return entry.colony
    return None
