"""Invented keepers with donors and orders, under sampled weather: for study and benchmark alike."""

from dataclasses import dataclass
from datetime import date, timedelta
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from combwright.planning.supply.mating import LONGEST_DAYS, Mating, MatingWeather, mating
from combwright.planning.supply.ready import A_WEEK, READY_WEEKS
from combwright.planning.supply.wanted import Donor, Money, Shelf, SupplyTask, WantedOrder
from combwright.terms.streams import stream
from combwright.weather.climates import climate
from combwright.weather.conditions import mating_chance
from combwright.weather.generator import generate

Floats = NDArray[np.float64]
ON = date(2027, 4, 24)
MEMBERS = 40


@dataclass(frozen=True)
class Size:
    """How large a keeper is, and over how many scenarios the plan is made."""

    donors: int
    weeks: int
    orders: int
    scenarios: int
    hours: float = 25.0


def invented(size: Size, keeper: int, weather: int, *, place: str = "Dublin Airport") -> SupplyTask:
    """Make a keeper's season: the same keeper under other weather has other scenarios alone."""
    rng = stream(keeper, "invented keeper")
    given = _given(place, size.weeks, size.scenarios, weather)
    until = size.weeks + READY_WEEKS
    return SupplyTask(
        weeks=size.weeks,
        until=until,
        donors=[_donor(n, size.weeks, rng) for n in range(size.donors)],
        orders=_orders(size.orders, size.weeks, rng),
        success=np.column_stack([each.success for each in given]),
        waits=np.column_stack([each.waits for each in given]),
        in_hand=np.zeros((1, until + 1)),
        cells=[0.0] * size.weeks,
        shelf=Shelf(nuc_boxes=2 * size.donors, hours=size.hours),
        money=Money(nuc=40.0, queen=35.0, mating_nuc=8.0, graft=0.5, hour=15.0, left=60.0),
    )


@lru_cache(maxsize=8)
def _given(place: str, weeks: int, scenarios: int, seed: int) -> list[Mating]:
    days = A_WEEK * weeks + LONGEST_DAYS + 1
    fit = mating_chance(generate(climate(place), ON, days, scenarios, seed))
    usual = mating_chance(generate(climate(place), ON, days, 300, 0))
    sky = MatingWeather(ON, fit, usual)
    return [mating(sky, ON + timedelta(days=A_WEEK * t)) for t in range(weeks)]


def _donor(number: int, weeks: int, rng: np.random.Generator) -> Donor:
    ahead = np.arange(weeks)
    top = rng.normal(6.5, 1.0)
    brood = np.clip(rng.normal(3.5, 0.8) + 0.5 * ahead, 0, top)
    own = rng.normal(0.0, 0.5, (MEMBERS, 1))
    bees = np.clip(rng.normal(7.0, 1.0) + 1.0 * ahead, 0, 16.0)
    lost = 10.0 + 45.0 * np.exp(-0.5 * ((ahead - 6.0) / 2.0) ** 2)
    return Donor(f"Donor {number}", "Yard", brood + own, bees + 2.0 * own, lost)


def _orders(number: int, weeks: int, rng: np.random.Generator) -> list[WantedOrder]:
    wanted, counts = rng.integers(6, weeks + 6, number), rng.integers(1, 6, number)
    prices = rng.normal(210.0, 15.0, number)
    return [
        WantedOrder(
            f"Order {n}", f"Customer {n}", "nuc", int(counts[n]), float(prices[n]), int(wanted[n])
        )
        for n in range(number)
    ]
