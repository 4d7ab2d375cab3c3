"""Colonies without a queen, with a cell or with a virgin: how many lay, and when."""

from datetime import date
from functools import cache

import numpy as np
from numpy.typing import NDArray

from combwright.evidence.simulated_colonies import MEMBERS, SEED, colonies, even_days, live
from combwright.evidence.simulated_yards import SimulatedYard
from combwright.simulation.columns import CELL, LAYING, VIRGIN
from combwright.simulation.hands import actions

CELLS_GIVEN = (date(2026, 5, 24), date(2026, 6, 15), date(2026, 7, 5), date(2026, 7, 25))
WATCHED_DAYS = 45
CELL_AGE = 14.0  # days of a ripe cell


@cache
def nucs_with_a_cell(given: date) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Nucs of five frames near Sheffield with a ripe cell: days of emergence and of laying."""
    made = colonies(7000.0, 8000.0, frames=5, stores_kg=4.0)
    made["queen"], made["queen_clock"] = CELL, CELL_AGE
    emerged, laying = np.full(MEMBERS, np.nan), np.full(MEMBERS, np.nan)
    for day in SimulatedYard("cells", "Sheffield", given, WATCHED_DAYS, MEMBERS, SEED).by_day(made):
        _note(emerged, made["queen"] == VIRGIN, day)
        _note(laying, made["queen"] == LAYING, day)
    return emerged, laying


def through_the_season() -> dict[str, float]:
    """Share of nucs with a cell that come to lay, by what the others were lost, and the days.

    ``in_mating`` is the share of the losses after emergence, ``days`` from then to the first egg.
    """
    seen = [nucs_with_a_cell(given) for given in CELLS_GIVEN]
    emerged, laying = (np.concatenate(days) for days in zip(*seen, strict=True))
    lost = ~np.isfinite(laying)
    return {
        "lay": float(1.0 - lost.mean()),
        "in_mating": float(np.isfinite(emerged[lost]).mean()),
        "days": float(np.nanmean(laying - emerged)),
    }


def fewer_mate_in_may() -> bool:
    """Tell whether fewer virgins of late May come to lay than of mid June: Panasiuk 2015."""
    late_may, mid_june = (np.isfinite(nucs_with_a_cell(given)[1]) for given in CELLS_GIVEN[:2])
    return float(late_may.mean()) < float(mid_june.mean())


def cast_lays_after() -> float:
    """Days from hiving a cast in June near Dublin until its queen lays: mean of those that do."""
    made = colonies(7000.0, 0.0, frames=6, stores_kg=2.0)
    made["queen"] = VIRGIN
    laying = np.full(MEMBERS, np.nan)
    yard = SimulatedYard("casts", "Dublin Airport", date(2026, 6, 10), WATCHED_DAYS, MEMBERS, SEED)
    for day in yard.by_day(made):
        _note(laying, made["queen"] == LAYING, day)
    return float(np.nanmean(laying))


def _note(when: NDArray[np.float64], now: NDArray[np.bool_], day: float) -> None:
    """Note the first day of something in place."""
    when[now & ~np.isfinite(when)] = day


def first_egg_in_fine_weather() -> float:
    """Days from emergence to the first egg when every day is fit for mating."""
    made = colonies(7000.0, 8000.0, frames=5, stores_kg=4.0)
    made["queen"] = VIRGIN
    for day in range(60):
        fine = even_days(1, day=170 + day, mean_c=20.0, hours=8.0, nectar=0.4)
        fine[0, 0, 6] = 1.0
        live(made, fine)
        if np.median(made["queen"]) == LAYING:
            return day + 1.0
    return float("nan")


def cast_when_left_alone() -> float:
    """Share of strong colonies that swarm with a virgin after their queen was taken."""
    made = colonies(25000.0, 20000.0)
    actions.change_queen(made, "removed")
    season = even_days(30, day=150, mean_c=17.0, hours=6.0, nectar=0.4)
    season[0, :, 6] = 0.3
    live(made, season)
    return float(np.mean(made["swarmed"] > 0.0))


def package_falls_for() -> float:
    """Days until a package that has just been hived has fewest bees."""
    made = colonies(12000.0, 0.0, stores_kg=5.0)
    bees = [np.median(made["nest"] + made["foragers"])]
    for day in range(60):
        live(made, even_days(1, day=120 + day, mean_c=14.0, hours=5.0, nectar=0.3))
        bees.append(np.median(made["nest"] + made["foragers"] + made["winter"]))
    return float(np.argmin(bees))
