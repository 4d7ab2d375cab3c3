"""What a decision asks for: typed actions with their amounts, never words.

A plan, a candidate that is tried and a branch are all tuples of these, so that a person, a program
or a simulated keeper can carry any of them out. Words are made from them in ``advice.words`` alone.
"""

from collections.abc import Iterable
from datetime import date
from functools import reduce
from operator import or_
from typing import TYPE_CHECKING, Annotated, Final, TypeVar

from pydantic import Field

from combwright.advice import bee_acts, kit_acts  # noqa: F401  (they declare the acts)
from combwright.advice.kit_acts import Act

if TYPE_CHECKING:
    Action = Act
else:
    # all that are declared in kit_acts and bee_acts, in that order
    Action = Annotated[reduce(or_, Act.__subclasses__()), Field(discriminator="do")]
A = TypeVar("A", bound=Act)
DATES: Final = ("on", "by", "again_by")


def of_kind(actions: Iterable[Action], kind: type[A]) -> tuple[A, ...]:
    """Give the actions of one kind, in their order.

    Examples
    --------
    >>> of_kind((bee_acts.Heft(), kit_acts.Frames(more=2)), kit_acts.Frames)[0].more
    2

    """
    return tuple(each for each in actions if isinstance(each, kind))


def days_asked_for(actions: Iterable[Action]) -> list[date]:
    """Give the days on or by which actions ask to be at the hive.

    Examples
    --------
    >>> days_asked_for((bee_acts.Look(at="eggs", on=date(2027, 5, 20)), bee_acts.Heft()))
    [datetime.date(2027, 5, 20)]

    """
    named = (getattr(each, name, None) for each in actions for name in DATES)
    return [day for day in named if day is not None]
