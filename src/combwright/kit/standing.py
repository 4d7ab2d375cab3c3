"""How one stack stands, replayed through its entries: what was noted, and what is assumed.

Records and belief both build on it, so that the same notes make the same stack in both. What is
noted has the last word; what is only assumed yields to it and to the room in the box.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Any, Final

from combwright.kit.catalogue import Catalogue
from combwright.kit.fits import Misfit, frames_that_fit
from combwright.kit.items import Hive
from combwright.terms.entries import Change, End, Harvest, Noted, Stack
from combwright.terms.set_up import SetUp

FIELDS: Final = (*SetUp.model_fields, "pitch_mm")
COUNTED: Final = {"super": "supers", "dummy board": "dummy_boards"}  # all other parts are frames


@dataclass(frozen=True, slots=True)
class Standing:
    """How a stack stands: ``noted`` names the fields that notes tell, the others are assumed."""

    hive: Hive
    set_up: SetUp
    pitch_mm: float | None = None
    noted: frozenset[str] = frozenset()

    @property
    def empty_kg(self) -> float:
        """Weight of the stack without bees and stores. [kg]."""
        box = self.hive.box_kg + self.hive.frames * self.hive.frame.drawn_kg
        supers = self.hive.honey_super
        one = supers.box_kg + supers.frames * supers.frame.drawn_kg if supers else 0.0
        above = self.set_up.supers * one
        return self.hive.empty_kg + (self.set_up.brood_boxes - 1) * box + above

    def value(self, field: str) -> Any:  # noqa: ANN401  (a field of any kind)
        """Give a field, noted or assumed."""
        return self.pitch_mm if field == "pitch_mm" else getattr(self.set_up, field)

    def told(self) -> dict[str, Any]:
        """Give every field that a book shows; ``None`` where nothing was noted."""
        return {name: self.value(name) if name in self.noted else None for name in FIELDS}


def usual(hive: Hive) -> Standing:
    """Give what is assumed where nothing is noted: the hive's usual number of drawn frames."""
    return Standing(hive, SetUp(hive=hive.key, frames=hive.frames), noted=frozenset({"hive"}))


def another_day(now: Standing) -> Standing:
    """Forget what lasts a day only: bees draw foundation, so yesterday's count says nothing."""
    set_up = now.set_up.model_copy(update={"foundation": 0})
    return replace(now, set_up=set_up, noted=now.noted - {"foundation"})


def in_order_of_work(entries: Iterable[Noted]) -> list[Noted]:
    """Sort the entries of one colony's day as work at a hive goes.

    Honey is taken before the supers that held it are gone, and a feeder before the next feed;
    what comes out makes room for what goes in; how the stack is left has the last word.
    """
    return sorted(entries, key=_turn)


def after(now: Standing, entry: Noted, kit: Catalogue) -> Standing:
    """Tell how a stack stands after an entry."""
    match entry:
        case Stack():
            return _yielding(_left(now, entry, kit))
        case Change(part="feeder"):
            return now
        case Change():
            return _yielding(_changed(now, entry))
        case Harvest() if entry.supers:
            return _counted(now, "supers", -entry.supers)
        case _:
            return now


def more_than_there(now: Standing, entry: Noted, today: Iterable[Noted] = ()) -> Misfit | None:
    """Find things taken out that are not there; where that was only assumed, it does not block.

    What a note of the same day says was there counts too: a hive may be visited twice.
    """
    if isinstance(entry, Harvest):
        field, wanted = "supers", entry.supers
    elif isinstance(entry, Change) and entry.part != "feeder":
        field, wanted = COUNTED.get(entry.part, "frames"), -entry.count
    else:
        return None
    said = [getattr(each, field) for each in today if isinstance(each, Stack)]
    told = [count for count in said if count is not None]
    there, is_noted = max([now.value(field), *told]), field in now.noted or bool(told)
    if wanted <= there:
        return None
    things = field.replace("_", " ")
    came_out = f"{things} were" if wanted != 1 else f"{things.removesuffix('s')} was"
    had = f"which had {there}" if is_noted else f"of which the notes know {there}"
    return Misfit(
        "supers" if isinstance(entry, Harvest) else "count",
        f"{wanted} {came_out} taken from “{entry.colony}”, {had}.",
        f"Correct the number, or note the {things} that were there.",
        blocks=is_noted,
    )


def _turn(entry: Noted) -> int:
    if isinstance(entry, Harvest) or (isinstance(entry, Change) and entry.part == "feeder"):
        return 0
    if isinstance(entry, Change) and entry.count < 0:
        return 1
    return 3 if isinstance(entry, Stack | End) else 2


def _left(now: Standing, entry: Stack, kit: Catalogue) -> Standing:
    """Bring in what a stack entry says; what it leaves out stays as it was."""
    said = {name: getattr(entry, name) for name in FIELDS if getattr(entry, name) is not None}
    noted = now.noted | said.keys()
    pitch_mm = said.pop("pitch_mm", now.pitch_mm)
    if entry.hive is None:
        return Standing(now.hive, now.set_up.model_copy(update=said), pitch_mm, noted)
    hive = kit.hive(entry.hive)
    said["hive"] = hive.key
    if hive.key != now.hive.key:
        rest = _of_another_hive(now, hive)
        noted -= rest.keys() - said.keys()
        said = {**rest, **said}
    return Standing(hive, now.set_up.model_copy(update=said), pitch_mm, noted)


def _of_another_hive(now: Standing, hive: Hive) -> dict[str, int]:
    """Give what of the old hive's count cannot hold for another."""
    rest = {"brood_boxes": 1}
    if hive.frames < now.set_up.frames:
        rest["frames"] = hive.frames
    if hive.honey_super is None:
        rest["supers"] = 0
    return rest


def _changed(now: Standing, entry: Change) -> Standing:
    """Put frames, boards or supers in, or take them out."""
    now = _counted(now, COUNTED.get(entry.part, "frames"), entry.count)
    if entry.part == "foundation frame":
        return _counted(now, "foundation", entry.count)
    return now


def _counted(now: Standing, field: str, count: int) -> Standing:
    """Count on from what was there; what was only assumed stays so."""
    there = max(0, getattr(now.set_up, field) + count)
    return replace(now, set_up=now.set_up.model_copy(update={field: there}))


def _yielding(now: Standing) -> Standing:
    """Let an assumed number of frames yield to what is noted, and to the room in the boxes."""
    if "frames" in now.noted:
        return now
    it = now.set_up
    most = frames_that_fit(now.hive, None, it.dummy_boards, it.brood_boxes)
    frames = min(max(it.frames, it.foundation), most)
    return replace(now, set_up=it.model_copy(update={"frames": frames}))
