"""Beliefs kept between runs, so that an unchanged book costs nothing and a new note one colony.

What is kept can be thrown away at any time. It is found by a key that stands for the book's
entries up to a day, the weather, the neighbours' lessons, the seed and the version of the model.
"""

import json
from dataclasses import replace
from datetime import date
from functools import cache
from hashlib import blake2b
from itertools import pairwise
from pathlib import Path
from typing import Any, Final

import numpy as np
from platformdirs import user_cache_path

from combwright import __version__
from combwright.belief.following.causes import Since
from combwright.belief.following.followed import Followed
from combwright.belief.scoring import LADDER, Scored
from combwright.belief.sharing.shared import SHARED
from combwright.belief.weighing.filter import Belief
from combwright.kit.catalogue import Catalogue
from combwright.kit.standing import Standing
from combwright.records.store.book_handle import Book
from combwright.services.kept_files import keep_file, leave_the_newest, read_kept
from combwright.simulation.columns import STATE, copied
from combwright.terms.fingerprint import fingerprint
from combwright.terms.set_up import SetUp

EVERY: Final = 13  # days with entries between states that are kept on the way, besides the last
ENDING: Final = ".belief"
MOST_FILES: Final = 12  # of one colony; the oldest go
DAMAGED: Final = (ValueError, KeyError, TypeError)


@cache
def version() -> str:
    """Tell one version of all that a belief rests on from another."""
    rests_on = ("terms", "kit", "science", "weather", "simulation", "belief")
    return f"{__version__} {fingerprint(*rests_on)}"


def folder_for(book: Book) -> Path:
    """Give the folder in the user's cache in which the beliefs of a book are kept."""
    name = blake2b(book.key.encode(), digest_size=8).hexdigest()
    return user_cache_path("combwright", appauthor=False) / "beliefs" / name


class KeptBeliefs:
    """States of colonies in a folder, a file each; a damaged file counts as none."""

    def __init__(self, folder: Path, catalogue: Catalogue) -> None:
        self.folder, self.catalogue = folder, catalogue
        self.found, self.made = 0, 0

    def get(self, colony: str, key: str) -> Followed | None:
        """Give a state that was put there, if it still is."""
        content = read_kept(self._path(colony, key))
        try:
            state = None if content is None else _read(content, self.catalogue)
        except DAMAGED:
            return None
        self.found += state is not None
        return state

    def put(self, colony: str, key: str, followed: Followed, *, number: int, of: int) -> None:
        """Keep the state after the last day with entries, and now and then one on the way."""
        self.made += 1
        if number != of - 1 and number % EVERY != EVERY - 1:
            return
        path = self._path(colony, key)
        keep_file(path, _written(followed))
        leave_the_newest(path.parent, ENDING, MOST_FILES)

    def _path(self, colony: str, key: str) -> Path:
        name = blake2b(colony.encode(), digest_size=8).hexdigest()
        return self.folder / name / f"{key}{ENDING}"


def _written(followed: Followed) -> bytes:
    """Write a line of JSON, and the arrays as they lie in memory.

    NumPy's own files are not used: reading their headers goes through Python's parser, which in
    3.11 is not safe in threads.
    """
    belief = followed.belief
    told: dict[str, Any] = {
        "colony": belief.colony,
        "on": belief.on.isoformat(),
        "last_note": belief.last_note.isoformat(),
        "log_evidence": belief.log_evidence,
        "chances": dict(belief.chances),
        "questions": belief.questions,
        "hive": followed.standing.hive.key,
        "set_up": followed.standing.set_up.model_dump(mode="json"),
        "yard": followed.yard,
        "notices": followed.notices,
        "has_ended": followed.has_ended,
        "pitch_mm": followed.standing.pitch_mm,
        "noted": sorted(followed.standing.noted),
        "last_visit": followed.last_visit.isoformat() if followed.last_visit else None,
        "notes": {
            name: [(on.isoformat(), value) for on, value in values]
            for name, values in followed.notes.items()
        },
        "scored": [
            (s.on.isoformat(), s.quantity, s.seen, s.last_time, s.trend) for s in followed.scored
        ],
    }
    since = [(one.swarms, one.robberies, one.laying) for one in belief.since]
    arrays = (
        belief.colonies,
        belief.shared,
        np.array(since, dtype=np.float64),
        np.array([each.ladder for each in followed.scored], dtype=np.float64),
    )
    parts = [array.tobytes() for array in arrays]
    told["sizes"] = [len(part) for part in parts]
    return b"".join([json.dumps(told).encode(), b"\n", *parts])


def _read(content: bytes, catalogue: Catalogue) -> Followed:
    head, _, rest = content.partition(b"\n")
    told = json.loads(head)
    ends = np.cumsum([0, *told["sizes"]])
    parts = [rest[start:end] for start, end in pairwise(ends)]
    colonies = copied(np.frombuffer(parts[0], dtype=STATE))
    shared = copied(np.frombuffer(parts[1], dtype=SHARED))
    stood = np.frombuffer(parts[2]).reshape(2, 3, len(colonies))
    ladders = np.frombuffer(parts[3]).reshape(-1, len(LADDER))
    since = [Since(swarms, robbed, laying > 0.0) for swarms, robbed, laying in stood]
    belief = Belief(
        told["colony"],
        date.fromisoformat(told["on"]),
        colonies,
        shared,
        (since[0], since[1]),
        date.fromisoformat(told["last_note"]),
        told["log_evidence"],
        told["chances"],
        tuple(told["questions"]),
    )
    scored = tuple(
        Scored(belief.colony, date.fromisoformat(on), quantity, seen, ladder, last_time, trend)
        for (on, quantity, seen, last_time, trend), ladder in zip(
            told["scored"], ladders, strict=True
        )
    )
    followed = Followed(
        belief,
        Standing(
            catalogue.hive(told["hive"]),
            SetUp(**told["set_up"]),
            told["pitch_mm"],
            frozenset(told["noted"]),
        ),
        told["yard"],
        scored,
        {
            name: tuple((date.fromisoformat(on), value) for on, value in values)
            for name, values in told["notes"].items()
        },
        tuple(told["notices"]),
        told["has_ended"],
    )
    last_visit = told["last_visit"]
    return replace(followed, last_visit=date.fromisoformat(last_visit) if last_visit else None)
