"""Mites that are left alone or let in: where they sit, and how fast they come back."""

from datetime import date
from functools import cache

import numpy as np
from numpy.typing import NDArray

from combwright.evidence.simulated_colonies import colonies, even_days, live
from combwright.evidence.simulated_yards import SimulatedYard
from combwright.kit.catalogue import catalogue
from combwright.simulation import observe
from combwright.simulation.begin import Described
from combwright.simulation.hands.keeper import Keeping

Floats = NDArray[np.float64]
PLACE, SEED, COLONIES = "Dublin Airport", 20260725, 48
FULL_FRAME = catalogue().hive("national timber").frame.bees_full_cover
ALIVE = 1500.0  # bees from which a colony is one
HARMFUL = 1000.0  # mites in a colony: UK advice
FEW, MANY = 0.0025, 0.03  # mites on a bee
WEEK, WATCHED_WEEKS = 7, 35
UNTREATED = Keeping(treating="none")


def _steady(made: NDArray[np.void], days: int) -> None:
    """Let a summer nest live on fed, in place."""
    for now in range(days):
        live(made, even_days(1, day=170 + now, mean_c=17.0, hours=5.0, nectar=0.4))
        made["ripe"], made["pollen"] = 8000.0, 800.0


def share_on_bees() -> float:
    """Share of the mites that sit on bees in August, 24 808 bees and 1825 cm² of sealed brood."""
    made = colonies(24808.0, 12800.0)  # four cells a cm², and open brood in its usual proportion
    made["mites"], made["swarm_readiness"] = 3172.0, 0.0
    _steady(made, 24)
    return float(np.median(made["mites"] / observe.mites(made)))


def days_on_bees() -> float:
    """Days in which half of the mites that are let into a summer colony enter cells."""
    made = colonies(15000.0, 14000.0)
    made["swarm_readiness"] = 0.0
    _steady(made, 12)
    made["mites"] = 100.0
    _steady(made, 1)
    return float(np.log(0.5) / np.log(np.median(made["mites"]) / 100.0))


@cache
def by_week(
    start: date, frames: float, mites: float, weeks: int, pressure: float | None = None
) -> list[NDArray[np.void]]:
    """Let untreated colonies live near Dublin; give how they stand after each week.

    ``pressure`` is that of mites carried in at its height, by colony if not given. [mites/day]
    """
    described = Described(
        frames_of_bees=frames,
        stores_kg=10.0,
        mites=mites,
        queen_year=start.year - 1,
        has_queen=True,
    )
    yard = SimulatedYard("mites", PLACE, start, WEEK * weeks, COLONIES, SEED)
    made = yard.begin(described)
    if pressure is not None:
        made["invaders"] = pressure
    return [made.copy(), *(made.copy() for _week in yard.by_week(made, UNTREATED))]


def months_to_three_in_a_hundred(start: date, frames: float) -> float:
    """Months from 0.25 mites on a hundred bees to three, without treatment; eight at most."""
    bees = frames * FULL_FRAME
    found = by_week(start, frames, 2.0 * FEW * bees, WATCHED_WEEKS)
    on_bees = (float(np.median(observe.mites_per_bee(made))) for made in found)
    reached = (week for week, share in enumerate(on_bees) if share >= MANY)
    return next(reached, WATCHED_WEEKS) * WEEK / 30.4


def from_spring() -> float:
    """Months to three mites in a hundred bees after a treatment before spring."""
    return months_to_three_in_a_hundred(date(2026, 3, 20), 6.5)


def from_summer() -> float:
    """Months to three mites in a hundred bees after a treatment in summer."""
    return months_to_three_in_a_hundred(date(2026, 7, 20), 12.0)


def days_to_come_back() -> float:
    """Days in which a fifth of the mites has become as many as before, from 1 May."""
    found = by_week(date(2026, 5, 1), 9.0, 60.0, 20, pressure=0.0)
    mites = np.median([observe.mites(made) for made in found], axis=1)
    return float(np.interp(5.0 * mites[0], mites, WEEK * np.arange(len(mites))))


def in_november(pressure: float) -> float:
    """Mites in early November of a few at the end of July, with so many carried in a day."""
    found = by_week(date(2026, 7, 25), 12.0, 20.0, 15, pressure=pressure)
    return float(np.median(observe.mites(found[-1])))


def harmless_for_a_year() -> bool:
    """Tell whether a few mites in spring are fewer than 1000 a year later, none carried in."""
    found = by_week(date(2026, 4, 1), 7.0, 20.0, 52, pressure=0.0)
    return float(np.median(observe.mites(found[-1]))) < HARMFUL


def lost_in_winter(number: int) -> float:
    """Share lost in one winter of untreated colonies that began with a few mites in June."""
    found = by_week(date(2026, 6, 1), 11.0, 60.0, 204)
    begins = 52 * (number - 1) + 18  # weeks until early October
    before, after = (observe.adults(found[week]) > ALIVE for week in (begins, begins + 28))
    return float(np.mean(~after[before]))


def years_until_lost() -> float:
    """Years that untreated colonies live where no mites are carried in, from a few on: median."""
    found = by_week(date(2026, 4, 1), 7.0, 20.0, 312, pressure=0.0)
    alive = np.array([observe.adults(made) > ALIVE for made in found])
    weeks = np.where(alive.all(axis=0), len(found), (~alive).argmax(axis=0))
    return float(np.median(weeks)) * WEEK / 365.0
