"""Where a colony's future forks: a swarm or its end is a branch of the band, not a cliff in it."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.advice.situation import band
from combwright.advice.swarm_chance import calibrated
from combwright.belief.weighing.filter import QUANTITIES
from combwright.simulation import observe

SWARMS: Final = "swarms"
ENDS: Final = "dies out"
WORTH_DRAWING: Final = 0.05  # of the members: fewer lie outside the band anyhow

Members = NDArray[np.void]
Stages = Sequence[tuple[date, Members]]
Masks = NDArray[np.bool_]
Floats = NDArray[np.float64]


@dataclass(frozen=True)
class Series:
    """One quantity by day: 5, 50 and 95 % quantiles."""

    low: tuple[float, ...]
    mid: tuple[float, ...]
    high: tuple[float, ...]


@dataclass(frozen=True)
class Fork:
    """What may come instead: its chance up to the last day, and its course from its first day."""

    what: str
    chance: float
    days: tuple[date, ...]
    series: Mapping[str, Series]


def series_of(name: str, members: Sequence[Members]) -> Series:
    """Give the band of one quantity, stage by stage."""
    of = QUANTITIES[name]
    return Series(*zip(*(band(of(each)) for each in members), strict=True))


def forked(ahead: Stages, names: Sequence[str]) -> tuple[list[Members], tuple[Fork, ...]]:
    """Part the members of each day ahead into those that go on and those that took a branch.

    Where hardly any goes on, that is what is expected and no branch: all members are given.
    """
    first = np.asarray(ahead[0][1]["swarmed"]).copy()
    left = {what: [took(members, first) for _, members in ahead] for what, took in WAYS.items()}
    left = {what: masks for what, masks in left.items() if _is_branch(masks[-1])}
    staying = [
        _staying(members, [masks[place] for masks in left.values()])
        for place, (_, members) in enumerate(ahead)
    ]
    return staying, tuple(_fork(what, ahead, masks, names) for what, masks in left.items())


def _is_branch(last: Masks) -> bool:
    return WORTH_DRAWING <= float(last.mean()) <= 1.0 - WORTH_DRAWING


def _staying(members: Members, left: Sequence[Masks]) -> Members:
    stays = ~np.any([np.zeros(len(members), dtype=bool), *left], axis=0)
    return members.compress(stays) if stays.mean() >= WORTH_DRAWING else members


def _fork(what: str, ahead: Stages, masks: Sequence[Masks], names: Sequence[str]) -> Fork:
    share = float(masks[-1].mean())
    begun = next(i for i, mask in enumerate(masks) if mask.mean() >= WORTH_DRAWING)
    taken = [members.compress(mask) for (_, members), mask in zip(ahead, masks, strict=True)][
        begun:
    ]
    return Fork(
        what,
        calibrated(share, len(masks[-1])) if what == SWARMS else share,
        tuple(day for day, _ in ahead[begun:]),
        {name: series_of(name, taken) for name in names},
    )


def _ended(members: Members, _: Floats) -> Masks:
    return np.asarray(observe.adults(members) <= 0.0)


def _swarmed(members: Members, first: Floats) -> Masks:
    return np.asarray((members["swarmed"] > first) & ~_ended(members, first))


WAYS: Final[Mapping[str, Callable[[Members, Floats], Masks]]] = {SWARMS: _swarmed, ENDS: _ended}
