"""How fast two hundred years of weather and forage are sampled, beside the plainest draw.

    python benchmarks/weather.py

The plain reference draws as many normal numbers as the weather has values, in one numpy call:
the least that any sampled weather costs. Prints seconds and ratios, best of five.
"""

from collections.abc import Callable
from datetime import date
from time import perf_counter

import numpy as np

from combwright.weather.climates import climate
from combwright.weather.forage import calendar, forage_index
from combwright.weather.generator import generate

YEARS, DAYS, SEED = 200, 365, 1


def seconds(work: Callable[[], object]) -> float:
    """Take the best of five."""
    took = []
    for _ in range(5):
        start = perf_counter()
        work()
        took.append(perf_counter() - start)
    return min(took)


def main() -> None:
    """Measure and print."""
    place = climate("Dublin Airport")
    weather = generate(place, date(2026, 1, 1), DAYS, YEARS, SEED)
    fields = (getattr(weather, each) for each in weather.__dataclass_fields__)
    values = sum(each.size for each in fields if isinstance(each, np.ndarray))
    rng = np.random.default_rng(SEED)
    plain = seconds(lambda: rng.standard_normal(values))
    sampled = seconds(lambda: generate(place, date(2026, 1, 1), DAYS, YEARS, SEED))
    flowers = calendar("lowland mixed farmland")
    forage = seconds(lambda: forage_index(flowers, weather, place, seed=SEED))
    print(f"{values:,} normal numbers: {plain:.3f} s")
    print(f"{YEARS} years of weather: {sampled:.3f} s, {sampled / plain:.1f} times that")
    print(f"{YEARS} years of forage: {forage:.3f} s, {forage / plain:.1f} times that")


if __name__ == "__main__":
    main()
