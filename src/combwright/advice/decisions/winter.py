"""Winter: strength, stores and queen in autumn, and the checks while it is cold."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from combwright.advice.decision import Decision
from combwright.advice.situation import Situation, band
from combwright.simulation import observe

TARGET_KG: Final = {"hive": 20.0, "nuc": 10.0}  # 1 October: BBKA and NBU; overwintered nuc 8-12
WEAKEST: Final = 3.0  # frames of bees in September below which a colony is united: 3-4, trade
LIGHT_KG: Final = 5.0  # in winter: fondant at once
FED_BY: Final = (9, 30)  # month and day by which autumn feed should be taken


@dataclass(frozen=True)
class WinterPlan:
    """The decision, what is to be fed, and whether to unite."""

    decision: Decision
    syrup_kg: float
    fondant_kg: float
    unite: bool


def winter(situation: Situation, *, supers: int) -> WinterPlan:
    """Decide what a colony needs to come through the winter."""
    month = situation.on.month
    if month not in (8, 9, 10, 11, 12, 1, 2) or supers:
        return WinterPlan(Decision("winter"), 0.0, 0.0, unite=False)
    stores = band(observe.stores_kg(situation.colonies))
    bees = band(situation.frames_of_bees)
    target = TARGET_KG[situation.standing.hive.kind]
    inputs = {
        "stores_kg_low": stores[0],
        "stores_kg": stores[1],
        "stores_kg_high": stores[2],
        "target_kg": target,
        "light_kg": LIGHT_KG,
        "weakest_frames": WEAKEST,
        "frames_of_bees": bees[1],
    }
    if month in (8, 9, 10):
        return _autumn(situation, inputs)
    return _cold(inputs)


def _autumn(situation: Situation, inputs: dict[str, float]) -> WinterPlan:
    in_feeder = float(np.median(situation.colonies["feeder"])) / 800.0
    short = max(0.0, inputs["target_kg"] - 0.5 * (inputs["stores_kg_low"] + inputs["stores_kg"]))
    short = max(0.0, short - in_feeder)
    inputs = {**inputs, "short_kg": short}
    weak = inputs["frames_of_bees"] < WEAKEST and situation.on.month in (9, 10)
    unite = weak and situation.standing.hive.kind == "hive"
    jobs = []
    if unite:
        jobs.append("Unite it, if healthy, with a queenright neighbour through newspaper.")
    if situation.on.month == 9 and situation.on.day >= 20:
        jobs.append("Mouse guard on; strap; roof tight.")
    because = (
        (
            f"{inputs['stores_kg']:.0f} kg of stores ({inputs['stores_kg_low']:.0f} to "
            f"{inputs['stores_kg_high']:.0f}) against {inputs['target_kg']:.0f} kg wanted on "
            f"1 October: {short:.0f} kg short. {inputs['frames_of_bees']:.0f} "
            "frames of bees; under "
            f"{WEAKEST:.0f} a colony rarely winters alone."
        ),
    )
    late = (situation.on.month, situation.on.day) > FED_BY
    syrup = 0.0 if unite or late or short < 0.7 else short * 0.8 / 0.62
    fondant = short if late and not unite and short >= 2.0 else 0.0
    return WinterPlan(Decision("winter", tuple(jobs), because, inputs), syrup, fondant, unite=unite)


def _cold(inputs: dict[str, float]) -> WinterPlan:
    light = inputs["stores_kg_low"] < LIGHT_KG
    jobs = ["Heft from behind; do not open.", "Clear dead bees from the entrance."]
    because = (
        (
            f"About {inputs['stores_kg']:.0f} kg of stores ({inputs['stores_kg_low']:.0f} to "
            f"{inputs['stores_kg_high']:.0f}); under {LIGHT_KG:.0f} kg it may not reach spring."
        ),
    )
    return WinterPlan(
        Decision("winter", tuple(jobs), because, inputs), 0.0, 2.5 if light else 0.0, unite=False
    )
