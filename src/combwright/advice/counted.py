"""What was counted stands above what was forecast: a colony that was seen without food is bare."""

from dataclasses import replace
from typing import Final

import numpy as np

from combwright.advice.numbers import numbers
from combwright.advice.situation import Situation, band
from combwright.simulation import observe
from combwright.simulation.columns import copied
from combwright.terms.entries import Feed, Visit
from combwright.terms.sugar import FONDANT_SUGAR, SYRUP_SUGAR

PARAMETERS: Final = numbers("counted")


def as_counted(situation: Situation) -> Situation:
    """Give the same situation with no more stores than a look lately found, where it found none.

    What was fed since is added; what bees may have gathered since is not, for a colony that was
    bare and is not fed dies of it, and one that is fed in vain has lost a little sugar.
    """
    left_kg = _left_kg(situation)
    return situation if left_kg is None else bare_to(situation, left_kg)


def seen_frames(situation: Situation) -> float:
    """Give the frames of bees that it is taken to have: no more than a look lately counted.

    A count far below all that is believed is a slip, and is not acted on. Where it is asked what
    would be done if more were found, nothing was counted.
    """
    counted = _frames_counted(situation, PARAMETERS["lately_days"].value)
    if not counted or situation.is_branch:
        return situation.bees
    least = PARAMETERS["slip_share"].value * band(situation.frames_of_bees)[0]
    return min(situation.bees, max(counted[-1], least))


def is_odd(situation: Situation) -> bool:
    """Tell whether so few bees were counted after so many that they should be counted again."""
    counted = _frames_counted(situation, PARAMETERS["before_days"].value)
    return len(counted) > 1 and counted[-1] < PARAMETERS["halved"].value * counted[-2]


def _frames_counted(situation: Situation, days: float) -> list[float]:
    """Give the frames of bees that were counted within some days, the last one last."""
    return [
        entry.frames_of_bees
        for entry in situation.history
        if isinstance(entry, Visit)
        and entry.frames_of_bees is not None
        and (situation.on - entry.on).days <= days
    ]


def bare_to(situation: Situation, left_kg: float) -> Situation:
    """Give the same situation with no more stores than so much. [kg]."""
    colonies = copied(situation.colonies)
    share = np.minimum(1.0, left_kg / np.maximum(observe.stores_kg(colonies), left_kg + 1.0))
    for column in ("ripe", "far", "super_ripe", "super_syrup", "unripe", "water"):
        colonies[column] *= share
    return replace(situation, colonies=colonies)


def _left_kg(situation: Situation) -> float | None:
    """Give what a look lately found and was fed since, where that is next to nothing. [kg]."""
    counted = [
        (entry, kilograms)
        for entry in situation.history
        if isinstance(entry, Visit) and (kilograms := _counted_kg(entry)) is not None
    ]
    if not counted:
        return None
    seen, kilograms = counted[-1]
    if (situation.on - seen.on).days > PARAMETERS["lately_days"].value:
        return None
    left = kilograms + _fed_kg(situation, seen)
    return left if left <= PARAMETERS["bare_kg"].value else None


def _counted_kg(seen: Visit) -> float | None:
    """Give the stores that a visit noted, if it did. [kg]."""
    if seen.stores_kg is not None:
        return seen.stores_kg
    frames = seen.frames_of_stores
    return None if frames is None else PARAMETERS["frame_kg"].value * frames


def _fed_kg(situation: Situation, seen: Visit) -> float:
    """Sum up what was fed at that look and since, as stores. [kg]."""
    fed = (each for each in situation.history if isinstance(each, Feed) and each.on >= seen.on)
    usual = {"syrup": SYRUP_SUGAR, "fondant": FONDANT_SUGAR.value}
    sugar_g = sum(each.grams * (each.sugar_fraction or usual[each.feed]) for each in fed)
    return sugar_g / PARAMETERS["sugar_g_per_kg"].value
