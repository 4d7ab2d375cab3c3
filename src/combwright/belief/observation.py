"""How likely a note is, given a simulated colony: the error model of each kind of note.

A value that was not looked at is no information. Counts by eye carry a relative and an absolute
error, and with a small chance a slip (the wrong colony, the wrong line) that says next to nothing.
"""

from typing import Any, Final

import numpy as np
from numpy.typing import NDArray
from scipy.special import gammaln

from combwright.simulation import observe
from combwright.simulation.columns import CELL, LAYING, VIRGIN
from combwright.terms.entries import TrayCount, Visit, WashCount
from combwright.terms.parameters import Parameter

Floats = NDArray[np.float64]


def _judged(value: float, unit: str, low: float, high: float, source: str) -> Parameter:
    return Parameter(value, unit, low, high, source, "judgement")


BY_EYE: Final = "counts by eye against measured areas err by one tenth to one fifth"
BEES_RELATIVE: Final = _judged(0.10, "share", 0.05, 0.25, BY_EYE)
BEES_ABSOLUTE: Final = _judged(0.35, "frames", 0.2, 1.0, "halves are noted, quarters are not")
BROOD_RELATIVE: Final = _judged(0.13, "share", 0.05, 0.3, BY_EYE)
BROOD_ABSOLUTE: Final = _judged(0.35, "frames", 0.2, 1.0, "patches are rounded to halves")
STORES_RELATIVE: Final = _judged(0.20, "share", 0.1, 0.4, "half-filled combs are hard to judge")
STORES_ABSOLUTE: Final = _judged(0.7, "kg", 0.3, 2.0, "a third of a frame")
WEIGHT_ABSOLUTE: Final = _judged(1.5, "kg", 0.3, 4.0, "spring balance, wet wood, unknown combs")
LEFT_ABSOLUTE: Final = _judged(150.0, "g", 50.0, 500.0, "a look into the feeder")
SLIP: Final = _judged(0.02, "share", 0.0, 0.1, "one note in fifty is of another colony or a slip")
CLUMPED: Final = _judged(4.0, "size", 1.0, 20.0, "mites fall and ride in clumps: negative binomial")
SEEN_BY_TRAY: Final = _judged(0.9, "share", 0.6, 1.0, "ants and grooming take some fallen mites")
RECOVERED: Final = Parameter(
    0.93, "share", 0.65, 0.98, "icing sugar 92.9 ± 5.5 %: Macedo et al. 2002", "read"
)

# Chance of each note on queen cells, given what the colony is doing; judgement.
CELLS_SEEN: Final = {
    "quiet": {"none": 0.80, "cups": 0.19, "charged": 0.007, "sealed": 0.003},
    "begun": {"none": 0.30, "cups": 0.50, "charged": 0.19, "sealed": 0.01},
    "charged": {"none": 0.05, "cups": 0.10, "charged": 0.80, "sealed": 0.05},
    "sealed": {"none": 0.05, "cups": 0.03, "charged": 0.17, "sealed": 0.75},
}


def by_eye(seen: float, true: Floats, relative: float, absolute: float, slip: float) -> Floats:
    """Log-likelihood of a count by eye; with the chance of a slip it is nearly flat.

    Parameters
    ----------
    seen
        The note.
    true
        What each member holds, [member].
    relative, absolute
        Standard deviation as a share of the truth, and in its unit.
    slip
        Chance that the note says nothing of this colony.

    Returns
    -------
    Floats
        Log-likelihood, [member].

    """
    sd = np.hypot(relative * true, absolute)
    misfit = (seen - true) / sd
    density = np.exp(-0.5 * misfit**2) / (sd * np.sqrt(2.0 * np.pi))
    broad = 1.0 / (10.0 * (absolute + relative * max(seen, 1.0)) + 10.0 * absolute)
    return np.asarray(np.log((1.0 - slip) * density + slip * 0.1 * broad))


