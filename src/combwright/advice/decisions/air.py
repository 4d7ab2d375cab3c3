"""Tray, top and entrance: set by season, warmth and strength (common practice, no source)."""

from typing import Final

from combwright.advice.numbers import is_in_months, numbers
from combwright.advice.situation import Situation
from combwright.terms.set_up import SetUp

PARAMETERS: Final = numbers("space")


def ventilated(situation: Situation, set_up: SetUp) -> SetUp:
    """Set tray, top and entrance.

    Air goes either through an open floor under a closed top, or out of a vented top over a closed
    floor; never through both.
    """
    tray, entrance = _tray_mm(situation), _entrance_mm(situation)
    hive, cover = situation.standing.hive, set_up.cover
    if hive.floor == "solid":
        tray, cover = 0, "vented" if hive.kind == "hive" else cover
    elif cover == "vented":
        cover = "crown board"
    return set_up.model_copy(update={"tray_open_mm": tray, "entrance_mm": entrance, "cover": cover})


def _tray_mm(situation: Situation) -> int:
    high, few = situation.mean_high_c, situation.bees < PARAMETERS["few_bees"].value
    if is_in_months(situation.on, PARAMETERS, "out"):
        way = "out"
    elif high >= PARAMETERS["hot_c"].value:
        way = "hot"
    elif high < PARAMETERS["cool_c"].value or few:
        way = "cool"
    else:
        way = "mild" if high < PARAMETERS["mild_c"].value else "warm"
    return int(PARAMETERS[f"{way}_mm"].value)


def _entrance_mm(situation: Situation) -> int:
    no_robbers_fly = is_in_months(situation.on, PARAMETERS, "out")
    if situation.robbed >= PARAMETERS["robbed_chance"].value and not no_robbers_fly:
        return int(PARAMETERS["guarded_mm"].value)
    ways = ("few", "some", "many")
    enough = (way for way in ways if situation.bees < PARAMETERS[f"{way}_bees"].value)
    return int(PARAMETERS[f"{next(enough, 'most')}_mm"].value)
