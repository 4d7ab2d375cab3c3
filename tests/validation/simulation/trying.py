"""Worlds tried: colonies of several worlds side by side, and what the targets see in each."""

from collections.abc import Iterator
from functools import cache
from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.evidence.simulated_lives import SEED, Life, live, seen
from combwright.evidence.targets import Target, targets
from combwright.simulation.biology import BIOLOGY, PARAMETERS, Biology

Floats = NDArray[np.float64]
Years = tuple[int, ...]
Cell = tuple[str, str, Years]  # climate, target and the years of a life over which it is a mean

FREE: Final = (
    *("season_rise_days", "season_fall_day", "season_fall_days", "autumn_shift", "lay_peak"),
    *("larvae_per_nurse", "winter_nurse", "bees_half", "food_half", "income_lift"),
    *("pollen_half", "without_pollen", "long_lived_load", "resting", "winter_ageing"),
    *("winter_ageing_load", "winter_aged_forage", "winter_death", "heat_wear", "nest_death"),
    *("forager_death", "forager_death_home", "heater_w", "larva_pollen", "pollen_per_hour"),
    *("pollen_foragers", "nectar_per_hour", "nectar_half", "nurse_sugar", "basal_nest"),
    "queen_loss",
)
PLACES: Final = ("Dublin Airport", "Oxford")  # a cloudy climate and a sunny one
SPELLS: Final = ((1,), (2, 3))  # the year from a described colony, those from its own winters
COLONIES: Final = 40
EACH: Final = {"colonies": COLONIES, "weathers": COLONIES}  # each in weather of its own
TOGETHER: Final = 12  # worlds side by side: more would not fit into the processor's cache
OTHERS: Final = 12  # lots of other colonies by which chance is measured
EDGE: Final = 2.0  # standard deviations from the middle of a band to its edge
LOST: Final = 9.0  # implausibility where no colony lives


def world(free: Floats) -> Biology:
    """Make a world of its free numbers."""
    return BIOLOGY._replace(**dict(zip(FREE, free.tolist(), strict=True)))


def free_of(biology: Biology) -> Floats:
    """Give the free numbers of a world."""
    return np.array([getattr(biology, name) for name in FREE])


def ends() -> tuple[Floats, Floats]:
    """Lowest and highest of each free number, as its data file says."""
    ranges = [PARAMETERS[name] for name in FREE]
    return np.array([p.low for p in ranges]), np.array([p.high for p in ranges])


def cells(*, held_out: bool) -> list[Cell]:
    """Give the targets in each climate and spell: those fitted to, or those held out."""
    return [
        (place, name, years)
        for place in PLACES
        for years in SPELLS
        for name, target in targets().items()
        if target.held_out == held_out
    ]


def cells_of(name: str) -> list[Cell]:
    """Give the cells of one target."""
    return [cell for cell in cells(held_out=targets()[name].held_out) if cell[1] == name]


def tried(free: Floats) -> dict[Cell, Floats]:
    """Let colonies live in each world and look at them, [world].

    The same colonies live in all worlds, and what luck brought these is taken off.
    """
    found: dict[Cell, list[float]] = {}
    for start in range(0, len(free), TOGETHER):
        some = tuple(world(one) for one in free[start : start + TOGETHER])
        for cell, value in _looked_at(some, SEED):
            found.setdefault(cell, []).append(value)
    return {cell: np.array(values) - lucky()[cell] for cell, values in found.items()}


def _looked_at(some: tuple[Biology, ...], seed: int) -> Iterator[tuple[Cell, float]]:
    last = max(max(years) for years in SPELLS)
    for place in PLACES:
        for life in live(place, worlds=some, years=last, seed=seed, **EACH):
            for years in SPELLS:
                for name, value in over_years(life, years).items():
                    yield (place, name, years), value


def over_years(life: Life, years: Years) -> dict[str, float]:
    """Look at a life on average over some of its years."""
    tables = [seen(life, year) for year in years]
    return {name: float(np.mean([table[name] for table in tables])) for name in targets()}


@cache
def _lots() -> dict[Cell, Floats]:
    """Let lots of other colonies live in one and the same world, [lot]."""
    found: dict[Cell, list[float]] = {}
    for lot in range(1, OTHERS + 1):
        for cell, value in _looked_at((BIOLOGY,), SEED + lot):
            found.setdefault(cell, []).append(value)
    return {cell: np.array(values) for cell, values in found.items()}


def chance() -> dict[Cell, float]:
    """How much each cell hangs on the luck of the colonies and years: a standard deviation."""
    return {cell: float(np.std(values, ddof=1)) for cell, values in _lots().items()}


@cache
def lucky() -> dict[Cell, float]:
    """How far the colonies that worlds are tried on lie above others in one and the same world."""
    here = dict(_looked_at((BIOLOGY,), SEED))
    return {cell: here[cell] - float(np.mean(values)) for cell, values in _lots().items()}


def implausible(target: Target, values: Floats, chance: float, unsure: float = 0.0) -> Floats:
    r"""How implausible worlds are by one cell, in standard deviations.

    .. math:: I = |z - f(x)| / \sqrt{\sigma_t^2 + \sigma_c^2 + \sigma_e^2}

    from the middle of the band, with what the target is unsure by, the chance of the colonies, and
    what the emulator is unsure by.

    References
    ----------
    Craig et al. 1997; Vernon, Goldstein & Bower 2010, doi 10.1214/10-BA524 (from memory).

    """
    wide = np.sqrt(tolerance(target) ** 2 + chance**2 + unsure**2)
    off = np.abs(values - (target.low + target.high) / 2.0) / wide
    return np.where(np.isfinite(values), off, LOST)


def tolerance(target: Target) -> float:
    """Give the standard deviation that a target's band stands for."""
    return (target.high - target.low) / 2.0 / EDGE
