"""What things at a colony are worth by week of the year, from the season ahead.

A usual colony lives from March on under the ordinary keeper. In each week the same members go on
with a little more of one thing; what that brings until the account is closed is its worth then.
"""

from collections.abc import Mapping
from dataclasses import replace
from datetime import date, timedelta
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from combwright.advice.nuc_worth import nucs_ahead
from combwright.advice.numbers import numbers
from combwright.advice.prices import Prices
from combwright.advice.season_ahead import (
    Account,
    Done,
    Effect,
    SeasonDays,
    ahead_of,
    season_luck,
    swarm_loss,
)
from combwright.belief.worlds import WORLDS
from combwright.kit.standing import Standing
from combwright.simulation import observe
from combwright.simulation.ahead.roll import EVERY_DAYS, days_ahead, live_on, stack_table
from combwright.simulation.ahead.visit import TREATMENTS
from combwright.simulation.columns import copied
from combwright.simulation.observe import SUGAR_IN_HONEY
from combwright.simulation.step.shapes import YEAR

Floats = NDArray[np.float64]
PARAMETERS: Final = numbers("worth_by_week")
LEAST_DAYS: Final = int(PARAMETERS["least_days"].value)


def worth_by_week(
    colonies: NDArray[np.void], first: date, season: Floats, standing: Standing, prices: Prices
) -> tuple[list[date], dict[str, Floats]]:
    """Give the weeks from a first day to the end of the season, and what each thing is worth then.

    ``season`` is the weather from the first day on, [scenario, day, column], a scenario for each
    member.
    """
    days = range(0, season.shape[1] - LEAST_DAYS, EVERY_DAYS)
    more = more_of(standing)
    found = []
    for day in days:
        living, done = _lived(colonies, first, season[:, :day], standing, prices)
        of = np.arange(len(living)) % len(season)
        at = Account(
            first + timedelta(days=day),
            EVERY_DAYS,
            standing,
            SeasonDays(season[:, day:], of),
            prices,
            done=done,
        )
        at = replace(at, swarm_loss=swarm_loss(living, at))
        without, *each = ahead_of(living, [_nothing, *more.values()], at, len(living), all_of=True)
        found.append([with_it.mean - without.mean for with_it in each])
    curves = dict(zip(more, np.array(found).T, strict=True))
    return [first + timedelta(days=day) for day in days], curves


def _lived(
    colonies: NDArray[np.void], first: date, season: Floats, standing: Standing, prices: Prices
) -> tuple[NDArray[np.void], Done]:
    """Give the colonies as the ordinary keeper has kept them through some days."""
    living, days = copied(colonies), season.shape[1]
    if not days:
        return living, Done()
    came = live_on(
        living,
        days_ahead(season, season_luck(first, days)[: len(living)], living["world"], WORLDS),
        stack=stack_table(standing.hive, 1, standing.set_up.cover),
        first_visit=EVERY_DAYS,
        nucs=nucs_ahead(first, days, prices),
        worlds=WORLDS,
    )
    return living, Done(treated=float(came[:, TREATMENTS].mean() > 0.5))


def more_of(standing: Standing) -> Mapping[str, Effect]:
    """Give what there is a little more of, each as a change of a colony."""
    above = standing.hive.honey_super
    cells = above.frames * above.frame.worker_cells if above is not None else 0

    def frame_of_bees(colonies: Any) -> None:
        more = 1.0 + colonies["bees_per_frame"] / np.maximum(observe.adults(colonies), 1.0)
        for column in ("nest", "foragers", "winter"):
            colonies[column] *= more

    def stores(colonies: Any) -> None:
        colonies["ripe"] += PARAMETERS["stores_g"].value * SUGAR_IN_HONEY

    def fewer_mites(colonies: Any) -> None:
        had = np.maximum(observe.mites(colonies), 1.0)
        left = np.maximum(1.0 - PARAMETERS["mites"].value / had, 0.0)
        colonies["mites"] *= left
        for column in ("mites_worker", "mites_drone"):
            colonies[column] *= left[:, None]

    def one_super(colonies: Any) -> None:
        colonies["super_drawn"] += cells
        colonies["supers"] += 1.0
        colonies["excluder"] = 1.0

    def younger_queen(colonies: Any) -> None:
        colonies["queen_age"] = np.maximum(colonies["queen_age"] - YEAR, 0.0)

    return {
        "a frame of bees": frame_of_bees,
        "a kilogram of stores": stores,
        "a hundred mites fewer": fewer_mites,
        "a super today": one_super,
        "a queen a year younger": younger_queen,
    }


def _nothing(_: Any) -> None:
    """Change nothing."""
