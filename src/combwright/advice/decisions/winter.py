"""Winter: strength, stores and queen in autumn, and the checks while it is cold."""

from dataclasses import dataclass
from datetime import date, timedelta
from typing import Final

import numpy as np

from combwright.advice.actions import Action
from combwright.advice.bee_acts import ClearEntrance, Heft, Look, MakeFast, Uniting
from combwright.advice.counted import is_odd, seen_frames
from combwright.advice.deciding import Deciding
from combwright.advice.decision import Decision
from combwright.advice.decisions.honey import after_honey
from combwright.advice.decisions.reserve import reserve_kg
from combwright.advice.numbers import is_between, is_in_months, numbers
from combwright.advice.situation import Situation, band
from combwright.advice.words.wording import many
from combwright.simulation import observe
from combwright.simulation.ahead.rules import PARAMETERS as KEEPS
from combwright.terms.ranked import median

PARAMETERS: Final = numbers("winter")
LOOK: Final = numbers("look")
TARGET_KG: Final = {kind: PARAMETERS[f"target_{kind}_kg"].value for kind in ("hive", "nuc")}
AUTUMN: Final = tuple(int(PARAMETERS[f"autumn_{end}_month"].value) for end in ("from", "to"))
SUGAR_IN_HONEY: Final = PARAMETERS["sugar_in_honey"].value
AUTUMN_FRACTION: Final = numbers("food")["autumn_fraction"].value
GUARD_ON: Final = (PARAMETERS["guard_month"].value, PARAMETERS["guard_day"].value)
WEAKEST: Final = PARAMETERS["weakest"].value
LIGHT_KG: Final = PARAMETERS["light_kg"].value
STOCKED: Final = tuple(PARAMETERS[f"stocked_{end}"].value for end in ("from", "by"))
FED_BY: Final = (PARAMETERS["fed_by_month"].value, PARAMETERS["fed_by_day"].value)


@dataclass(frozen=True, kw_only=True)
class Winter(Decision):
    """The decision, and what is to be fed in all; early, it is some of what winter asks for."""

    syrup_kg: float = 0.0
    fondant_kg: float = 0.0
    is_early: bool = False


def decide(deciding: Deciding) -> Winter:
    """Decide what a colony needs to come through the winter."""
    situation = deciding.of(after_honey)
    month, share = situation.on.month, stocked_share(situation.on)
    is_summer = is_between(month, int(PARAMETERS["cold_to_month"].value) + 1, AUTUMN[0] - 1)
    if situation.standing.set_up.supers or (is_summer and share == 0.0):
        return Winter(topic="winter")
    stores = band(observe.stores_kg(situation.colonies))
    bees = band(situation.frames_of_bees)
    target = target_kg(situation)
    inputs = {
        "stores_kg_low": stores[0],
        "stores_kg": stores[1],
        "stores_kg_high": stores[2],
        "target_kg": target,
        "light_kg": LIGHT_KG,
        "weakest_frames": WEAKEST,
        "frames_of_bees": bees[1],
    }
    if is_summer or is_between(month, *AUTUMN):
        return _autumn(situation, inputs, share)
    return _cold(inputs)


def target_kg(situation: Situation) -> float:
    """Give the stores wanted on 1 October: those of a full colony, less for fewer bees. [kg]."""
    by_bees = KEEPS["winter_kg"].value + KEEPS["winter_kg_a_frame"].value * situation.bees
    return min(TARGET_KG[situation.standing.hive.kind], by_bees)


def still_supered(situation: Situation) -> tuple[str, ...]:
    """Ask after supers that by the book are on in the cold (common practice, no source)."""
    now = situation.standing.set_up
    if not now.supers or not is_in_months(situation.on, LOOK, "cold"):
        return ()
    still = "is" if now.supers == 1 else "are"
    asked = f"By the book {many(now.supers, 'super')} {still} still on: note it if that is not so."
    if not now.excluder:
        return (asked,)
    below = "bees that go up for food in the cold leave their queen below."
    return (f"{asked} If it is, take the excluder out on the next mild day: {below}",)


