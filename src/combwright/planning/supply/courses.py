"""How donors and nucs would go on through the weeks of the plan, member by member."""

from dataclasses import dataclass, replace
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from combwright.advice.season_ahead import Account, SeasonDays, ahead_of
from combwright.advice.situation import Situation
from combwright.belief.worlds import WORLDS
from combwright.planning.supply.ready import A_WEEK
from combwright.planning.supply.supply_numbers import number
from combwright.planning.supply.wanted import Donor
from combwright.science.queens.first_egg import LAYS_BEFORE_SALE
from combwright.science.queens.mating_success import ALIVE
from combwright.simulation import observe
from combwright.simulation.ahead.roll import days_ahead, live_on, stack_table, without_the_rare
from combwright.simulation.columns import CELL, LAYING
from combwright.simulation.hands.actions import feed
from combwright.simulation.luck import luck
from combwright.simulation.run import run
from combwright.terms.streams import stream

Floats = NDArray[np.float64]
MEMBERS: Final = int(number("members"))
WEIGHED_EVERY: Final = int(number("weighed_every"))
BROOD, BEES = number("brood_per_nuc"), number("bees_per_nuc")
BELOW_KG, FED_G, FED_SHARE = (
    number("nuc_fed_below_kg"),
    number("nuc_fed_g"),
    number("nuc_fed_share"),
)
STANDARD: Final = {name: number(f"sold_{name}") for name in ("bees", "brood", "stores_kg")}


def donor_course(situation: Situation, yard: str, weeks: int) -> Donor:
    """Let a colony live on under the ordinary keeper; weigh what its first nuc costs, by week."""
    at = situation.account
    some = _some(situation)
    colonies = situation.colonies.take(some)
    conditions = at.season.conditions[at.season.of[some]]
    drawn = without_the_rare(_luck(situation, some, A_WEEK * weeks))
    now = at.standing.set_up
    stack = stack_table(at.standing.hive, now.brood_boxes, now.cover)
    brood, bees = np.empty((2, len(some), weeks))
    weighed: dict[int, tuple[float, float]] = {}
    for week in range(weeks):
        brood[:, week] = observe.frames_of_brood(colonies)
        bees[:, week] = observe.frames_of_bees(colonies)
        if week % WEIGHED_EVERY == 0:
            weighed[week] = kept_and_given_up(colonies, at, conditions[:, A_WEEK * week :], week)
        days = slice(A_WEEK * week, A_WEEK * (week + 1))
        live_on(
            colonies,
            days_ahead(conditions[:, days], drawn[:, days], colonies["world"], WORLDS),
            stack=stack,
            first_visit=1,
            worlds=WORLDS,
        )
    kept, _ = weighed[0]
    lost = np.interp(np.arange(weeks), list(weighed), [gone for _, gone in weighed.values()])
    return Donor(situation.colony, yard, brood, bees, lost, kept)


def kept_and_given_up(
    colonies: NDArray[np.void], at: Account, conditions: Floats, week: int
) -> tuple[float, float]:
    """Weigh the season as it stands, and what of its honey and bees goes with those of one nuc."""
    later = replace(
        at,
        on=at.on.fromordinal(at.on.toordinal() + A_WEEK * week),
        days=A_WEEK,
        season=SeasonDays(conditions, np.arange(len(colonies))),
    )
    without, with_it = ahead_of(colonies, [lambda _: None, _take_a_nuc], later, len(colonies))
    return without.mean, without.mean - with_it.mean


def _take_a_nuc(colonies: NDArray[np.void]) -> None:
    """Take sealed brood and nest bees in place."""
    cells = BROOD * observe.FULL_BROOD_SHARE * colonies["cells_per_frame"]
    brood = np.clip(cells / np.maximum(colonies["sealed"].sum(axis=1), 1.0), 0.0, 1.0)
    colonies["sealed"] *= (1.0 - brood)[:, None]
    colonies["mites_worker"] *= (1.0 - brood)[:, None]
    wanted = BEES * colonies["bees_per_frame"]
    bees = np.clip(wanted / np.maximum(colonies["nest"], 1.0), 0.0, number("nest_most"))
    colonies["nest"] *= 1.0 - bees
    colonies["mites"] *= 1.0 - bees


@dataclass(frozen=True)
class NucCourse:
    """A nuc that stands already: what meets the standard in each week, [member, week]."""

    colony: str
    yard: str
    laying: NDArray[np.bool_]
    laid_three_weeks: NDArray[np.bool_]
    bees: Floats
    brood: Floats
    stores_kg: Floats

    @property
    def ready(self) -> NDArray[np.bool_]:
        """Whether all that grows is there, from the first week on in which it was."""
        met = (
            self.laid_three_weeks
            & (self.bees >= STANDARD["bees"])
            & (self.brood >= STANDARD["brood"])
        )
        return np.logical_or.accumulate(met, axis=1)


def nuc_course(situation: Situation, yard: str, weeks: int) -> NucCourse:
    """Let a nuc live on, fed when it is short, under weather and luck of each member."""
    some = _some(situation)
    colonies = situation.colonies.take(some)
    season = situation.days_to_come
    conditions = season.conditions[season.of[some]]
    drawn = _luck(situation, some, A_WEEK * weeks)
    fails = _cell_fails(colonies, situation.colony)
    seen: dict[str, list[Any]] = {
        name: [] for name in ("laying", "laid_three_weeks", "bees", "brood", "stores_kg")
    }
    for week in range(weeks + 1):
        laying = (colonies["queen"] == LAYING) & ~fails
        seen["laying"].append(laying)
        seen["laid_three_weeks"].append(laying & (colonies["queen_age"] >= LAYS_BEFORE_SALE.value))
        seen["bees"].append(observe.frames_of_bees(colonies))
        seen["brood"].append(observe.frames_of_brood(colonies))
        seen["stores_kg"].append(observe.stores_kg(colonies))
        if week == weeks:
            break
        _feed_the_hungry(colonies)
        days = slice(A_WEEK * week, A_WEEK * (week + 1))
        run(colonies, conditions[:, days], drawn[:, days], worlds=WORLDS)
    return NucCourse(
        situation.colony, yard, **{name: np.column_stack(each) for name, each in seen.items()}
    )


def _cell_fails(colonies: NDArray[np.void], colony: str) -> NDArray[np.bool_]:
    """Draw the nucs whose ripe cell gives no queen alive to fly: the colony's day loses none so."""
    lost = stream(1, "cell", colony).random(len(colonies)) >= ALIVE
    return np.asarray((colonies["queen"] == CELL) & lost)


def _feed_the_hungry(colonies: NDArray[np.void]) -> None:
    hungry = np.flatnonzero(observe.stores_kg(colonies) < BELOW_KG)
    if len(hungry):
        fed = colonies.take(hungry)
        feed(fed, FED_G, FED_SHARE)
        colonies[hungry] = fed


def _some(situation: Situation) -> NDArray[np.intp]:
    return np.linspace(
        0, len(situation.colonies) - 1, min(MEMBERS, len(situation.colonies))
    ).astype(np.intp)


def _luck(situation: Situation, some: NDArray[np.intp], days: int) -> Floats:
    return luck(1, f"supply of {situation.colony}", situation.on, days, len(some))
