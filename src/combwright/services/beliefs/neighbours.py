"""What the colonies of a yard teach each other, worked out when a yard is first asked for."""

import json
from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from datetime import date
from functools import partial
from hashlib import blake2b
from pathlib import Path
from threading import Lock
from typing import Final

from combwright.belief.following.replay import Replay
from combwright.belief.sharing.pooling import NOTHING, Moments, Pooled, moments_of, pool
from combwright.services.beliefs.workers import or_left_out
from combwright.services.kept_files import keep_file, read_kept
from combwright.terms.entries import Colony, Noted

MOST_KEPT: Final = 50  # of a yard: of some days, and of notes that were mended; judgement
TEACHERS: Final = 10  # of a yard, those that came first: more would teach little more
SECOND_HALF: Final = 16
Asking = Callable[[Callable[[str], Moments], Sequence[str]], Iterable[Moments]]
MEMBERS: Final = 50  # enough for what many colonies have in common


def lesson_day(on: date) -> date:
    """Give the day up to which notes teach neighbours.

    Examples
    --------
    >>> lesson_day(date(2026, 5, 20)), lesson_day(date(2026, 5, 3))
    (datetime.date(2026, 5, 16), datetime.date(2026, 5, 1))

    """
    return on.replace(day=SECOND_HALF if on.day >= SECOND_HALF else 1)


class Lessons(Mapping[str, Pooled]):
    """Lessons by yard: from colonies followed by their own notes alone.

    They are drawn twice a month, from notes before the first or the sixteenth, so that in between
    a new note is a matter of its own colony only. What each colony says is kept by the key of its
    notes, in a file for each yard.
    """

    def __init__(self, alone: Replay, entries: Sequence[Noted], on: date, folder: Path) -> None:
        self._alone, self._on, self._folder = alone, lesson_day(on), folder
        self._yards: dict[str, list[str]] = {}
        for entry in entries:
            if isinstance(entry, Colony) and entry.on < self._on:
                self._yards.setdefault(entry.yard, []).append(entry.colony)
        self._found: dict[str, Pooled] = {}
        self._learning: defaultdict[str, Lock] = defaultdict(Lock)
        self._lock = Lock()

    def __getitem__(self, yard: str) -> Pooled:
        """Give the lessons of a yard; none of a yard that nobody knows."""
        if yard in self._found:
            return self._found[yard]
        with self._lock:
            learning = self._learning[yard]
        with learning:  # the other yards go on meanwhile
            if yard not in self._found:
                self._learn([yard], map)
            return self._found[yard]

    def __iter__(self) -> Iterator[str]:
        return iter(self._yards)

    def __len__(self) -> int:
        return len(self._yards)

    def learn(self, told: Asking) -> None:
        """Draw the lessons of all yards before they are asked for."""
        self._learn([yard for yard in self if yard not in self._found], told)

    def _learn(self, yards: Sequence[str], told: Asking) -> None:
        """Draw the lessons of some yards; ``told`` asks the teachers whose moments are not kept."""
        kept = {yard: _read(self._file(yard)) for yard in yards}
        asked = {yard: self._teachers(yard) for yard in yards}
        new = {
            key: colony
            for yard, teachers in asked.items()
            for key, colony in teachers.items()
            if key not in kept[yard]
        }
        said = dict(zip(new, told(self.moments, list(new.values())), strict=True))
        for yard, teachers in asked.items():
            if any(key in said for key in teachers):
                known = kept[yard] | {key: said[key] for key in teachers if key in said}
                newest = list(known.items())[-MOST_KEPT:]
                keep_file(self._file(yard), json.dumps(dict(newest)).encode())
                kept[yard] = known
            moments = [kept[yard][key] for key in teachers if kept[yard][key]]
            self._found[yard] = pool(moments, self._alone.doubts) if moments else NOTHING

    def _teachers(self, yard: str) -> dict[str, str]:
        """Give the colonies of a yard that teach, by the keys of their notes."""
        names = list(dict.fromkeys(self._yards.get(yard, [])))[:TEACHERS]
        return {self._alone.key(name, self._on)[0]: name for name in names}

    def _file(self, yard: str) -> Path:
        return self._folder / f"{blake2b(yard.encode(), digest_size=8).hexdigest()}.lessons"

    def moments(self, colony: str) -> Moments:
        """Follow a colony by its own notes alone, and give what it has to teach."""
        # what goes wrong is said where it is followed itself; its neighbours learn from the others
        followed = or_left_out(colony, partial(self._alone.follow, colony, self._on), {})
        return moments_of(followed.belief) if followed is not None else {}


def _read(file: Path) -> dict[str, Moments]:
    try:
        kept = json.loads(read_kept(file) or b"{}")
        return {
            key: {name: (float(at[0]), float(at[1])) for name, at in moments.items()}
            for key, moments in kept.items()
        }
    except (ValueError, AttributeError, TypeError, IndexError):
        return {}
