"""A replay of a book that remembers what it followed before, and lets neighbours teach."""

from collections.abc import Sequence
from datetime import date
from typing import Protocol

from combwright.belief.following.keys import Season
from combwright.belief.following.replay import Replay
from combwright.kit.catalogue import catalogue
from combwright.records.store.book import Book
from combwright.services.beliefs.kept_beliefs import KeptBeliefs, folder_for, version
from combwright.services.beliefs.neighbours import MEMBERS, Lessons
from combwright.terms.entries import Noted


class Wanted(Protocol):
    """What is asked for: a day, how many members, and the seed."""

    @property
    def on(self) -> date:
        """The day."""

    @property
    def members(self) -> int:
        """How many simulated colonies stand for each real one."""

    @property
    def seed(self) -> int:
        """Seed of the run."""


def remembering(
    book: Book,
    entries: Sequence[Noted],
    season: Season,
    asked: Wanted,
    *,
    with_neighbours: bool = True,
) -> Replay:
    """Make ready to follow the colonies of a book.

    Parameters
    ----------
    book
        The book, by which kept beliefs are found.
    entries
        Its entries.
    season
        The days of its yards.
    asked
        Day, members and seed.
    with_neighbours
        Whether colonies of one yard teach each other. What they taught up to the day would reach
        back into what was forecast before it, so that scores are made without.

    """
    folder = folder_for(book)
    kept = KeptBeliefs(folder, catalogue())
    lessons = None
    if with_neighbours:
        few = min(MEMBERS, asked.members)
        alone = Replay(
            entries,
            season,
            catalogue(),
            members=few,
            seed=asked.seed,
            kept=kept,
            version=version() + " alone",
        )
        lessons = Lessons(alone, entries, asked.on, folder / "lessons.json")
    return Replay(
        entries,
        season,
        catalogue(),
        members=asked.members,
        seed=asked.seed,
        pooled=lessons,
        kept=kept,
        version=version(),
    )
