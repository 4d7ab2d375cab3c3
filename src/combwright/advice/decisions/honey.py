"""Honey: take or leave, when, how much, and what must stay."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from combwright.advice.decision import Decision
from combwright.advice.situation import Situation, band
from combwright.advice.words.wording import many
from combwright.simulation import observe

FULL: Final = 0.75  # share of the supers' comb that is ripe from which taking is worth it
LAST_TAKE: Final = (8, 5)  # month and day from which all supers come off for the treatment
TOUCHED_G: Final = 20.0  # fed sugar in supers from which honey counts as touched; judgement
TAKEN: Final = 0.93  # share that comes out of the comb; judgement
LEAVE_KG: Final = 9.0  # stores never to go below in the season: NBU 2011, four to five combs


@dataclass(frozen=True)
class HoneyPlan:
    """The decision, and what is taken."""

    decision: Decision
    honey_kg: float
    supers_off: int


def honey(situation: Situation) -> HoneyPlan:
    """Decide whether supers come off today."""
    supers = situation.standing.set_up.supers
    if supers == 0:
        return HoneyPlan(Decision("honey"), 0.0, 0)
    colonies = situation.colonies
    above = observe.honey_above_kg(colonies)
    last = (situation.on.month, situation.on.day) >= LAST_TAKE
    off = supers if last else supers - 1
    in_those = band(np.minimum(above, off * full_super_kg(situation)))
    capacity = np.maximum(colonies["super_drawn"] * colonies["sugar_per_cell"], 1.0)
    ripe = colonies["super_ripe"] / capacity
    unripe = colonies["unripe"] / np.maximum(colonies["unripe"] + colonies["super_ripe"], 1.0)
    touched = float(np.mean(colonies["super_syrup"] > TOUCHED_G))
    below = float(np.median(observe.stores_below_kg(colonies)))
    inputs = {
        "honey_kg_low": band(above)[0],
        "honey_kg": band(above)[1],
        "honey_kg_high": band(above)[2],
        "ripe_share": float(np.median(ripe)),
        "unripe_share": float(np.median(unripe)),
        "stores_below_kg": below,
        "syrup_in_honey": touched,
        "leave_kg": LEAVE_KG,
        "taken_kg_low": in_those[0],
        "taken_kg": in_those[1],
        "taken_kg_high": in_those[2],
    }
    dry = inputs["unripe_share"] < 0.15
    take = last or (inputs["ripe_share"] >= FULL and dry and supers >= 2)
    if not take:
        because = (
            (
                f"{inputs['honey_kg']:.0f} kg above ({inputs['honey_kg_low']:.0f} to "
                f"{inputs['honey_kg_high']:.0f}), {inputs['ripe_share']:.0%} of the "
                "supers' comb ripe: "
                "leave it to fill and ripen."
            ),
        )
        return HoneyPlan(Decision("honey", (), because, inputs), 0.0, 0)
    return HoneyPlan(_taking(inputs, off, last=last), inputs["taken_kg"] * TAKEN, off)


def full_super_kg(situation: Situation) -> float:
    """Honey in a full super of the colony's hive. [kg]."""
    box = situation.standing.hive.honey_super
    return box.honey_full_kg if box is not None else 0.0


def _taking(inputs: dict[str, float], off: int, *, last: bool) -> Decision:
    why = "the flow is over and mites must be treated" if last else "they are ripe and full"
    jobs = [
        (
            f"Take {many(off, 'super')}, the fullest: about "
            f"{inputs['taken_kg']:.0f} kg ({inputs['taken_kg_low']:.0f} to "
            f"{inputs['taken_kg_high']:.0f}). Clearer board the evening before; two to lift."
        ),
        (
            "Test first: sealed by three quarters and nothing drips when a comb is jerked, or 20 % "
            "water at most by refractometer (heather 23 %)."
        ),
    ]
    if inputs["syrup_in_honey"] > 0.05:
        jobs.append("Fed syrup may be in it: do not sell this as honey; keep it for the bees.")
    because = (
        (
            f"Supers come off because {why}. {inputs['stores_below_kg']:.0f} kg stay below; under "
            f"{LEAVE_KG:.0f} kg it is fed at once."
        ),
    )
    return Decision("honey", tuple(jobs), because, inputs)
