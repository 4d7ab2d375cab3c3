"""How long the plan of nucs takes, and what it earns beside plain rules, on invented keepers.

Usage: python -m benchmarks.supply_plan [small]
"""

import resource
import sys
import time

import numpy as np
from tests.validation.supply.invented import Size, invented

from combwright.planning.supply.tightening import firm_plan

SIZES = (Size(60, 12, 100, 1000), Size(300, 20, 300, 200))


def main() -> None:
    """Measure and tell."""
    for size in SIZES[: 1 if "small" in sys.argv else 2]:
        tasks = [invented(size, 1, weather) for weather in (1, 2, 3)]
        began = time.perf_counter(), time.process_time()
        found = firm_plan(*tasks)
        wall, cpu = time.perf_counter() - began[0], time.process_time() - began[1]
        peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
        print(
            f"{size.donors} donors, {size.weeks} weeks, {size.orders} orders, {size.scenarios} "
            f"scenarios: {wall:.1f} s ({cpu:.1f} s of work), gap {found.plan.gap:.2%}, "
            f"memory {peak:.0f} MB"
        )
        for name, plan, tried in (
            ("the plan", found.plan, found.tried),
            ("plain rules", found.plain, found.plain_tried),
        ):
            kept = [tried.chance(order) for order in plan.promised]
            print(
                f"  {name}: {len(kept)} promised, kept {np.mean(kept):.3f} (worst "
                f"{min(kept):.3f}), income {tried.money.mean():.0f}"
            )
        better = np.mean(found.tried.money > found.plain_tried.money)
        print(f"  the plan earns more in {better:.0%} of the seasons")


if __name__ == "__main__":
    main()
