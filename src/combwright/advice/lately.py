"""What was done of that which a keeper does once: by actions today, or by the book lately."""

from collections.abc import Iterable
from datetime import date
from typing import Final

from combwright.advice.actions import Action, of_kind
from combwright.advice.bee_acts import Give
from combwright.advice.kit_acts import Treat
from combwright.advice.numbers import is_in_months, numbers
from combwright.advice.season_ahead import Done
from combwright.terms.entries import Noted, Split, Treatment

MITES: Final = numbers("mites")
NUCS: Final = numbers("nucs")
SEASON: Final = numbers("season")


def nucs_of(actions: Iterable[Action]) -> float:
    """Give how much of a nuc is given away by actions; no more than one at a time.

    Examples
    --------
    >>> nucs_of([Give(frames_of_brood=1)])
    0.5

    """
    frames = sum(each.frames_of_brood for each in of_kind(tuple(actions), Give))
    return min(1.0, frames / NUCS["frames_of_a_nuc"].value)


def done_by(actions: Iterable[Action], on: date) -> Done:
    """Tell what is done by actions today; a treatment before late summer is not that of the year.

    Examples
    --------
    >>> done_by([Treat(substance="thymol", way="gel")], date(2027, 8, 12))
    Done(nuc=0.0, treated=1.0)

    """
    actions = tuple(actions)
    return Done(nucs_of(actions), float(bool(of_kind(actions, Treat)) and is_late(on)))


def done_lately(history: Iterable[Noted], on: date) -> Done:
    """Tell what the book says of it; of a nuc, the share of its rest that a donor has before it."""
    history = tuple(history)
    since = [(on - each.on).days for each in history if isinstance(each, Split)]
    rests = [1.0 - days / NUCS["recovers_in"].value for days in since]
    treated = [
        each.on.year == on.year and is_late(each.on)
        for each in history
        if isinstance(each, Treatment)
    ]
    return Done(max([0.0, *rests]), float(any(treated)))


def had_this_winter(history: Iterable[Noted], on: date) -> frozenset[str]:
    """Give the substances that the bees of this winter had; none outside it."""
    if not is_in_months(on, MITES, "winter_bees"):
        return frozenset()
    first = int(MITES["winter_bees_from_month"].value)
    begins = date(on.year - (on.month < first), first, 1)
    treatments = (each for each in history if isinstance(each, Treatment))
    return frozenset(each.substance for each in treatments if begins <= each.on <= on)


def is_late(on: date) -> bool:
    """Tell whether a treatment on a day is that of late summer, or after it."""
    return on.timetuple().tm_yday >= SEASON["treated_from"].value
