"""Bench list and load list: what to prepare indoors and what to put in the van."""

from collections import Counter
from collections.abc import Mapping, Sequence
from decimal import ROUND_UP, Decimal
from typing import Final

from combwright.advice.actions import of_kind
from combwright.advice.bee_acts import CutCells, Divide
from combwright.advice.kit_acts import StoresOut, Treat
from combwright.advice.words.wording import many
from combwright.planning.matching import asks_for_queen
from combwright.planning.sheet import Bench, ColonySheet, Handed, Short, Stop
from combwright.science.syrup.keeping import saturation_temperature_c, solubility_fraction
from combwright.science.syrup.strength import density_kg_per_l
from combwright.terms.data_files import parameters

PARAMETERS: Final = parameters("planning/planning")
SPARE: Final = PARAMETERS["spare_syrup"].value
SWARM_LIKELY: Final = PARAMETERS["swarm_likely"].value
POURED_C: Final = PARAMETERS["poured_c"].value
PARTS: Final = ("drawn frame", "frame of foundation", "dummy board", "super")
COUNTED: Final = ("drawn frame", "foundation frame", "dummy board", "super")  # as kit is counted
NOTHING_COUNTED: Final[Mapping[str, float]] = {}
ALWAYS: Final = (
    "smoker, fuel and lighter",
    "water to put the smoker out",
    "two hive tools and a brush",
    "veil, gloves, and a spare veil",
    "bucket of washing soda for tools",
    "queen cage and marking pen",
    "straps and entrance foam",
    "first aid; adrenaline if prescribed",
    "this sheet and a pencil",
)


def _more(colony: ColonySheet, what: str) -> int:
    before = int(getattr(colony.set_up_now, what))
    return max(0, int(getattr(colony.set_up, what)) - before)


def _frames(colony: ColonySheet, handed: Sequence[Handed]) -> tuple[int, int]:
    """Frames to bring for a colony: drawn, also in place of combs of stores, and foundation.

    Drawn ones that another hive has to spare, or that come back for combs of stores, are not
    brought.
    """
    more = _more(colony, "frames")
    sheets = min(more, colony.set_up.foundation)
    instead = sum(out.combs for out in of_kind(colony.actions, StoresOut))
    come = sum(
        each.count
        for each in handed
        if (each.what, colony.colony)
        in (("drawn frame", each.taker), ("comb of stores", each.giver))
    )
    return max(0, more - sheets + instead - come), sheets


def _grams(colonies: Sequence[ColonySheet], feed: str) -> float:
    return sum(each.portion.syrup_g for each in colonies if each.portion.feed == feed)


def _fondant_kg(colonies: Sequence[ColonySheet]) -> float:
    """Add up the fondant in tenths of a kilogram, never less than is asked for."""
    kilograms = Decimal(_grams(colonies, "fondant")) / 1000
    return float(kilograms.quantize(Decimal("0.1"), ROUND_UP))


def _parts(colonies: Sequence[ColonySheet], handed: Sequence[Handed]) -> dict[str, int]:
    """Count the parts to bring; of dummy boards so many more in each brood box."""
    boards = [_more(each, "dummy_boards") * each.set_up.brood_boxes for each in colonies]
    frames = [_frames(each, handed) for each in colonies]
    return {
        "frames_drawn": sum(drawn for drawn, _ in frames),
        "frames_foundation": sum(sheets for _, sheets in frames),
        "dummy_boards": sum(boards),
        "supers": sum(_more(each, "supers") for each in colonies),
    }


def bench(
    colonies: Sequence[ColonySheet],
    sugar_fraction: float,
    handed: Sequence[Handed] = (),
    on_shelf: Mapping[str, float] = NOTHING_COUNTED,
) -> Bench:
    """Add up what the round needs from the bench, beside what hives hand each other.

    What the shelf does not hold of it, of what is counted, is said first.
    """
    kilograms = round(_grams(colonies, "syrup") * SPARE / 1000.0, 1)
    sugar = round(kilograms * sugar_fraction, 1)
    water = round(kilograms * (1.0 - sugar_fraction), 1)
    litres = kilograms / float(density_kg_per_l(sugar_fraction, POURED_C))
    needed = _parts(colonies, handed)
    steps = []
    if kilograms:
        steps.append(
            f"Stir {sugar:g} kg of white sugar into {water:g} kg (litres) of hot, not boiling, "
            "water until it is clear; keep children away from the hot pan."
        )
        steps.append("Fill the portions by weight and carry them lukewarm.")
    counted = zip(needed.values(), PARTS, strict=True)
    parts = [many(number, what) for number, what in counted if number]
    if parts:
        steps.append(f"Make ready {_joined(parts)}.")
    short = _short(colonies, needed, sugar, on_shelf)
    return Bench(
        sugar_kg=sugar,
        water_kg=water,
        syrup_l=round(litres, 1),
        sugar_fraction=sugar_fraction,
        crystallises_below_c=_crystallises_below(sugar_fraction),
        **needed,
        boxes=needed["supers"],
        short=short,
        steps=[*(one.said for one in short), *steps],
    )


