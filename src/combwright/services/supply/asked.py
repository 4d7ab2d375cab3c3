"""What plan of nucs and queens is asked for, and what if things were otherwise."""

from dataclasses import dataclass, field
from datetime import date, timedelta
from typing import Final

from combwright.planning.supply.ready import A_WEEK
from combwright.terms.errors import OutOfRangeError

WEEKS: Final = (2, 26)
SCENARIOS: Final = (50, 5000)


@dataclass(frozen=True)
class WhatIf:
    """What may be otherwise: prices, batches that are lost, a cold spell of some days."""

    prices: tuple[tuple[str, float], ...] = ()
    lost_batches: frozenset[str] = frozenset()
    cold_from: date | None = None
    cold_days: int = 14
    colder_k: float = 6.0


@dataclass(frozen=True)
class AskedSupply:
    """The day, the weeks of work ahead, and what there is beside the book.

    ``seconds`` is the most that one solution may take.
    """

    on: date
    weeks: int = 12
    scenarios: int = 1000
    members: int = 200
    seed: int = 1
    hours: float = 12.0
    queens_a_week: int = 0
    seconds: float = 60.0
    what_if: WhatIf = field(default_factory=WhatIf)

    def week(self, number: int) -> date:
        """Give the day on which a week of the plan begins."""
        return self.on + timedelta(days=A_WEEK * number)

    def check(self) -> None:
        """Refuse what cannot be planned."""
        for value, (low, high), what in (
            (self.weeks, WEEKS, "weeks"),
            (self.scenarios, SCENARIOS, "scenarios"),
        ):
            if not low <= value <= high:
                raise OutOfRangeError(
                    f"{value} {what} cannot be planned.", remedy=f"Give {low} to {high}."
                )
        if self.hours <= 0 or self.queens_a_week < 0:
            raise OutOfRangeError(
                "Hours a week must be more than none, and queens bought not fewer than none.",
                remedy="Correct --hours or --queens.",
            )
