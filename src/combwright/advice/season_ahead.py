"""The season ahead in the keeper's money: what each candidate brings until the year is closed.

Some of the members live on under each candidate, from its work of today under a good ordinary
keeper (see ``simulation.ahead``) to 1 October, with the same weather and the same luck; what the
colony as it then stands is worth on 1 April closes the account.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date
from functools import cached_property, lru_cache
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from combwright.advice.costs import MINUTES
from combwright.advice.nuc_worth import nucs_ahead
from combwright.advice.numbers import numbers
from combwright.advice.prices import Prices
from combwright.belief.worlds import WORLDS
from combwright.kit.standing import Standing
from combwright.simulation import observe
from combwright.simulation.ahead.roll import (
    DaysAhead,
    days_ahead,
    live_on,
    stack_table,
    without_the_rare,
)
from combwright.simulation.ahead.rules import PARAMETERS as KEEPS
from combwright.simulation.ahead.visit import CAME, TREATMENTS, StackTable
from combwright.simulation.columns import CELL, LAYING
from combwright.simulation.luck import luck
from combwright.simulation.step.shapes import YEAR

Floats = NDArray[np.float64]
Effect = Callable[[Any], None]  # on colonies, in place
PARAMETERS: Final = numbers("season")
MEMBERS: Final = int(PARAMETERS["members"].value)
FIRST: Final = int(PARAMETERS["first_members"].value)
CLEAR_TIMES: Final = PARAMETERS["clear_times"].value
ENDS_MONTH: Final = int(PARAMETERS["ends_month"].value)
CLOSE_MEMBERS: Final = int(PARAMETERS["close_members"].value)
SPRING_MONTH: Final = int(PARAMETERS["spring_month"].value)
SWARM_SHARE: Final = PARAMETERS["swarm_share"].value
LEAST_GAIN: Final = PARAMETERS["least_gain"].value
SURE_TIMES: Final = PARAMETERS["sure_times"].value


def season_ends(on: date, least_days: int) -> date:
    """Give the day to which the season ahead of a day is lived through.

    Examples
    --------
    >>> season_ends(date(2027, 5, 1), 10), season_ends(date(2027, 11, 20), 10)
    (datetime.date(2027, 10, 1), datetime.date(2027, 11, 30))

    """
    closed, least = date(on.year, ENDS_MONTH, 1), date.fromordinal(on.toordinal() + least_days)
    return max(closed, least)


@dataclass(frozen=True)
class SeasonDays:
    """The days to the end of the season, [scenario, day, column], and each member's scenario."""

    conditions: Floats
    of: NDArray[np.intp]
    _known: dict[tuple[date, bytes, bytes], DaysAhead] = field(
        default_factory=dict, init=False, repr=False, compare=False
    )

    def lived_by(self, members: NDArray[np.intp], world_of: Floats, on: date) -> DaysAhead:
        """Give the days ahead of some members from a day, each in its world."""
        asked = on, members.tobytes(), world_of.tobytes()
        if asked not in self._known:
            conditions = self.conditions[self.of[members]]
            luck = season_luck(on, conditions.shape[1])[: len(members)]
            self._known[asked] = days_ahead(conditions, luck, world_of, WORLDS)
        return self._known[asked]

    def with_members(self, found: NDArray[np.intp]) -> "SeasonDays":
        """Keep some of the members."""
        return SeasonDays(self.conditions, self.of[found])


@dataclass(frozen=True)
class Done:
    """What was done of that which an ordinary keeper does once: a nuc given, a treatment."""

    nuc: float = 0.0
    treated: float = 0.0


@dataclass(frozen=True)
class Ahead:
    """What a candidate brings until the season is closed: money by member, and its parts."""

    money: Floats
    came: Mapping[str, float]

    @property
    def mean(self) -> float:
        """What it brings on average."""
        return float(self.money.mean())


@dataclass(frozen=True)
class Account:
    """Where and how a season is rolled: the colony's stack, its prices, the day.

    ``done`` is what was done lately: of a nuc, the share of its rest that a donor has before it.
    """

    on: date
    days: int
    standing: Standing
    season: SeasonDays
    prices: Prices
    swarm_loss: float = 0.0
    done: Done = Done()

    @cached_property
    def stack(self) -> StackTable:
        """How the colony's hive may stand in the season."""
        now = self.standing.set_up
        return stack_table(self.standing.hive, now.brood_boxes, now.cover)


