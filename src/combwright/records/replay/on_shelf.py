"""Kit on the shelf: as last counted, less what the notes put on hives or used up since."""

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from datetime import date
from typing import Final

from combwright.terms.entries import Change, Feed, Harvest, JarRun, Kit, Noted, Stack

SUGAR, FONDANT = "sugar kg", "fondant kg"
FRAMES: Final = {"drawn frame": 1, "foundation frame": 1, "brood frame": 0, "stores frame": 0}
COUNTED: Final = ("supers", "dummy_boards", "excluder", "frames", "foundation")
Taken = tuple[str, float]


@dataclass(frozen=True, slots=True)
class OnShelf:
    """One item: how many were counted when, and how many went since; below nought some came."""

    item: str
    counted: int
    on: date
    taken: float = 0.0

    @property
    def left(self) -> float:
        """How many should be there now."""
        return max(0.0, round(self.counted - self.taken, 1))


def on_shelf(entries: Iterable[Noted]) -> dict[str, OnShelf]:
    """Replay the kit; what was never counted is not known of.

    A stack is held against what was noted of it before; its first note only says how it stands.
    """
    entries, found = list(entries), dict[str, OnShelf]()
    if not any(isinstance(each, Kit) for each in entries):
        return found
    hives: defaultdict[str, dict[str, int]] = defaultdict(dict)
    for each in entries:
        if isinstance(each, Kit):
            found[each.item] = OnShelf(each.item, each.count, each.on)
            continue
        for item, count in _taken(each, hives):
            if item in found:
                found[item] = replace(found[item], taken=found[item].taken + count)
    return found


def jar_item(jar_g: float) -> str:
    """Name the jars of a size as they are counted."""
    return f"jar {jar_g:g} g"


def _taken(each: Noted, hives: defaultdict[str, dict[str, int]]) -> Iterator[Taken]:
    """Say what a note took off the shelf; below nought what came back."""
    match each:
        case Feed():
            kg = each.grams / 1000.0
            yield (SUGAR, kg * each.sugar_fraction) if each.feed == "syrup" else (FONDANT, kg)
        case JarRun():
            yield jar_item(each.jar_g), each.jars
        case Change():
            yield from _changed(each, hives[each.colony])
        case Harvest() if each.supers:
            _shift(hives[each.colony], "supers", -each.supers)
            yield "super", -each.supers
        case Stack():
            yield from _stacked(each, hives[each.colony])


def _changed(each: Change, hive: dict[str, int]) -> Iterator[Taken]:
    if each.part in FRAMES:
        _shift(hive, "frames", each.count)
        if each.part == "foundation frame":
            _shift(hive, "foundation", each.count)
        # combs of brood or stores came from another hive
        if FRAMES[each.part]:
            yield each.part, each.count
    elif each.part in {"super", "dummy board"}:
        _shift(hive, {"super": "supers"}.get(each.part, "dummy_boards"), each.count)
        yield each.part, each.count


def _stacked(each: Stack, hive: dict[str, int]) -> Iterator[Taken]:
    """Hold a stack against the one before it."""
    boxes = each.brood_boxes or hive.get("brood_boxes", 1)
    more = {
        name: int(now) - hive.get(name, int(now))
        for name in COUNTED
        if (now := getattr(each, name)) is not None
    }
    for name in (*COUNTED, "brood_boxes"):
        if (now := getattr(each, name)) is not None:
            hive[name] = int(now)
    yield "super", more.get("supers", 0)
    yield "dummy board", boxes * more.get("dummy_boards", 0)
    yield "queen excluder", more.get("excluder", 0)
    frames = more.get("frames", 0)
    sheets = max(0, min(frames, more.get("foundation", 0)))
    yield "foundation frame", sheets
    yield "drawn frame", frames - sheets


def _shift(hive: dict[str, int], name: str, by: int) -> None:
    """Keep up with a part of a stack once it has been noted."""
    if name in hive:
        hive[name] += by
