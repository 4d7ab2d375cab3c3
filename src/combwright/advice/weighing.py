"""Candidates weighed in money: what each brings until the season is closed, less what it costs."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.advice.actions import Action
from combwright.advice.costs import cost_of, minutes_of
from combwright.advice.lately import done_by
from combwright.advice.season_ahead import (
    FIRST,
    LEAST_GAIN,
    MEMBERS,
    SURE_TIMES,
    Ahead,
    Done,
    Effect,
    ahead_of,
)
from combwright.advice.situation import Situation
from combwright.simulation.ahead.visit import CAME

NOTHING_ASKED: Final = Ahead(np.zeros(1), dict.fromkeys(CAME, 0.0))


@dataclass(frozen=True)
class Weighed:
    """One candidate: the season under it, and what its own work costs today.

    What it brings besides, that no season tells, is taken from the cost.
    """

    ahead: Ahead
    cost: float
    minutes: float

    @property
    def money(self) -> float:
        """What it brings, all in all."""
        return self.ahead.mean - self.cost


@dataclass(frozen=True)
class Gain:
    """By how much a candidate is worth more than another, how surely, and what is honey of it."""

    money: float
    doubt: float
    honey_kg: float = 0.0
    minutes: float = 0.0

    @property
    def is_worth_it(self) -> bool:
        """Whether it beats doing nothing: a near-tie goes to that, in every decision."""
        return self.is_worth(1)

    def is_worth(self, trifles: int) -> bool:
        """Tell whether it is more than so many trifles, and more than the members' chance makes."""
        return self.money > max(trifles * LEAST_GAIN, SURE_TIMES * self.doubt)


def weigh(
    situation: Situation,
    changes: Sequence[Effect],
    works: Sequence[tuple[Action, ...]],
    members: int = MEMBERS,
    *,
    done: Sequence[Done] = (),
    besides: Sequence[float] = (),
) -> list[Weighed]:
    """Let the season go by under each change, and charge the work that it stands for.

    One that stands alone has nothing to be weighed against. ``done`` says what of that which is
    done once is not done again, if it is not what the work does; ``besides`` is money that is sure
    beside the season.
    """
    besides = besides or [0.0] * len(works)
    paid = [cost_of(work, situation.prices) for work in works]
    costs = [cost - more for cost, more in zip(paid, besides, strict=True)]
    if len(changes) < 2:
        brought = [NOTHING_ASKED] * len(changes)
    else:
        members = FIRST if situation.is_branch else members
        done = done or [done_by(work, situation.on) for work in works]
        brought = ahead_of(
            situation.colonies, changes, situation.account, members, costs=costs, done=done
        )
    return [
        Weighed(each, cost, minutes_of(work))
        for each, cost, work in zip(brought, costs, works, strict=True)
    ]


def gain(chosen: Weighed, other: Weighed) -> Gain:
    """Set one candidate against another."""
    honey = chosen.ahead.came["honey_kg"] - other.ahead.came["honey_kg"]
    apart = apart_by(chosen.ahead.money - other.ahead.money)
    return replace(
        apart,
        money=apart.money + other.cost - chosen.cost,
        honey_kg=honey,
        minutes=chosen.minutes - other.minutes,
    )


def apart_by(money: NDArray[np.float64]) -> Gain:
    """Give the gain that members tell, [member], each under the same luck."""
    return Gain(float(money.mean()), float(money.std()) / len(money) ** 0.5)
