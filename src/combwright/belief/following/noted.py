"""The notes of a book by the colonies that they speak of, in the order in which they count."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Final

from combwright.belief.following.own_way import as_counted, doubts
from combwright.terms.entries import Noted

# What is seen comes before what is done on the same day.
ORDER: Final = ("colony", "visit", "tray count", "wash count")


@dataclass(frozen=True)
class NotesOfColonies:
    """Notes in their keeper's way of counting, by colony, and the doubts about that way."""

    of: Mapping[str, Sequence[Noted]]
    doubts: Mapping[str, float]


def notes_of_colonies(entries: Sequence[Noted]) -> NotesOfColonies:
    """Sort the entries of a book, each once, by all colonies that they speak of."""
    once = {entry.id: entry for entry in entries}
    found: dict[str, list[Noted]] = {}
    for entry in sorted(as_counted(list(once.values())), key=_turn):
        for name in _concerned(entry):
            found.setdefault(name, []).append(entry)
    return NotesOfColonies(found, doubts(entries))


def _turn(entry: Noted) -> tuple[date, int]:
    """Give the place of an entry among the others."""
    return entry.on, ORDER.index(entry.kind) if entry.kind in ORDER else len(ORDER)


def _concerned(entry: Noted) -> list[str]:
    """Colonies that an entry speaks of."""
    said = vars(entry)
    names = (said.get(role) for role in ("colony", "new_colony", "into"))
    return list(dict.fromkeys(name for name in names if name is not None))