def of_visit(visit: Visit, colonies: Any, *, empty_kg: float) -> Floats:
    """Log-likelihood of all that was seen at a visit, [member]."""
    total = np.zeros(len(colonies))
    slip = SLIP.value
    if visit.frames_of_bees is not None:
        true = np.minimum(observe.frames_of_bees(colonies), 2.0 * colonies["frames"] + 2.0)
        total += by_eye(visit.frames_of_bees, true, BEES_RELATIVE.value, BEES_ABSOLUTE.value, slip)
    if visit.frames_of_brood is not None:
        true = observe.frames_of_brood(colonies)
        total += by_eye(
            visit.frames_of_brood, true, BROOD_RELATIVE.value, BROOD_ABSOLUTE.value, slip
        )
    total += _stores(visit, colonies, empty_kg, slip)
    total += _queen(visit, colonies)
    return total


def _stores(visit: Visit, colonies: Any, empty_kg: float, slip: float) -> Floats:
    total = np.zeros(len(colonies))
    relative = STORES_RELATIVE.value
    if visit.stores_kg is not None:
        true = observe.stores_kg(colonies)
        total += by_eye(visit.stores_kg, true, relative, STORES_ABSOLUTE.value, slip)
    elif visit.frames_of_stores is not None:
        true = observe.frames_of_stores(colonies)
        total += by_eye(visit.frames_of_stores, true, relative, 0.35, slip)
    if visit.hive_weight_kg is not None:
        true = observe.weight_kg(colonies, empty_kg)
        total += by_eye(visit.hive_weight_kg, true, 0.0, WEIGHT_ABSOLUTE.value, slip)
    if visit.syrup_left_g is not None:
        true = colonies["feeder"] + colonies["feeder_water"]
        total += by_eye(visit.syrup_left_g, true, 0.15, LEFT_ABSOLUTE.value, slip)
    return total


def _queen(visit: Visit, colonies: Any) -> Floats:
    total = np.zeros(len(colonies))
    if visit.eggs is not None:
        # eggs that are there are found in nine of ten looks; a look that finds some rarely errs
        found = 0.02 + 0.90 * np.clip(colonies["eggs"].sum(axis=1) / 300.0, 0.0, 1.0)
        total += np.log(found if visit.eggs else 1.0 - found)
    if visit.queen_seen is not None:
        seen = np.where(colonies["queen"] == LAYING, 0.55, 0.03)
        seen = np.where(colonies["queen"] == VIRGIN, 0.10, seen)
        total += np.log(seen if visit.queen_seen else 1.0 - seen)
    if visit.queen_cells is not None:
        total += np.log(_cells(visit.queen_cells, colonies))
    return total


def _cells(noted: str, colonies: Any) -> Floats:
    clock = np.where(colonies["queen"] == CELL, colonies["queen_clock"], colonies["swarm_clock"])
    busy = (colonies["queen"] == CELL) | (colonies["swarm_clock"] > 0.0)
    chance = np.full(len(colonies), CELLS_SEEN["quiet"][noted])
    chance = np.where(busy & (clock < 4.0), CELLS_SEEN["begun"][noted], chance)
    chance = np.where(busy & (clock >= 4.0), CELLS_SEEN["charged"][noted], chance)
    return np.where(busy & (clock >= 8.0), CELLS_SEEN["sealed"][noted], chance)


def clumped(count: int, expected: Floats, size: float) -> Floats:
    """Log-likelihood of a count of mites: negative binomial with a mean and a size.

    References
    ----------
    Mites are clumped, so that intervals are wider than Poisson (COLOSS BEEBOOK, varroa chapter);
    the size is judgement.

    """
    mean = np.maximum(expected, 1e-3)
    constant = gammaln(count + size) - gammaln(size) - gammaln(count + 1.0)
    return np.asarray(
        constant + size * np.log(size / (size + mean)) + count * np.log(mean / (size + mean))
    )


def of_tray(tray: TrayCount, colonies: Any) -> Floats:
    """Log-likelihood of mites counted on the tray, [member]."""
    expected = SEEN_BY_TRAY.value * tray.days * colonies["fallen"]
    return clumped(tray.mites, expected, CLUMPED.value)


def of_wash(wash: WashCount, colonies: Any) -> Floats:
    """Log-likelihood of mites washed or shaken off a sample of bees, [member]."""
    expected = RECOVERED.value * wash.bees * observe.mites_per_bee(colonies)
    return clumped(wash.mites, expected, CLUMPED.value)
