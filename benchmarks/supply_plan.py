"""How long the plan of nucs takes, and what it earns beside plain rules, on invented keepers.

Usage: python benchmarks/supply_plan.py [small]
"""

import resource
import sys
import time
from dataclasses import replace
from datetime import date, timedelta

import numpy as np
from numpy.typing import NDArray

from combwright.planning.supply.mating import LONGEST_DAYS, MatingWeather, mating
from combwright.planning.supply.tightening import firm_plan
from combwright.planning.supply.wanted import Donor, Money, Shelf, SupplyTask, WantedOrder
from combwright.terms.streams import stream
from combwright.weather.climates import climate
from combwright.weather.conditions import mating_chance
from combwright.weather.generator import generate

Floats = NDArray[np.float64]
ON = date(2027, 4, 24)
MEMBERS = 40
HOURS = 25.0


def invented(size: tuple[int, int, int, int], seed: int) -> SupplyTask:
    """Make a keeper with so many donors, weeks, orders and scenarios, under sampled weather."""
    donors, weeks, orders, scenarios = size
    until = weeks + 8
    rng = stream(seed, "invented keeper")
    place = climate("Dublin Airport")
    weather = generate(place, ON, 7 * weeks + LONGEST_DAYS + 1, scenarios, seed)
    fit = mating_chance(weather)
    sky = MatingWeather(ON, fit, fit)
    given = [mating(sky, ON + timedelta(days=7 * t)) for t in range(weeks)]
    return SupplyTask(
        weeks=weeks,
        until=until,
        donors=[_donor(n, weeks, rng) for n in range(donors)],
        orders=_orders(orders, weeks, rng),
        success=np.column_stack([each.success for each in given]),
        waits=np.column_stack([each.waits for each in given]),
        in_hand=np.zeros((MEMBERS, until + 1)),
        cells=[0.0] * weeks,
        shelf=Shelf(nuc_boxes=2 * donors, hours=HOURS),
        money=Money(nuc=40.0, queen=35.0, mating_nuc=8.0, graft=0.5, hour=15.0, left=60.0),
        first_graft=1,
        first_queen=4,
    )


def _donor(number: int, weeks: int, rng: np.random.Generator) -> Donor:
    ahead = np.arange(weeks)
    top = rng.normal(9.0, 1.2)
    brood = np.clip(rng.normal(5.0, 1.0) + 0.8 * ahead, 0, top)
    own = rng.normal(0.0, 0.6, (MEMBERS, 1))
    bees = np.clip(rng.normal(7.0, 1.0) + 1.0 * ahead, 0, 18.0)
    lost = 10.0 + 45.0 * np.exp(-0.5 * ((ahead - 6.0) / 2.0) ** 2)
    return Donor(f"Donor {number}", "Yard", brood + own, bees + 2.0 * own, lost)


def _orders(number: int, weeks: int, rng: np.random.Generator) -> list[WantedOrder]:
    wanted = rng.integers(6, weeks + 6, number)
    counts = rng.integers(1, 6, number)
    prices = rng.normal(210, 15, number)
    return [
        WantedOrder(
            f"Order {n}",
            f"Customer {n}",
            "nuc",
            int(counts[n]),
            float(prices[n]),
            int(wanted[n]),
        )
        for n in range(number)
    ]


def main() -> None:
    """Measure and tell."""
    sizes = [(60, 12, 100, 1000), (300, 20, 300, 200)]
    for size in sizes[: 1 if "small" in sys.argv else 2]:
        first, *others = (invented(size, seed) for seed in (1, 2, 3))
        # the same keeper, under other weather
        fresh, last = (replace(first, success=one.success, waits=one.waits) for one in others)
        began = time.perf_counter()
        found = firm_plan(first, fresh, last)
        took = time.perf_counter() - began
        peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
        donors, weeks, orders, scenarios = size
        print(
            f"{donors} donors, {weeks} weeks, {orders} orders, {scenarios} scenarios: "
            f"{took:.1f} s, gap {found.plan.gap:.2%}, memory {peak:.0f} MB"
        )
        better = np.mean(found.tried.money > found.plain_tried.money)
        for name, plan, tried in (
            ("the plan", found.plan, found.tried),
            ("plain rules", found.plain, found.plain_tried),
        ):
            kept = [tried.chance(name) for name in plan.promised]
            print(
                f"  {name}: {len(kept)} promised, kept {np.mean(kept):.3f} (worst "
                f"{min(kept):.3f}), income {tried.money.mean():.0f}"
            )
        print(f"  the plan earns more in {better:.0%} of the seasons")


if __name__ == "__main__":
    main()
