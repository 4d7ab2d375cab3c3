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
TAKES: Final[Mapping[type[Act], Callable[[Any], float]]] = {
    Feeding: lambda fed: MINUTES["feed"].value * (fed.grams > 0),
    Frames: lambda frames: MINUTES["frames"].value * abs(frames.more),
    Boards: lambda boards: MINUTES["boards"].value * abs(boards.more),
    StoresOut: lambda out: MINUTES["frames"].value * out.combs,
    SuperOn: lambda on: MINUTES["super"].value * on.supers,
    SuperOff: lambda off: MINUTES["super"].value * off.supers,
    Treat: lambda _: MINUTES["treatment"].value,
    Requeen: lambda _: MINUTES["queen"].value,
    CutCells: lambda _: MINUTES["cells"].value,
    Demaree: lambda _: MINUTES["demaree"].value,
}


def minutes_of(actions: Iterable[Act]) -> float:
    """Give the minutes that acts take beyond the usual look.

    Examples
    --------
    >>> minutes_of((SuperOn(), Frames(more=2)))
    6.0

    """
    return sum(TAKES[type(each)](each) for each in actions if type(each) in TAKES)


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
