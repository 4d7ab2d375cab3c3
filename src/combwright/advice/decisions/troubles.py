"""Troubles that may be found at any colony, and the first thing to do; common practice."""

from collections.abc import Iterator
from datetime import date
from typing import Final

from combwright.advice.bee_acts import LeaveShut, Uniting
from combwright.advice.decisions.if_found import IfFound
from combwright.advice.kit_acts import Entrance, Feeding, StoresOut
from combwright.advice.numbers import numbers
from combwright.terms.sugar import SYRUP_SUGAR

PARAMETERS: Final = numbers("found")
NUMBERS: Final = {name: int(number.value) for name, number in PARAMETERS.items()}


def troubles(on: date) -> Iterator[IfFound]:
    """Give the troubles that a day of the year may bring."""
    day = on.timetuple().tm_yday
    if NUMBERS["drones_from"] <= day <= NUMBERS["drones_to"]:
        yield from _drones_only()
        yield _honey_bound()
        yield _starving()
    if NUMBERS["robbers_from"] <= day <= NUMBERS["robbers_to"]:
        yield _robbers()
    if day >= NUMBERS["cold_from"] or day <= NUMBERS["cold_to"]:
        yield _cold_day()


def _drones_only() -> Iterator[IfFound]:
    yield IfFound(
        code="drone brood only",
        actions=(Uniting(why="drone layer"),),
        because="A queen without sperm lays eggs that become drones.",
    )
    yield IfFound(
        code="several eggs in a cell",
        actions=(Uniting(why="laying workers"),),
        because="Workers lay, and all that they lay is drones, after weeks without queen or brood.",
    )


def _honey_bound() -> IfFound:
    return IfFound(
        code="nest full of stores",
        actions=(StoresOut(combs=NUMBERS["combs_out"]),),
        because="A queen without empty cells cannot lay, and her bees swarm.",
    )


def _starving() -> IfFound:
    grams = NUMBERS["starving_g"]
    fed = Feeding(feed="syrup", grams=grams, sugar_fraction=SYRUP_SUGAR, hand_warm=True)
    return IfFound(
        code="empty combs",
        actions=(fed,),
        because="Bees without food die within days; supers come off first.",
        portion=fed,
    )


def _robbers() -> IfFound:
    nothing = Feeding(feed="syrup", grams=0, sugar_fraction=0.0)
    return IfFound(
        code="robbers",
        actions=(Entrance(width_mm=NUMBERS["guarded_mm"]), nothing),
        because="Feed draws robbers: once they are gone, little at a time and in the evening.",
    )


def _cold_day() -> IfFound:
    return IfFound(
        code="cold day",
        actions=(LeaveShut(why="cold"),),
        because="Brood chills within minutes, and bees do not fly home.",
    )
