"""Numbers that the bees, the stack or the box do not allow."""

from collections.abc import Iterator

from combwright.kit.catalogue import Catalogue
from combwright.kit.fits import frames_that_fit
from combwright.records.problems import Problem, odd, wrong
from combwright.records.replay.odd_amounts import odd_amounts
from combwright.records.replay.stacks import StackDay
from combwright.terms.entries import Change, Colony, Noted, Split, Visit, WashCount
from combwright.terms.errors import NotFoundError

CHECK_BOTH = "Check both numbers."
CORRECT_ONE = "Correct one of the two."


def amounts(each: Noted, day: StackDay, kit: Catalogue) -> Iterator[Problem]:
    """Go through the numbers of an entry, given how the stacks stood on its day."""
    if isinstance(each, Colony | Split):
        yield from no_hive(each, each.hive, kit)
    match each:
        case Visit():
            yield from seen(each)
            yield from too_much_brood(each, day)
        case WashCount() if each.mites > each.bees:
            yield odd(each, f"{each.mites} mites on {each.bees} bees.", CHECK_BOTH)
        case Split():
            yield from split(each, day)
        case Change(part="feeder"):
            yield from feeder(each)
    if each.id in day.impossible:
        misfit = day.impossible[each.id]
        # a change says in its count what a stack says field by field
        field = misfit.field if misfit.field in type(each).model_fields else "count"
        yield wrong(each, field, misfit.what, misfit.remedy)
    for misfit in day.odd.get(each.id, ()):
        yield odd(each, misfit.what, misfit.remedy)
    if each.id not in day.impossible:
        yield from odd_amounts(each, day, kit)


def no_hive(each: Noted, key: str, kit: Catalogue) -> Iterator[Problem]:
    """Find hives that are not in the catalogue."""
    try:
        kit.hive(key)
    except NotFoundError as error:
        yield wrong(each, "hive", error.what, error.remedy)


def seen(each: Visit) -> Iterator[Problem]:
    """Find sights that contradict each other."""
    bees, brood = each.frames_of_bees, each.frames_of_brood
    if bees == 0:
        without = {
            "frames_of_brood": "frames of brood",
            "combs_with_brood": "combs with brood",
            "eggs": "eggs",
            "queen_seen": "a queen",
            "larvae": "larvae",
            "sealed_brood": "sealed brood",
        }
        for field, sight in without.items():
            if getattr(each, field):
                yield wrong(each, field, f"There cannot be {sight} without bees.", CORRECT_ONE)
    elif bees is not None and brood is not None and brood > bees + 1:
        yield odd(
            each, f"{brood:g} frames of brood, but {bees:g} of bees to cover them.", CHECK_BOTH
        )
    young = [
        word for word in ("eggs", "larvae", "sealed brood") if getattr(each, word.replace(" ", "_"))
    ]
    if young and (brood == 0 or each.combs_with_brood == 0):
        what = (
            f"{young[0].capitalize()}, but no brood: eggs, larvae and sealed cells count as brood."
        )
        yield odd(each, what, CORRECT_ONE)
    if each.queen_cells == "none" and each.cells_found:
        yield odd(each, f"No queen cells, but {each.cells_found} were counted.", CORRECT_ONE)


def too_much_brood(each: Visit, day: StackDay) -> Iterator[Problem]:
    """Find more frames of brood than the boxes hold, before or after the day's work."""
    if each.colony not in day.after:
        return
    now = day.after[each.colony]
    boxes = max(now.set_up.brood_boxes, day.before[each.colony].set_up.brood_boxes)
    most = frames_that_fit(now.hive, brood_boxes=boxes)
    held = f"which holds {most} frames at most"
    for field, what in (
        ("frames_of_brood", "frames of brood"),
        ("combs_with_brood", "combs with brood"),
    ):
        if (count := getattr(each, field) or 0) > most:
            yield wrong(
                each,
                field,
                f"{count:g} {what} in “{now.hive.key}”, "
                + (held if boxes == 1 else f"{held} in {boxes} brood boxes")
                + ".",
                "Correct the number, the brood boxes or the hive.",
            )


def feeder(each: Change) -> Iterator[Problem]:
    """Find feeders that are not taken off."""
    if each.count != -1:
        yield wrong(
            each,
            "count",
            f"{each.count} is no note of a feeder: only one that is taken off counts, as -1.",
            "Write -1 if it was taken off; note what was put into one as a feed.",
        )


def split(each: Split, day: StackDay) -> Iterator[Problem]:
    """Find splits of more than there is, than the new box holds, or than the bees can cover."""
    combs = max(each.frames_of_brood + each.frames_of_stores, each.frames_of_bees)
    field = "frames_of_bees" if combs == each.frames_of_bees else "frames_of_brood"
    mother, young = day.before.get(each.colony), day.before.get(each.new_colony)
    had = mother.told()["frames"] if mother else None
    if had is not None and combs > had:
        yield wrong(
            each,
            field,
            f"{combs:g} frames were split from “{each.colony}”, which had {had}.",
            "Correct the number, or note the frames that were there.",
        )
    most = frames_that_fit(young.hive) if young else combs
    if combs > most:
        yield wrong(
            each,
            field,
            f"{combs:g} frames do not fit into “{each.hive}”, which holds {most} at most.",
            "Correct the numbers or the hive.",
        )
    if each.frames_of_brood > each.frames_of_bees + 1:
        yield odd(
            each,
            f"{each.frames_of_brood:g} frames of brood went with {each.frames_of_bees:g} of bees.",
            CHECK_BOTH,
        )
