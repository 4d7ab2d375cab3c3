"""Amounts that a stack can hardly hold or a feeder hardly give: a slip, or another unit."""

from collections.abc import Iterator
from typing import Final

from combwright.kit.catalogue import Catalogue
from combwright.kit.fits import frames_that_fit
from combwright.kit.items import Feeder
from combwright.kit.standing import Standing
from combwright.records.problems import Problem, odd
from combwright.records.replay.stacks import StackDay
from combwright.science.syrup.strength import density_kg_per_l
from combwright.terms.entries import Feed, Harvest, Noted, Visit
from combwright.terms.sugar import SYRUP_SUGAR

CORRECT: Final = "Correct the number, or note the boxes and supers that were there."
ROOMY: Final = 1.3  # times what the catalogue counts, combs built deep hold as much; judgement
LEAST_FED_G: Final = 50.0  # under it kilograms or litres were written for grams; judgement


def odd_amounts(each: Noted, day: StackDay, kit: Catalogue) -> Iterator[Problem]:
    """Go through the amounts of an entry, given how the stacks stood on its day."""
    match each:
        case Visit() if each.colony in day.after:
            yield from in_the_hive(each, fuller(day, each.colony))
        case Harvest() if each.colony in day.after:
            yield from taken(each, fuller(day, each.colony))
        case Feed():
            yield from fed(each, kit)


def fuller(day: StackDay, colony: str) -> Standing:
    """Give the larger stack of the two between which a day's work lies."""
    return max((day.before[colony], day.after[colony]), key=places)


def places(stack: Standing) -> int:
    """Count the combs that a stack has room for."""
    boxes = frames_that_fit(stack.hive, brood_boxes=stack.set_up.brood_boxes)
    return boxes + stack.set_up.supers * stack.hive.super_frames


def in_the_hive(each: Visit, stack: Standing) -> Iterator[Problem]:
    """Find more bees or food than there is comb for, and a hive lighter than its wood."""
    most, stood = places(stack), f"“{stack.hive.key}”{_with_supers(stack)}"
    for count, what in (
        (each.frames_of_bees, "frames of bees"),
        (each.frames_of_stores, "frames of stores"),
    ):
        if (count or 0) > most:
            held = f"which has room for {most} combs"
            yield odd(each, f"{count:g} {what} in {stood}, {held}.", CORRECT)
    boxes = stack.set_up.brood_boxes + stack.set_up.supers
    if (each.seams_of_bees or 0) > most + boxes:
        gaps = f"which has {most + boxes} gaps beside its combs"
        yield odd(each, f"{each.seams_of_bees:g} seams of bees in {stood}, {gaps}.", CORRECT)
    full_kg = most_stores_kg(stack)
    if (each.stores_kg or 0) > full_kg:
        held = f"whose combs hold {full_kg:.0f} kg when all are full"
        yield odd(each, f"{each.stores_kg:g} kg of stores in {stood}, {held}.", CORRECT)
    if each.hive_weight_kg is not None and each.hive_weight_kg < stack.empty_kg:
        empty = f"which weighs about {stack.empty_kg:.0f} kg without bees and food"
        yield odd(each, f"{each.hive_weight_kg:g} kg for {stood}, {empty}.", CORRECT)


def most_stores_kg(stack: Standing) -> float:
    """Weigh what all combs of a stack would hold if there were nothing but food in them. [kg]."""
    brood_combs = frames_that_fit(stack.hive, brood_boxes=stack.set_up.brood_boxes)
    brood_kg = ROOMY * brood_combs * stack.hive.frame.stores_full_kg
    return brood_kg + most_honey_kg(stack)


def most_honey_kg(stack: Standing) -> float:
    """Weigh the honey that the supers of a stack can hold. [kg]."""
    supers = stack.hive.honey_super
    return ROOMY * stack.set_up.supers * supers.honey_full_kg if supers else 0.0


def taken(each: Harvest, stack: Standing) -> Iterator[Problem]:
    """Find more honey taken than the supers that were on could hold."""
    full_kg = most_honey_kg(stack)
    if stack.set_up.supers and each.honey_kg > full_kg:
        held = f"of which {stack.set_up.supers} held {full_kg:.0f} kg at most"
        what = f"{each.honey_kg:g} kg of honey out of supers, {held}."
        yield odd(each, what, "Correct the amount, or note the supers that were on.")


def fed(each: Feed, kit: Catalogue) -> Iterator[Problem]:
    """Find feeds that no feeder holds, and feeds too small to be grams."""
    litres = max(feeder.capacity_l for feeder in kit.all_of(Feeder))
    most_g = 1000.0 * litres * float(density_kg_per_l(SYRUP_SUGAR))
    what = f"{each.grams:,.0f} g of {each.feed} in one feed"
    if each.grams > most_g:
        held = f"the largest feeder of the catalogue holds {litres:g} L"
        yield odd(each, f"{what}; {held}.", "Check the amount and its unit.")
    elif each.grams < LEAST_FED_G:
        yield odd(each, f"{what}.", "It is counted in grams: 2 kg are written 2000.")


def _with_supers(stack: Standing) -> str:
    count = stack.set_up.supers
    if not count:
        return ""
    return f" with {count} {'super' if count == 1 else 'supers'}"