def ahead_of(
    colonies: NDArray[np.void],
    changes: Sequence[Effect],
    at: Account,
    members: int = MEMBERS,
    *,
    costs: Sequence[float] = (),
    done: Sequence[Done] = (),
    waits: Sequence[int] = (),
    all_of: bool = False,
) -> list[Ahead]:
    """Give what each change of the members brings, before what its own work costs today.

    A few members are asked first. A candidate that is clearly behind then, its costs counted, is
    asked of no more: the others are taken to differ from the leader by as much as those few.
    ``done`` tells what each change does of that which is done once, ``waits`` in how many days the
    keeper is there again after it; with ``all_of`` every one is asked of all.
    """
    some = _spread_out(len(colonies))[:members]
    charged = np.array(costs or [0.0] * len(changes))
    each_done, each_waits = done or [Done()] * len(changes), waits or [at.days] * len(changes)
    asked = list(zip(changes, each_done, each_waits, strict=True))
    money, came = _rolled(colonies, asked, at, some, slice(0, FIRST))
    net = money - charged[:, None]
    leader = int(net.mean(axis=1).argmax())
    behind = net[leader] - net
    doubt = behind.std(axis=1) / behind.shape[1] ** 0.5
    is_near = behind.mean(axis=1) <= CLEAR_TIMES * doubt
    kept = np.flatnonzero(is_near | all_of).tolist()
    if len(some) > FIRST and len(kept) > 1:
        last = slice(FIRST, len(some))
        rest, came_rest = _rolled(colonies, [asked[i] for i in kept], at, some, last)
        place = kept.index(leader)
        more = rest[place] + (money - money[leader]).mean(axis=1)[:, None]
        more_came = came_rest[place] + (came - came[leader]).mean(axis=1)[:, None]
        more[kept], more_came[kept] = rest, came_rest
        money = np.concatenate([money, more], axis=1)
        came = np.concatenate([came, more_came], axis=1)
    return [_ahead(one, counted) for one, counted in zip(money, came, strict=True)]


def _ahead(money: Floats, came: Floats) -> Ahead:
    return Ahead(money, dict(zip(CAME, came.mean(axis=0).tolist(), strict=True)))


def _rolled(
    colonies: NDArray[np.void],
    asked: Sequence[tuple[Effect, Done, int]],
    at: Account,
    some: NDArray[np.intp],
    part: slice,
) -> tuple[Floats, Floats]:
    """Let a part of some members live on under each change: [change, member] and its counts.

    Each change comes with what it does of that which is done once, and the days to the next visit.
    """
    members = some[part]
    many = len(members)
    lanes = colonies.take(np.tile(members, len(asked)))
    lanes["super_syrup"] = np.minimum(lanes["super_syrup"], lanes["super_ripe"])
    for number, (change, _, _) in enumerate(asked):
        change(lanes[number * many : (number + 1) * many])
    rests = np.repeat([max(done.nuc, at.done.nuc) for _, done, _ in asked], many)
    treated = np.repeat([max(done.treated, at.done.treated) for _, done, _ in asked], many)
    days = at.season.conditions.shape[1]
    came = live_on(
        lanes,
        at.season.lived_by(some, colonies["world"][some], at.on).of(part),
        stack=at.stack,
        first_visit=np.repeat([wait for _, _, wait in asked], many),
        nucs=nucs_ahead(at.on, days, at.prices),
        rests=rests,
        treated=treated,
        worlds=WORLDS,
    )
    shape = (len(asked), many)
    came[:, TREATMENTS] -= treated
    money = _income(came, at) + _left(lanes, at.prices, season_ends(at.on, days))
    return money.reshape(shape), came.reshape(*shape, len(CAME))


@lru_cache(maxsize=2)
def _spread_out(members: int) -> NDArray[np.intp]:
    """Choose members from all over, in an order of which every beginning does so too."""
    many = min(CLOSE_MEMBERS, members)
    order = sorted(range(many), key=lambda place: f"{place:016b}"[::-1])
    return np.linspace(0, members - 1, many).astype(np.intp)[order]