def _short(
    colonies: Sequence[ColonySheet],
    parts: Mapping[str, int],
    sugar_kg: float,
    on_shelf: Mapping[str, float],
) -> list[Short]:
    """Hold what is needed against what is counted; what was never counted is not asked after."""
    needed: dict[str, float] = {
        item: parts[name] for item, name in zip(COUNTED, parts, strict=True)
    } | {
        "queen excluder": sum(c.set_up.excluder and not c.set_up_now.excluder for c in colonies),
        "sugar kg": sugar_kg,
        "fondant kg": _fondant_kg(colonies),
    }
    found = [
        Short(what=item, needed=amount, on_shelf=on_shelf[item])
        for item, amount in needed.items()
        if item in on_shelf and amount > on_shelf[item]
    ]
    feeders = [count for item, count in on_shelf.items() if item.endswith("feeder")]
    fed = sum(each.portion.syrup_g > 0 and each.portion.feed == "syrup" for each in colonies)
    if feeders and fed > sum(feeders):
        found.append(Short(what="feeder", needed=fed, on_shelf=sum(feeders)))
    return found


def _joined(parts: Sequence[str]) -> str:
    return " and ".join([", ".join(parts[:-1]), parts[-1]] if len(parts) > 1 else parts)


def _crystallises_below(sugar_fraction: float) -> float | None:
    """Give the temperature below which syrup crystallises; none where it freezes first."""
    if sugar_fraction < float(solubility_fraction(0.0)):
        return None
    return round(float(saturation_temperature_c(sugar_fraction)), 1)


def _may_be_divided(colony: ColonySheet) -> bool:
    """Tell whether a swarm is likely, or cells are looked for that call for a division."""
    asked = any(isinstance(each, CutCells | Divide) for each in colony.actions)
    return asked or colony.chances.get("swarm", 0.0) >= SWARM_LIKELY


def load(
    colonies: Sequence[ColonySheet],
    yards: Sequence[str],
    sugar_fraction: float,
    handed: Sequence[Handed] = (),
) -> list[Stop]:
    """Say what to load for each yard, in the order of the stops."""
    per_litre = float(density_kg_per_l(sugar_fraction, POURED_C))
    stops = []
    for yard in yards:
        here = [colony for colony in colonies if colony.yard == yard]
        excluders = sum(c.set_up.excluder and not c.set_up_now.excluder for c in here)
        queried = sum(bool(c.questions) for c in here)
        items = list(ALWAYS)
        if any(_may_be_divided(c) for c in here):
            items.append("a nuc box with frames, for a colony that may swarm")
        if queried:
            items.append(f"time for {many(queried, 'colony')} that the book asks about")
        items += _carried(here, yard, handed)
        stops.append(
            Stop(
                yard=yard,
                colonies=len(here),
                syrup_l=round(_grams(here, "syrup") * SPARE / 1000.0 / per_litre, 1),
                fondant_kg=_fondant_kg(here),
                **_parts(here, handed),
                excluders=excluders,
                items=items,
            )
        )
    return stops


def _carried(here: Sequence[ColonySheet], yard: str, handed: Sequence[Handed]) -> list[str]:
    """Name what goes from one yard to another, medicines, and queens: spare ones or to be had."""
    items = [each.to_load for each in handed if each.giver_yard == yard != each.taker_yard]
    queens = {each.taker: each for each in handed if each.what == "mated queen"}
    items += [each.to_load for each in queens.values() if each.taker_yard == yard]
    without = [c.colony for c in here if asks_for_queen(c) and c.colony not in queens]
    treated = Counter(act for c in here for act in of_kind(c.actions, Treat))
    for act, count in treated.items():
        hives = many(count, "colony")
        items.append(f"{act.substance} ({act.way}) for {hives}, its label and what to wear with it")
    if without:
        wanted = f"{many(len(without), 'mated queen')}, if you have any: for {_joined(without)}"
        items.append(f"{wanted}; none is spare in the book")
    return items
