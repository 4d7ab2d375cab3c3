"""What acts cost today: what is used up, and the minutes that they take."""

from collections.abc import Callable, Iterable, Mapping
from typing import Any, Final

from combwright.advice.bee_acts import CutCells, Demaree, Requeen
from combwright.advice.kit_acts import (
    Act,
    Boards,
    Feeding,
    Frames,
    StoresOut,
    SuperOff,
    SuperOn,
    Treat,
)
from combwright.advice.numbers import numbers
from combwright.advice.prices import Prices

MINUTES: Final = numbers("minutes")
GRAMS: Final = 1000
COSTS: Final[Mapping[type[Act], Callable[[Any, Prices], float]]] = {
    Feeding: lambda fed, prices: prices.sugar * fed.grams * fed.sugar_fraction / GRAMS,
    Frames: lambda frames, prices: prices.frame_of_foundation * max(0, frames.more),
    SuperOn: lambda on, prices: prices.super * on.supers,
    Treat: lambda _, prices: prices.treatment,
    Requeen: lambda _, prices: prices.mated_queen,
    Demaree: lambda _, prices: prices.super,
}
USUAL: Final[Mapping[str, float]] = {name: each.value for name, each in MINUTES.items()}
# the task that an act is, and how often it is done
TAKES: Final[Mapping[type[Act], tuple[str, Callable[[Any], float]]]] = {
    Feeding: ("feed", lambda fed: fed.grams > 0),
    Frames: ("frames", lambda frames: abs(frames.more)),
    Boards: ("boards", lambda boards: abs(boards.more)),
    StoresOut: ("frames", lambda out: out.combs),
    SuperOn: ("super", lambda on: on.supers),
    SuperOff: ("super", lambda off: off.supers),
    Treat: ("treatment", lambda _: 1),
    Requeen: ("queen", lambda _: 1),
    CutCells: ("cells", lambda _: 1),
    Demaree: ("demaree", lambda _: 1),
}


def minutes_of(actions: Iterable[Act], minutes: Mapping[str, float] = USUAL) -> float:
    """Give the minutes that acts take beyond the look; ``minutes`` by task, the usual ones or own.

    Examples
    --------
    >>> minutes_of((SuperOn(), Frames(more=2)))
    6.0

    """
    tasks = ((each, *TAKES[type(each)]) for each in actions if type(each) in TAKES)
    return sum(minutes[task] * times(each) for each, task, times in tasks)


def cost_of(actions: Iterable[Act], prices: Prices) -> float:
    """Give what acts cost: what they use up, and the keeper's time.

    Examples
    --------
    >>> cost_of((SuperOn(),), Prices())
    4.0

    """
    acts = tuple(actions)
    used = sum(COSTS[type(each)](each, prices) for each in acts if type(each) in COSTS)
    return used + prices.work(minutes_of(acts))
