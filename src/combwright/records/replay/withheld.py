"""Honey that waits: the withdrawal period of what was given to its bees has not passed."""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from uuid import UUID

from combwright.records.replay.known_medicines import known_products
from combwright.terms.entries import Noted, Treatment


@dataclass(frozen=True, slots=True)
class Withheld:
    """Honey of a colony that waits from the first day of a treatment to the day before ``free``."""

    colony: str
    product: str
    since: date
    free: date
    treatment: UUID
    label: UUID

    def holds(self, on: date) -> bool:
        """Tell whether honey taken on a day had to wait."""
        return self.since <= on < self.free


def withheld(entries: Iterable[Noted]) -> Mapping[str, Sequence[Withheld]]:
    """Give by colony what its honey had or has to wait for, as labels in the book say.

    Counted from the last day of the treatment, or the first where no last day is noted. A label
    that says nought asks for no wait; of a medicine without a label in the book nothing is known.
    """
    told = list(entries)
    labels = known_products(told)
    found: defaultdict[str, list[Withheld]] = defaultdict(list)
    for each in told:
        label = labels.get(each.product) if isinstance(each, Treatment) else None
        if label is None or not isinstance(each, Treatment) or not label.withdrawal_days:
            continue
        free = (each.until or each.on) + timedelta(days=label.withdrawal_days)
        found[each.colony].append(
            Withheld(each.colony, each.product, each.on, free, each.id, label.id)
        )
    return found


def waits_on(entries: Iterable[Noted], on: date) -> dict[str, Withheld]:
    """Give the colonies whose honey waits on a day, each with what it waits longest for."""
    longest = {
        colony: max((one for one in some if one.holds(on)), key=lambda one: one.free, default=None)
        for colony, some in withheld(entries).items()
    }
    return {colony: one for colony, one in longest.items() if one is not None}
