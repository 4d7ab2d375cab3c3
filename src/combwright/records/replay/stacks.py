"""The stacks of all colonies of a book, day after day, by the one rule of the kit."""

from collections.abc import Iterable, Mapping
from contextlib import suppress
from dataclasses import dataclass, field
from uuid import UUID

from combwright.kit.catalogue import Catalogue
from combwright.kit.evening import arrived, evening
from combwright.kit.fits import Misfit
from combwright.kit.standing import Standing, another_day, usual
from combwright.terms.entries import Colony, Noted, Split, Stack
from combwright.terms.errors import NotFoundError


@dataclass(slots=True)
class StackDay:
    """How stacks stood before and after a day, and what of its entries cannot be or is odd."""

    before: dict[str, Standing] = field(default_factory=dict)
    after: dict[str, Standing] = field(default_factory=dict)
    impossible: dict[UUID, Misfit] = field(default_factory=dict)
    odd: dict[UUID, tuple[Misfit, ...]] = field(default_factory=dict)


class Stacks:
    """Every stack as it stands; one in a hive that the catalogue does not know is left out."""

    def __init__(self, kit: Catalogue) -> None:
        self.kit = kit
        self.now: dict[str, Standing] = {}

    def pass_day(self, entries: Iterable[Noted]) -> StackDay:
        """Replay the entries of one day."""
        about: dict[str, list[Noted]] = {}
        for each in entries:
            about.setdefault(getattr(each, "colony", ""), []).append(each)
        day = StackDay()
        known = {name: another_day(self.now[name]) for name in about if name in self.now}
        for colony, morning in (self._newcomers(about) | known).items():
            stood = evening(morning, about.get(colony, ()), self.kit)
            day.before[colony] = morning
            day.after[colony] = self.now[colony] = stood.standing
            day.impossible |= stood.impossible
            day.odd |= {key: tuple(found) for key, found in stood.odd.items()}
        return day

    def _newcomers(self, about: Mapping[str, list[Noted]]) -> dict[str, Standing]:
        """Give the stacks of colonies that come into the book, or into a hive that is known."""
        found: dict[str, Standing] = {}
        for colony, entries in about.items():
            for each in entries:
                with suppress(NotFoundError):
                    if isinstance(each, Colony):
                        found.setdefault(
                            colony, arrived(self.kit.hive(each.hive), entries, self.kit)
                        )
                    elif isinstance(each, Split):
                        found.setdefault(each.new_colony, usual(self.kit.hive(each.hive)))
                    elif isinstance(each, Stack) and each.hive and colony not in self.now:
                        found.setdefault(colony, usual(self.kit.hive(each.hive)))
        return found
