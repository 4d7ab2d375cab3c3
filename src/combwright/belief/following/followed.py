"""A colony followed through the book to a day."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date

from combwright.belief.scoring import Scored, noted
from combwright.belief.weighing.filter import Belief
from combwright.kit.standing import Standing
from combwright.terms.entries import Noted, Visit


@dataclass(frozen=True)
class Followed:
    """A colony followed through the book to a day.

    ``notices`` tells what in the book could not be true and was left out of the belief.
    """

    belief: Belief
    standing: Standing
    yard: str
    scored: tuple[Scored, ...] = ()
    notes: Mapping[str, tuple[tuple[date, float], ...]] = field(default_factory=dict)
    notices: tuple[str, ...] = ()
    has_ended: bool = False
    last_visit: date | None = None

    def remember(self, entries: Iterable[Noted]) -> "Followed":
        """Keep the values of a day's visits, against which the next ones are set."""
        notes = {name: list(values) for name, values in self.notes.items()}
        last_visit = self.last_visit
        frame_kg = self.standing.hive.frame.stores_full_kg
        for entry in entries:
            if isinstance(entry, Visit):
                last_visit = entry.on
                for quantity, value in noted(entry, frame_kg).items():
                    notes.setdefault(quantity, []).append((entry.on, value))
        kept = {name: tuple(values) for name, values in notes.items()}
        return replace(self, notes=kept, last_visit=last_visit)

    def told(self, *notices: str) -> "Followed":
        """Add what the keeper is to be told."""
        return replace(self, notices=(*self.notices, *notices)) if notices else self