def swarm_loss(colonies: NDArray[np.void], at: Account) -> float:
    """Give what a swarm today would cost: the season with it against the season without."""
    without, with_it = ahead_of(colonies, [lambda _: None, _swarm], at)
    return max(0.0, without.mean - with_it.mean)


def _swarm(colonies: Any) -> None:
    """Let the queen leave with her share of the bees, from sealed cells."""
    stays = 1.0 - PARAMETERS["swarm_bees"].value
    for column in ("nest", "foragers", "winter", "mites"):
        colonies[column] *= stays
    colonies["queen"] = np.where(colonies["queen"] == LAYING, CELL, colonies["queen"])
    colonies["queen_clock"] = PARAMETERS["sealed_days"].value
    colonies["swarm_clock"] = 0.0


def _income(came: Floats, at: Account) -> Floats:
    """Sum up what comes in and what is spent on the way, [lane]."""
    prices = at.prices
    worth = {
        "honey_kg": prices.honey,
        "nuc_money": 1.0,
        "sugar_kg": -prices.sugar,
        "feeds": -prices.work(MINUTES["feed"].value),
        "frames": -prices.frame_of_foundation - prices.work(MINUTES["frames"].value),
        "supers": -prices.super - prices.work(MINUTES["super"].value),
        "queens": -prices.mated_queen - prices.work(MINUTES["queen"].value),
        "treatments": -prices.treatment - prices.work(MINUTES["treatment"].value),
        "swarms": -SWARM_SHARE * at.swarm_loss,
        "queens_lost": -PARAMETERS["queen_share"].value * at.swarm_loss,
    }
    return np.asarray(came @ np.array([worth.get(name, 0.0) for name in CAME]))


def _left(lanes: Any, prices: Prices, ends: date) -> Floats:
    """Worth on 1 April of what stands at the end, less the sugar that it is short of, [lane]."""
    bees = observe.frames_of_bees(lanes)
    spring = PARAMETERS["wintered"].value * bees * (1.0 - lanes["hurt_winter"])
    from_mites, full = PARAMETERS["mites_from"].value, PARAMETERS["mites_full"].value
    infested = np.clip((observe.mites_per_bee(lanes) - from_mites) / (full - from_mites), 0.0, 1.0)
    lives = PARAMETERS["winters"].value * (1.0 - PARAMETERS["mites_most"].value * infested)
    lives *= lanes["queen"] >= LAYING
    wanted = KEEPS["winter_kg"].value + KEEPS["winter_kg_a_frame"].value * bees
    over = observe.stores_kg(lanes) - wanted
    spare = PARAMETERS["spare_sugar"].value * np.maximum(over, 0.0)
    short = PARAMETERS["short_sugar"].value * np.maximum(-over, 0.0)
    years = (lanes["queen_age"] + (date(ends.year + 1, SPRING_MONTH, 1) - ends).days) / YEAR
    lives *= 1.0 - PARAMETERS["winter_queens"].value * np.maximum(years - 1.0, 0.0)
    colony = lives * prices.colony_in_april(spring, years)
    return np.asarray(colony + prices.sugar * (spare - short) - _mites_left(lanes, prices, ends))


def _mites_left(lanes: Any, prices: Prices, ends: date) -> Floats:
    """Give what mites that are left cost: next season, or the treatment of midwinter before it."""
    costs = PARAMETERS["mite_in_april"].value * observe.mites(lanes)
    if ends.month < ENDS_MONTH or ends.month > PARAMETERS["still_to_come_to_month"].value:
        return np.asarray(costs)
    treated = prices.treatment + prices.visit + prices.work(MINUTES["treatment"].value)
    survive = 1.0 - PARAMETERS["winter_kill"].value
    return np.asarray(np.minimum(costs, treated + survive * costs))


@lru_cache(maxsize=2)
def season_luck(on: date, days: int) -> Floats:
    """Draw the luck that all candidates of all colonies share, without what is rare."""
    return without_the_rare(luck(1, "the season ahead", on, days, CLOSE_MEMBERS))
