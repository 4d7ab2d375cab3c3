"""Notes that speak of a colony which never came into the book."""

from collections.abc import Sequence
from difflib import get_close_matches
from typing import Final

from combwright.records.replay.corrections import names
from combwright.services.rounds.situations import Situations

MOST: Final = 5  # named one by one; a file that was read amiss could hold hundreds


def unknown_colony_notices(situations: Situations) -> list[str]:
    """Say of which colonies the notes speak in vain, and what to do about it."""
    unknown = situations.replay.strangers(situations.asked.on)
    known = [name for name in situations.replay.colonies if name not in unknown]
    told = [_notice(name, known, situations) for name in unknown[:MOST]]
    if len(unknown) > MOST:
        told.append(f"And {len(unknown) - MOST} more that are noted but not in the book.")
    return told


def _notice(name: str, known: Sequence[str], situations: Situations) -> str:
    first = min(entry.on for entry in situations.entries if name in names(entry))
    return (
        f"“{name}” is noted from {first.day} {first:%B %Y} on but never came into the book, so "
        f"these notes do not count: {_remedy(name, known)}."
    )


def _remedy(name: str, known: Sequence[str]) -> str:
    """Ask for an entry, or for the nearest known name, whatever its capitals."""
    folded = {each.casefold(): each for each in known}
    near = get_close_matches(name.casefold(), folded, n=1)
    if not near:
        return "write an entry for the colony, or correct the name"
    return f"correct the name if “{folded[near[0]]}” is meant, or write an entry for the colony"
