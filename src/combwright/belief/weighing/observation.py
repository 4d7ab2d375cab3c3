"""How likely a note is, given a simulated colony: the error model of each kind of note.

A value that was not looked at is no information. Counts by eye carry a relative and an absolute
error, and with a small chance a slip (the wrong colony, the wrong line) that says next to nothing.
"""

from dataclasses import dataclass
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


@dataclass(frozen=True, slots=True)
class Eye:
    """The error of one kind of count by eye: relative, absolute, and how far a slip can reach."""

    relative: float
    absolute: float
    span: float

    def log_likelihood(self, seen: float, true: Floats) -> Floats:
        """Log-likelihood of a count, [member]; far from what is true it stays that of a slip."""
        sd = np.hypot(self.relative * true, self.absolute)
        density = np.exp(-0.5 * ((seen - true) / sd) ** 2) / (sd * np.sqrt(2.0 * np.pi))
        return np.asarray(np.log((1.0 - SLIP.value) * density + SLIP.value / self.span))

    @property
    def anything(self) -> float:
        """Log-likelihood of a count when nothing is known of the colony."""
        return float(-np.log(self.span))

    def draw(self, true: Floats, rng: np.random.Generator) -> Floats:
        """Draw what would be noted, [member]."""
        sd = np.hypot(self.relative * true, self.absolute)
        seen = true + sd * rng.standard_normal(len(true))
        slips = rng.random(len(true)) < SLIP.value
        return np.maximum(0.0, np.where(slips, rng.uniform(0.0, self.span, len(true)), seen))


EYE: Final = {
    "frames_of_bees": Eye(BEES_RELATIVE.value, BEES_ABSOLUTE.value, 14.0),
    "frames_of_brood": Eye(BROOD_RELATIVE.value, BROOD_ABSOLUTE.value, 12.0),
    "stores_kg": Eye(STORES_RELATIVE.value, STORES_ABSOLUTE.value, 40.0),
    "frames_of_stores": Eye(STORES_RELATIVE.value, 0.35, 18.0),
    "hive_weight_kg": Eye(0.0, WEIGHT_ABSOLUTE.value, 80.0),
    "syrup_left_g": Eye(0.15, LEFT_ABSOLUTE.value, 5000.0),
}


def looked_at(colonies: Any, shared: Any, *, empty_kg: float) -> dict[str, Floats]:
    """Give what the keeper would count without error of the moment, by the note's field, [member].

    The keeper's eye is in it: who counts generously does so at every visit.
    """
    stores = np.exp(shared["stores_eye"])
    covered = np.exp(shared["bees_eye"]) * observe.frames_of_bees(colonies)
    return {
        "frames_of_bees": np.minimum(covered, 2.0 * colonies["frames"] + 2.0),
        "frames_of_brood": np.exp(shared["brood_eye"]) * observe.frames_of_brood(colonies),
        "stores_kg": stores * observe.stores_kg(colonies),
        "frames_of_stores": stores * observe.frames_of_stores(colonies),
        "hive_weight_kg": observe.weight_kg(colonies, empty_kg),
        "syrup_left_g": colonies["feeder"] + colonies["feeder_water"],
    }


def of_visit(visit: Visit, colonies: Any, shared: Any, *, empty_kg: float) -> Floats:
    """Log-likelihood of all that was seen at a visit, [member]."""
    total = np.zeros(len(colonies))
    for name, true in looked_at(colonies, shared, empty_kg=empty_kg).items():
        seen = getattr(visit, name)
        if seen is not None and not (name == "frames_of_stores" and visit.stores_kg is not None):
            total += EYE[name].log_likelihood(seen, true)
    return total + _queen(visit, colonies)


def says(visit: Visit) -> bool:
    """Tell whether a visit noted anything that bears on the belief."""
    fields = (*EYE, "eggs", "queen_seen", "queen_cells")
    return any(getattr(visit, name) is not None for name in fields)


def of_anything(visit: Visit) -> float:
    """Log-likelihood of a visit's counts when nothing is known of the colony."""
    return sum(eye.anything for name, eye in EYE.items() if getattr(visit, name) is not None)


def chance_of_eggs_found(colonies: Any) -> Floats:
    """Chance that a look finds eggs: nine in ten where there are many, rarely by mistake."""
    return np.asarray(0.02 + 0.90 * np.clip(colonies["eggs"].sum(axis=1) / 300.0, 0.0, 1.0))


def cells_state(colonies: Any) -> NDArray[np.str_]:
    """Say how far each member is with queen cells, in the words of ``CELLS_SEEN``, [member]."""
    clock = np.where(colonies["queen"] == CELL, colonies["queen_clock"], colonies["swarm_clock"])
    busy = (colonies["queen"] == CELL) | (colonies["swarm_clock"] > 0.0)
    stages = [~busy, clock < 4.0, clock < 8.0]
    return np.select(stages, ["quiet", "begun", "charged"], "sealed")


def _queen(visit: Visit, colonies: Any) -> Floats:
    total = np.zeros(len(colonies))
    if visit.eggs is not None:
        found = chance_of_eggs_found(colonies)
        total += np.log(found if visit.eggs else 1.0 - found)
    if visit.queen_seen is not None:
        seen = np.where(colonies["queen"] == LAYING, 0.55, 0.03)
        seen = np.where(colonies["queen"] == VIRGIN, 0.10, seen)
        total += np.log(seen if visit.queen_seen else 1.0 - seen)
    if visit.queen_cells is not None:
        stages = cells_state(colonies)
        chance = [CELLS_SEEN[stage][visit.queen_cells] for stage in CELLS_SEEN]
        total += np.log(np.select([stages == stage for stage in CELLS_SEEN], chance, 1.0))
    return total


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