def stocked_share(on: date) -> float:
    """Give the share of the stores for winter, beyond the reserve, that is wanted by a day.

    Examples
    --------
    >>> [stocked_share(date(2027, *day)) for day in ((7, 10), (8, 2), (9, 10))]
    [0.0, 0.5, 1.0]

    """
    first, last = STOCKED
    return float(np.clip((on.timetuple().tm_yday - first) / (last - first), 0.0, 1.0))


def _autumn(situation: Situation, inputs: dict[str, float], share: float) -> Winter:
    least, target = reserve_kg(situation), inputs["target_kg"]
    due = least + share * (target - least)
    in_feeder = median(situation.colonies["feeder"]) / PARAMETERS["sugar_g_per_kg"].value
    has = 0.5 * (inputs["stores_kg_low"] + inputs["stores_kg"]) + in_feeder
    short = max(0.0, due - has)
    inputs = {**inputs, "due_kg": due, "short_kg": short}
    weak = seen_frames(situation) < WEAKEST and situation.standing.hive.kind == "hive"
    may_unite = is_between(situation.on.month, int(PARAMETERS["unite_from_month"].value), AUTUMN[1])
    unite = weak and may_unite
    actions: list[Action] = [_united_or_counted(situation)] if unite else []
    if situation.on.month == GUARD_ON[0] and situation.on.day >= GUARD_ON[1]:
        actions.append(MakeFast())
    by_now = f", {due:.0f} kg of them by now" if share < 1.0 else ""
    because = (
        f"{inputs['stores_kg']:.0f} kg of stores ({inputs['stores_kg_low']:.0f} to "
        f"{inputs['stores_kg_high']:.0f}) against {inputs['target_kg']:.0f} kg wanted on "
        f"1 October by so many bees{by_now}: {short:.0f} kg short. "
        f"{inputs['frames_of_bees']:.0f} frames of bees; under {WEAKEST:.0f} a colony rarely "
        "winters alone."
    )
    late = (situation.on.month, situation.on.day) > FED_BY and (
        situation.mean_high_c < PARAMETERS["ripens_from_c"].value
    )
    # what is to be united later is not fed for a winter alone; what cannot be united now is
    is_short = short >= PARAMETERS[f"{'fondant' if late else 'short'}_least_kg"].value and (
        may_unite or not weak
    )
    syrup = short * SUGAR_IN_HONEY / AUTUMN_FRACTION if is_short and not late else 0.0
    fondant = short if is_short and late else 0.0
    return Winter(
        topic="winter",
        actions=tuple(actions),
        because=(because,),
        inputs=inputs,
        syrup_kg=syrup,
        fondant_kg=fondant,
        is_early=share < 1.0,
    )


def _united_or_counted(situation: Situation) -> Action:
    """Unite a weak colony; one that had twice the bees lately is counted again before."""
    if not is_odd(situation):
        return Uniting(why="weak")
    again = situation.on + timedelta(days=PARAMETERS["count_again_days"].value)
    return Look(at="bees", on=again)


def _cold(inputs: dict[str, float]) -> Winter:
    """Give a light colony what it lacks, in fondant, a pack at least."""
    lacking = LIGHT_KG - inputs["stores_kg_low"]
    pack = (PARAMETERS["fondant_pack_kg"].value, PARAMETERS["fondant_kg"].value)
    because = (
        f"About {inputs['stores_kg']:.0f} kg of stores ({inputs['stores_kg_low']:.0f} to "
        f"{inputs['stores_kg_high']:.0f}); under {LIGHT_KG:.0f} kg it may not reach spring."
    )
    return Winter(
        topic="winter",
        actions=(Heft(), ClearEntrance()),
        because=(because,),
        inputs=inputs,
        fondant_kg=float(np.clip(lacking, *pack)) if lacking > 0.0 else 0.0,
    )
