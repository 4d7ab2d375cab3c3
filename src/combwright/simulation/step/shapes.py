"""Shapes that the processes of a day share: a ramp, a mixture, luck, a chain of spells."""

from typing import Any

import numpy as np

from combwright.simulation.step.compiled import inlined

YEAR = 365.0  # days


@inlined
def spread(value: float, low: float, high: float) -> float:
    """Place a value between two others, 0 to 1."""
    return min(1.0, max(0.0, (value - low) / (high - low)))


@inlined
def between(low: float, high: float, share: float) -> float:
    """Go a share of the way from one value to another."""
    return low + (high - low) * share


@inlined
def in_season(day: float, begins: float, full: float, fades: float, ends: float) -> float:
    """Tell how much of its season is on: 0 before and after, 1 at its height."""
    return spread(day, begins, full) * (1.0 - spread(day, fades, ends))


@inlined
def lucky(log_sd: float, luck: float) -> float:
    """Give a factor of mean 1 whose logarithm has this standard deviation."""
    return np.exp(log_sd * luck - 0.5 * log_sd * log_sd)


@inlined
def sum_of(parts: Any) -> float:
    """Add parts up in their order: compiled, quicker than the sum of an array."""
    total = 0.0
    for part in range(len(parts)):
        total += parts[part]
    return total


@inlined
def pass_on(spells: Any, entering: float, rate: float) -> float:
    """Let a day pass in place in a chain of equal spells; give what leaves the last."""
    last = len(spells) - 1
    leaving = spells[last] * rate
    for spell in range(last, 0, -1):
        spells[spell] += (spells[spell - 1] - spells[spell]) * rate
    spells[0] += entering - spells[0] * rate
    return leaving
