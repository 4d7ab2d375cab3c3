"""How likely a note is, given a simulated colony: the error model of each kind of note.

A value that was not looked at is no information. Counts by eye carry a relative and an absolute
error, and with a small chance a slip (the wrong colony, the wrong line) that says next to nothing.
"""

from dataclasses import dataclass
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray
from scipy.special import gammaln

from combwright.belief.numbers import PARAMETERS, number, row
from combwright.belief.weighing.counting import counted
from combwright.simulation import observe
from combwright.simulation.columns import CELL, DRONE_LAYER, LAYING, LAYING_WORKERS, VIRGIN
from combwright.terms.entries import TrayCount, Visit, WashCount

Floats = NDArray[np.float64]


SLIP: Final = PARAMETERS["slip"]
SLIP_TO_NOTHING: Final = PARAMETERS["slip_to_nothing"]
CLUMPED: Final = PARAMETERS["clumped"]
SEEN_BY_TRAY: Final = PARAMETERS["seen_by_tray"]
RECOVERED: Final = PARAMETERS["recovered"]
FEWEST_MITES: Final = 1e-3  # expected at least, so that a mite found is never impossible

# Chance of each note on queen cells, given what the colony is doing.
CELLS_SEEN: Final = {
    stage: row(f"cells_seen_{stage}") for stage in ("quiet", "begun", "charged", "sealed")
}

# Chance of each note on what kind of brood there is, given who lays.
BROOD_SEEN: Final = {
    LAYING: row("brood_seen_laying"),
    DRONE_LAYER: row("brood_seen_drone_layer"),
    LAYING_WORKERS: row("brood_seen_laying_workers"),
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
        slip = SLIP_TO_NOTHING.value if seen == 0.0 else SLIP.value
        return np.asarray(np.log((1.0 - slip) * density + slip / self.span))

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


def _eye(name: str) -> Eye:
    return Eye(*(number(f"{name}_{part}") for part in ("relative", "absolute", "span")))


EYE: Final = {
    "frames_of_bees": _eye("bees"),
    "frames_of_brood": _eye("brood"),
    "seams_of_bees": _eye("seams"),
    "combs_with_brood": _eye("combs"),
    "stores_kg": _eye("stores"),
    "frames_of_stores": Eye(
        number("stores_relative"), number("stores_frames_absolute"), number("stores_frames_span")
    ),
    "hive_weight_kg": Eye(0.0, number("weight_absolute"), number("weight_span")),
    "syrup_left_g": _eye("left"),
}


def looked_at(colonies: Any, shared: Any, *, empty_kg: float) -> dict[str, Floats]:
    """Give what the keeper would count without error of the moment, by the note's field, [member].

    The keeper's eye is in it: who counts generously does so at every visit.
    """
    stores = np.exp(shared["stores_eye"])
    covered = np.exp(shared["bees_eye"]) * observe.frames_of_bees(colonies)
    covered = np.minimum(covered, 2.0 * colonies["frames"] + 2.0)
    filled = np.exp(shared["brood_eye"]) * observe.frames_of_brood(colonies)
    seams = np.exp(shared["seams_eye"]) * counted("seams_of_bees", covered)
    combs = np.exp(shared["combs_eye"]) * counted("combs_with_brood", filled)
    combs = np.minimum(combs, colonies["frames"])
    bees, brood = shared["bees_otherwise"] > 0.0, shared["brood_otherwise"] > 0.0
    return {
        "frames_of_bees": np.where(bees, seams, covered),
        "seams_of_bees": np.where(bees, covered, seams),
        "frames_of_brood": np.where(brood, combs, filled),
        "combs_with_brood": np.where(brood, filled, combs),
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
    fields = (*EYE, "eggs", "queen_seen", "queen_cells", "brood_kind")
    return any(getattr(visit, name) is not None for name in fields)


def of_anything(visit: Visit) -> float:
    """Log-likelihood of a visit's counts when nothing is known of the colony."""
    return sum(eye.anything for name, eye in EYE.items() if getattr(visit, name) is not None)


def chance_of_eggs_found(colonies: Any) -> Floats:
    """Chance that a look finds eggs: nine in ten where there are many, rarely by mistake."""
    eggs = colonies["eggs"].sum(axis=1)
    eggs = np.where(observe.only_drones(colonies), colonies["drone_open"][:, 0], eggs)
    many = np.clip(eggs / number("eggs_many"), 0.0, 1.0)
    return np.asarray(number("eggs_by_mistake") + number("eggs_where_many") * many)


def chance_of_queen_seen(colonies: Any) -> Floats:
    """Chance that a look finds a queen, one that lays drones too; rarely by mistake, [member]."""
    lays = np.isin(colonies["queen"], (LAYING, DRONE_LAYER))
    seen = np.where(lays, number("queen_seen_laying"), number("queen_seen_none"))
    return np.where(colonies["queen"] == VIRGIN, number("queen_seen_virgin"), seen)


def cells_state(colonies: Any) -> NDArray[np.str_]:
    """Say how far each member is with queen cells, in the words of ``CELLS_SEEN``, [member]."""
    clock = np.where(colonies["queen"] == CELL, colonies["queen_clock"], colonies["swarm_clock"])
    busy = (colonies["queen"] == CELL) | (colonies["swarm_clock"] > 0.0)
    stages = [~busy, clock < number("cells_charged_from"), clock < number("cells_sealed_from")]
    return np.select(stages, ["quiet", "begun", "charged"], "sealed")


def _queen(visit: Visit, colonies: Any) -> Floats:
    total = np.zeros(len(colonies))
    if visit.eggs is not None:
        found = chance_of_eggs_found(colonies)
        total += np.log(found if visit.eggs else 1.0 - found)
    if visit.queen_seen is not None:
        seen = chance_of_queen_seen(colonies)
        total += np.log(seen if visit.queen_seen else 1.0 - seen)
    if visit.queen_cells is not None:
        stages = cells_state(colonies)
        chance = [CELLS_SEEN[stage][visit.queen_cells] for stage in CELLS_SEEN]
        total += np.log(np.select([stages == stage for stage in CELLS_SEEN], chance, 1.0))
    if visit.brood_kind is not None:
        kind = {state: seen[visit.brood_kind] for state, seen in BROOD_SEEN.items()}
        states = [colonies["queen"] == state for state in (DRONE_LAYER, LAYING_WORKERS)]
        total += np.log(np.select(states, [kind[DRONE_LAYER], kind[LAYING_WORKERS]], kind[LAYING]))
    return total


def clumped(count: int, expected: Floats, size: float) -> Floats:
    """Log-likelihood of a count of mites: negative binomial with a mean and a size.

    References
    ----------
    Mites are clumped, so that intervals are wider than Poisson (COLOSS BEEBOOK, varroa chapter);
    the size is judgement.

    """
    mean = np.maximum(expected, FEWEST_MITES)
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
