"""A replay of a book that resumes where it was left, and lets neighbours teach."""

from collections.abc import Sequence
from datetime import date

from combwright.belief.following.keys import Season
from combwright.belief.following.noted import notes_of_colonies
from combwright.belief.following.replay import Replay
from combwright.records.store.book_handle import Book
from combwright.services.beliefs.kept_beliefs import KeptBeliefs, folder_for, version
from combwright.services.beliefs.neighbours import MEMBERS, Lessons
from combwright.terms.entries import Noted


def resumed_replay(
    book: Book,
    entries: Sequence[Noted],
    season: Season,
    *,
    on: date,
    members: int,
    seed: int,
    with_neighbours: bool = True,
) -> Replay:
    """Make ready to follow the colonies of a book from the beliefs that it keeps.

    What colonies of one yard taught each other up to the day would reach back into what was
    forecast before it, so that scores are made without.
    """
    folder = folder_for(book)
    kept = KeptBeliefs(folder, book.kit)
    notes = notes_of_colonies(entries)
    root = f"{version()} {book.kit.own}".strip()
    lessons = None
    if with_neighbours:
        few = min(MEMBERS, members)
        alone = Replay(
            notes,
            season,
            book.kit,
            members=few,
            seed=seed,
            kept=kept,
            version=f"{root} alone",
        )
        lessons = Lessons(alone, entries, on, folder / "lessons")
    return Replay(
        notes,
        season,
        book.kit,
        members=members,
        seed=seed,
        pooled=lessons,
        kept=kept,
        version=root,
    )
