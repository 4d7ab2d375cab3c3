"""How a colony is housed and fed as it is found, and whether it goes on alone."""

from dataclasses import dataclass
from typing import Final

from combwright.advice.decisions.disease import is_suspected
from combwright.advice.decisions.food import FONDANT_MOST_G, Portion, portion
from combwright.advice.decisions.queen import QueenPlan
from combwright.advice.decisions.space import Space, left_alone, space, unopened
from combwright.advice.decisions.winter import WinterPlan, winter
from combwright.advice.situation import Situation
from combwright.terms.sugar import FONDANT_SUGAR

COLD_MONTHS: Final = (11, 12, 1)  # no inspection, hefting from behind: common practice, no source
UNFED_MONTHS: Final = (10, 11, 12, 1)  # fed for winter or not at all: common practice, no source
AUTUMN_FRACTION: Final = 0.62  # thick syrup, 1 kg sugar to 0.63 L water


@dataclass(frozen=True)
class Housing:
    """Room, food and what winter asks for; a colony that goes is united with another."""

    room: Space
    food: Portion
    for_winter: WinterPlan
    goes: bool


def is_kept_shut(situation: Situation, queens: QueenPlan) -> bool:
    """Tell whether a colony is left shut: with a virgin, or with signs of disease."""
    return queens.keep_out or is_suspected(situation)


def waits_for_a_queen(situation: Situation, queens: QueenPlan) -> bool:
    """Tell whether a colony is left shut for its virgin or cell alone."""
    return queens.keep_out and not is_suspected(situation)


def housing(situation: Situation, queens: QueenPlan) -> Housing:
    """Decide whether a colony goes on alone, then its room, then the food that fits into it."""
    is_shut = is_kept_shut(situation, queens)
    for_winter = winter(situation, supers=situation.standing.set_up.supers)
    may_go = not is_shut and situation.signs_at is None
    goes = may_go and (for_winter.unite or queens.unite)
    room = _room(situation, is_shut=is_shut, goes=goes)
    return Housing(room, _food(situation, room, for_winter, goes=goes), for_winter, goes)


def _room(situation: Situation, *, is_shut: bool, goes: bool) -> Space:
    if is_shut:
        return left_alone(situation)
    if situation.signs_at is not None:
        return unopened(
            situation, "Nothing goes in or out of this yard, so frames and boards stay as they are."
        )
    if goes or situation.on.month in COLD_MONTHS:
        return unopened(situation)
    return space(situation)


def _food(situation: Situation, room: Space, for_winter: WinterPlan, *, goes: bool) -> Portion:
    set_up = room.set_up
    if goes:
        return portion(situation, set_up, fixed=(0, AUTUMN_FRACTION, "syrup"))
    if for_winter.syrup_kg > 0.0:
        grams = int(round(for_winter.syrup_kg * 1000.0, -2))
        return portion(situation, set_up, fixed=(grams, AUTUMN_FRACTION, "syrup"))
    if for_winter.fondant_kg > 0.0:
        grams = min(FONDANT_MOST_G, int(round(for_winter.fondant_kg * 1000.0, -2)))
        return portion(situation, set_up, fixed=(grams, FONDANT_SUGAR.value, "fondant"))
    if situation.on.month in UNFED_MONTHS:
        return portion(situation, set_up, fixed=(0, AUTUMN_FRACTION, "syrup"))
    return portion(situation, set_up, only_if_hungry=room.super_near)
