"""Notes that are too old to be meant, in words."""

from collections.abc import Sequence

from combwright.records.replay.corrections import names
from combwright.records.replay.far_days import EARLIEST
from combwright.terms.dated import dated
from combwright.terms.entries import Noted


def too_old_notices(notes: Sequence[Noted]) -> list[str]:
    """Say which notes do not count, once for each day, and what to do about them."""
    about: dict[str, set[str]] = {}
    for each in notes:
        about.setdefault(dated(each.on), set()).update(names(each))
    return [
        f"What is noted of {day}{_of(sorted(colonies))} does not count: it lies before "
        f"{EARLIEST.year}. Correct the year."
        for day, colonies in about.items()
    ]


def _of(colonies: Sequence[str]) -> str:
    return f" about {', '.join(f'“{name}”' for name in colonies)}" if colonies else ""
