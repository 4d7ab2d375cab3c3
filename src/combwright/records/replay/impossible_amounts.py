"""Numbers that the bees, the stack or the box do not allow."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from difflib import get_close_matches

from combwright.records.problems import Problem, odd, wrong
from combwright.records.replay.colonies import Standing, after
from combwright.terms.entries import Change, Colony, Harvest, Noted, Split, Stack, Visit, WashCount

CHECK_BOTH = "Check both numbers."
CORRECT_ONE = "Correct one of the two."


@dataclass(frozen=True, slots=True)
class BroodBox:
    """How much goes into a brood box: its inner width, and what a frame and a board take of it."""

    width_mm: float
    pitch_mm: float = 35.0
    board_mm: float = 9.0

    @property
    def frames(self) -> int:
        """The most frames that go in, without boards."""
        return int(self.width_mm // self.pitch_mm)


def amounts(
    each: Noted, found: Mapping[str, Standing], hives: Mapping[str, BroodBox]
) -> Iterator[Problem]:
    """Go through the numbers of an entry, given how the colonies stood before it."""
    hive = getattr(each, "hive", None)
    if hive is not None and hive not in hives:
        yield no_hive(each, hive, hives)
    now = found.get(getattr(each, "colony", ""))
    if now is None or isinstance(each, Colony):
        return
    match each:
        case Visit():
            yield from seen(each)
            yield from too_much_brood(each, now, hives)
        case WashCount() if each.mites > each.bees:
            yield odd(each, f"{each.mites} mites on {each.bees} bees.", CHECK_BOTH)
        case Split():
            yield from split(each, now, hives)
        case Change(part="feeder"):
            yield from feeder(each)
            return
        case Change() | Harvest():
            yield from taken(each, now)
    if isinstance(each, Stack | Change):
        yield from fits(each, after(now, each), hives)


def no_hive(each: Noted, key: str, hives: Mapping[str, BroodBox]) -> Problem:
    """Say that a hive is not in the catalogue."""
    near = get_close_matches(key, list(hives), n=3, cutoff=0.4)
    known = ", ".join(near or sorted(hives))
    return wrong(each, f"There is no hive “{key}” in the catalogue of kit.", f"There is: {known}.")


def seen(each: Visit) -> Iterator[Problem]:
    """Find sights that contradict each other."""
    bees, brood = each.frames_of_bees, each.frames_of_brood
    if bees == 0:
        without = {"frames of brood": brood, "eggs": each.eggs, "a queen": each.queen_seen}
        for sight, value in without.items():
            if value:
                yield wrong(each, f"There cannot be {sight} without bees.", CORRECT_ONE)
    elif bees is not None and brood is not None and brood > bees + 1:
        yield odd(
            each, f"{brood:g} frames of brood, but {bees:g} of bees to cover them.", CHECK_BOTH
        )
    if brood == 0 and each.eggs:
        yield odd(each, "Eggs, but no brood: eggs count as brood.", CORRECT_ONE)


def too_much_brood(each: Visit, now: Standing, hives: Mapping[str, BroodBox]) -> Iterator[Problem]:
    """Find more frames of brood than the box holds."""
    box = hives.get(now.hive)
    if box is not None and (each.frames_of_brood or 0) > box.frames:
        yield wrong(
            each,
            f"{each.frames_of_brood:g} frames of brood in “{now.hive}”, which holds "
            f"{box.frames} frames at most.",
            "Correct the number or the hive.",
        )


def taken(each: Change | Harvest, now: Standing) -> Iterator[Problem]:
    """Find things taken out that are not there."""
    if isinstance(each, Harvest):
        thing, wanted, there = "supers", each.supers, now.supers
    elif each.part == "super":
        thing, wanted, there = "supers", -each.count, now.supers
    elif each.part == "dummy board":
        thing, wanted, there = "dummy boards", -each.count, now.dummy_boards
    else:
        thing, wanted, there = "frames", -each.count, now.frames
    if there is not None and wanted > there:
        yield wrong(
            each,
            f"{wanted} {thing} were taken from “{now.colony}”, which had {there}.",
            f"Correct the number, or note the {thing} that were there.",
        )


def feeder(each: Change) -> Iterator[Problem]:
    """Find feeders that are not taken off."""
    if each.count != -1:
        yield wrong(
            each,
            f"{each.count} is no note of a feeder: only one that is taken off counts, as -1.",
            "Write -1 if it was taken off; note what was put into one as a feed.",
        )


def split(each: Split, now: Standing, hives: Mapping[str, BroodBox]) -> Iterator[Problem]:
    """Find splits of more than there is, than the new box holds, or than the bees can cover."""
    combs = max(each.frames_of_brood + each.frames_of_stores, each.frames_of_bees)
    box = hives.get(each.hive)
    if now.frames is not None and combs > now.frames:
        yield wrong(
            each,
            f"{combs:g} frames were split from “{now.colony}”, which had {now.frames}.",
            "Correct the number, or note the frames that were there.",
        )
    if box is not None and combs > box.frames:
        yield wrong(
            each,
            f"{combs:g} frames do not fit into “{each.hive}”, which holds {box.frames} at most.",
            "Correct the numbers or the hive.",
        )
    if each.frames_of_brood > each.frames_of_bees + 1:
        yield odd(
            each,
            f"{each.frames_of_brood:g} frames of brood went with {each.frames_of_bees:g} of bees.",
            CHECK_BOTH,
        )


def fits(each: Stack | Change, now: Standing, hives: Mapping[str, BroodBox]) -> Iterator[Problem]:
    """Find more frames and boards than the box holds."""
    if now.foundation is not None and now.frames is not None and now.foundation > now.frames:
        yield wrong(
            each,
            f"{now.foundation} frames of foundation among {now.frames} frames.",
            "“foundation” counts those of the frames that are not drawn yet.",
        )
    box = hives.get(now.hive)
    if box is None or now.frames is None:
        return
    boards = now.dummy_boards or 0
    tight = now.frames * box.pitch_mm + boards * box.board_mm
    loose = now.frames * (now.pitch_mm or box.pitch_mm) + boards * box.board_mm
    what = f"{now.frames} frames" + (f" and {boards} dummy boards" if boards else "")
    if tight > box.width_mm:
        yield wrong(
            each,
            f"{what} do not fit into “{now.hive}”, which holds {box.frames} frames at most "
            f"({box.width_mm:g} mm inside).",
            "Correct the frames, the boards or the hive.",
        )
    elif loose > box.width_mm:
        yield odd(
            each,
            f"At {now.pitch_mm:g} mm from comb to comb, {what} take {loose:.0f} mm of the "
            f"{box.width_mm:g} mm inside “{now.hive}”.",
            "Scrape the propolis off the shoulders, or take a frame or board out.",
        )
