"""How a stack stands in the evening of a day, and which of the day's entries cannot be true."""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from uuid import UUID

from combwright.kit.catalogue import Catalogue
from combwright.kit.fits import Misfit, misfits
from combwright.kit.items import Hive
from combwright.kit.standing import Standing, after, in_order_of_work, more_than_there, usual
from combwright.terms.entries import Change, Noted, Stack
from combwright.terms.errors import NotFoundError


@dataclass(frozen=True, slots=True)
class Evening:
    """How a stack stands after a day, without the entries that cannot be.

    ``impossible`` names those with the reason, ``odd`` those that are worth a second look.
    """

    standing: Standing
    impossible: Mapping[UUID, Misfit]
    odd: Mapping[UUID, Sequence[Misfit]]


def evening(morning: Standing, entries: Iterable[Noted], kit: Catalogue) -> Evening:
    """Replay a day of one colony; only how the stack is left in the evening need fit."""
    left = in_order_of_work(entries)
    impossible: dict[UUID, Misfit] = {}
    while True:
        day = _Day(morning, left, kit)
        for each in left:
            day.replay(each)
        found = day.refused or day.overfull()
        if not found:
            return Evening(day.now, impossible, day.worth_a_look())
        impossible |= found
        left = [each for each in left if each.id not in found]


def arrived(hive: Hive, entries: Iterable[Noted], kit: Catalogue) -> Standing:
    """Tell how a stack stood when its colony came, before what was changed that same day.

    How it was left has the last word, so the changes of the day are taken back from it, as far
    as that leaves a stack that can be.
    """
    today = list(entries)
    steps: list[Noted] = [each for each in today if isinstance(each, Stack)]
    steps += [
        each.model_copy(update={"count": -each.count}) for each in today if isinstance(each, Change)
    ]
    now = usual(hive)
    for each in steps:
        try:
            before = after(now, each, kit)
        except NotFoundError:
            continue
        now = now if _reason(before) else before
    return now


class _Day:
    """One way through the entries of a day."""

    def __init__(self, morning: Standing, entries: Sequence[Noted], kit: Catalogue) -> None:
        self.morning, self.now, self.kit = morning, morning, kit
        self.entries = entries
        self.steps: list[tuple[Noted, Standing]] = []
        self.refused: dict[UUID, Misfit] = {}
        self.odd: defaultdict[UUID, list[Misfit]] = defaultdict(list)

    def replay(self, entry: Noted) -> None:
        """Take an entry in, or refuse it for what it says by itself."""
        short = more_than_there(self.now, entry, self.entries)
        if short is not None and short.blocks:
            self.refused[entry.id] = short
            return
        if short is not None:
            self.odd[entry.id].append(short)
        try:
            self.now = after(self.now, entry, self.kit)
        except NotFoundError as error:
            self.refused[entry.id] = Misfit("hive", error.what, error.remedy)
        self.steps.append((entry, self.now))

    def overfull(self) -> dict[UUID, Misfit]:
        """Name the entry from which on the stack never fitted again, where it does not fit."""
        reason = _reason(self.now)
        if reason is None:
            return {}
        before = [self.morning, *(standing for _, standing in self.steps)]
        fitted = (at for at in reversed(range(len(self.steps))) if not _reason(before[at]))
        at = next(fitted, None)
        return {} if at is None else {self.steps[at][0].id: reason}

    def worth_a_look(self) -> dict[UUID, list[Misfit]]:
        """Give what is odd, how tight the stack was left among it."""
        touched = [each for each, _ in self.steps if isinstance(each, Stack | Change)]
        if touched and self.now != self.morning:
            now = self.now
            self.odd[touched[-1].id] += misfits(now.hive, now.set_up, now.pitch_mm)
        return {key: found for key, found in self.odd.items() if found}


def _reason(now: Standing) -> Misfit | None:
    """Give the first reason for which a stack cannot stand so."""
    return next((each for each in misfits(now.hive, now.set_up) if each.blocks), None)
