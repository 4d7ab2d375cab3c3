"""Honey: take or leave, when, how much, and what must stay."""

from typing import Final

import numpy as np

from combwright.advice.actions import Action
from combwright.advice.deciding import Deciding
from combwright.advice.decision import Decision
from combwright.advice.decisions.kept_shut import nothing_moves
from combwright.advice.kit_acts import KeepHoney, ProveRipe, SuperOff
from combwright.advice.numbers import numbers
from combwright.advice.situation import HoneyWaits, Situation, band
from combwright.advice.stacking import set_up_after
from combwright.advice.words.wording import day_words, span_words
from combwright.simulation import observe
from combwright.terms.percent import in_percent
from combwright.terms.ranked import median

PARAMETERS: Final = numbers("honey")
LAST_TAKE: Final = (PARAMETERS["last_month"].value, PARAMETERS["last_day"].value)
LEAVE_KG: Final = PARAMETERS["leave_kg"].value


def decide(deciding: Deciding) -> Decision:
    """Decide whether supers come off today."""
    if nothing_moves(deciding):
        return Decision(topic="honey")
    return _honey(deciding.situation)


def after_honey(deciding: Deciding) -> Situation:
    """Give the situation without the supers that come off today."""
    situation = deciding.situation
    taken = deciding.of(decide).asks(SuperOff)
    if not taken:
        return situation
    off = sum(each.supers for each in taken)
    lighter = set_up_after(situation.standing.set_up, taken)
    return situation.after_harvest(lighter, off * full_super_kg(situation))


def _withheld(waits: HoneyWaits) -> Decision:
    """Say that honey is not to be taken yet, whatever there is of it."""
    because = (
        f"Take no honey before {day_words(waits.free)}: the withdrawal period of {waits.product} "
        "has not passed. The label and your country’s law rule."
    )
    return Decision(topic="honey", because=(because,), tells=True)


def _honey(situation: Situation) -> Decision:
    if situation.honey_waits is not None:
        return _withheld(situation.honey_waits)
    supers = situation.standing.set_up.supers
    if supers == 0:
        return Decision(topic="honey")
    colonies = situation.colonies
    above = observe.honey_above_kg(colonies)
    last = (situation.on.month, situation.on.day) >= LAST_TAKE
    full = _full_supers(situation)
    off = supers if last else min(full, supers - 1)
    in_those = band(np.minimum(above, off * full_super_kg(situation)))
    capacity = np.maximum(colonies["super_drawn"] * colonies["sugar_per_cell"], 1.0)
    ripe = colonies["super_ripe"] / capacity
    unripe = colonies["unripe"] / np.maximum(colonies["unripe"] + colonies["super_ripe"], 1.0)
    touched = float(np.mean(colonies["super_syrup"] > PARAMETERS["touched_g"].value))
    below = median(observe.stores_below_kg(colonies))
    inputs = {
        "honey_kg_low": band(above)[0],
        "honey_kg": band(above)[1],
        "honey_kg_high": band(above)[2],
        "ripe_share": median(ripe),
        "full_supers": float(full),
        "unripe_share": median(unripe),
        "stores_below_kg": below,
        "syrup_in_honey": touched,
        "leave_kg": LEAVE_KG,
        "taken_kg_low": in_those[0],
        "taken_kg": in_those[1],
        "taken_kg_high": in_those[2],
    }
    dry = inputs["unripe_share"] < PARAMETERS["unripe_most"].value
    if not (last or (off and dry)):
        because = (
            f"{span_words(*band(above), 'kg')} above, {in_percent(inputs['ripe_share'])} of the "
            "supers' comb ripe: leave it to fill and ripen."
        )
        return Decision(topic="honey", because=(because,), inputs=inputs)
    return _taking(inputs, off, last=last)


def _full_supers(situation: Situation) -> int:
    """Count the supers that are full, as bees fill one after another; a little may be lacking."""
    supers, lacking = situation.standing.set_up.supers, 1.0 - PARAMETERS["full"].value
    colonies = situation.colonies
    in_one = np.maximum(colonies["super_drawn"] * colonies["sugar_per_cell"] / supers, 1.0)
    return int(median(colonies["super_ripe"] / in_one) + lacking)


def full_super_kg(situation: Situation) -> float:
    """Honey in a full super of the colony's hive. [kg]."""
    box = situation.standing.hive.honey_super
    return box.honey_full_kg if box is not None else 0.0


def _taking(inputs: dict[str, float], off: int, *, last: bool) -> Decision:
    why = "the flow is over and mites must be treated" if last else "they are ripe and full"
    actions: list[Action] = [
        SuperOff(
            supers=off,
            why="end of the season" if last else "ripe",
            honey_kg_low=inputs["taken_kg_low"],
            honey_kg=inputs["taken_kg"],
            honey_kg_high=inputs["taken_kg_high"],
        ),
        ProveRipe(water_percent_most=PARAMETERS["water_most"].value),
    ]
    if inputs["syrup_in_honey"] > PARAMETERS["touched_chance"].value:
        actions.append(KeepHoney())
    because = (
        f"Supers come off because {why}. {inputs['stores_below_kg']:.0f} kg stay below; under "
        f"{LEAVE_KG:.0f} kg it is fed at once."
    )
    return Decision(topic="honey", actions=tuple(actions), because=(because,), inputs=inputs)
