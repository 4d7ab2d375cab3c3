"""A day too short for the whole round: what is left for another day, by what that costs."""

from collections.abc import Iterable
from typing import Final

from combwright.advice.bee_acts import CutCells, Divide, Reporting, Uniting
from combwright.advice.kit_acts import Act, Feeding
from combwright.planning.sheet import ColonySheet, LeftOut, RoundSheet, gained
from combwright.planning.supplies import bench, load
from combwright.planning.supply.rows import Programme
from combwright.planning.task_minutes import TaskMinutes
from combwright.terms.data_files import parameter

YARD_MINUTES: Final = parameter("planning/planning", "yard_minutes").value
CANNOT_WAIT: Final = parameter("planning/planning", "cannot_wait").value
NODES, SECONDS = 1000, 3.0
PRESSING: Final = (Reporting, CutCells, Uniting)


def short_day(sheet: RoundSheet, minutes: float, own: TaskMinutes) -> RoundSheet:
    """Leave out what costs least until the rest fits into the minutes that there are.

    ``own`` are the keeper's own minutes by task; each yard takes its share for smoker, suit and
    notes. What cannot wait stays as long as anything can.
    """
    programme = Programme()
    yards = {yard: programme.variable(0.0, 1.0) for yard in sheet.yards}
    takes = {each.colony: own.of(each.actions) for each in sheet.colonies}
    kept = {
        each.colony: programme.variable(_worth(each) + 1.0 / len(sheet.colonies), 1.0)
        for each in sheet.colonies
    }
    for each in sheet.colonies:
        programme.at_most({kept[each.colony]: 1.0, yards[each.yard]: -1.0}, 0.0)
    spent = {kept[name]: each for name, each in takes.items()}
    programme.at_most(spent | dict.fromkeys(yards.values(), YARD_MINUTES), minutes)
    values, _, _ = programme.solve(0.0, NODES, SECONDS)
    left = [each for each in sheet.colonies if not values[kept[each.colony]]]
    return _of_the_others(sheet, left).model_copy(update={"left_out": _told(left, takes)})


def _of_the_others(sheet: RoundSheet, left: Iterable[ColonySheet]) -> RoundSheet:
    """Prepare, load and hand over for the colonies that are seen to alone."""
    waits = {each.colony for each in left}
    seen_to = [each for each in sheet.colonies if each.colony not in waits]
    yards = [yard for yard in sheet.yards if any(each.yard == yard for each in seen_to)]
    handed = [each for each in sheet.handed if not {each.giver, each.taker} & waits]
    sugar = sheet.bench.sugar_fraction
    return sheet.model_copy(
        update={
            "handed": handed,
            "bench": bench(seen_to, sugar, handed, sheet.on_shelf),
            "load": load(seen_to, yards, sugar, handed),
        }
    )


def _told(left: Iterable[ColonySheet], takes: dict[str, float]) -> list[LeftOut]:
    found = [
        LeftOut(
            colony=each.colony,
            yard=each.yard,
            minutes=round(takes[each.colony], 1),
            costs=round(gained(each), 2),
            cannot_wait=_is_pressing(each),
        )
        for each in left
    ]
    return sorted(found, key=lambda one: (one.cannot_wait, one.costs))


def _worth(sheet: ColonySheet) -> float:
    return gained(sheet) + CANNOT_WAIT * _is_pressing(sheet)


def _is_pressing(sheet: ColonySheet) -> bool:
    return any(_presses(each) for each in sheet.actions)


def _presses(act: Act) -> bool:
    match act:
        case Feeding():
            return act.grams > 0
        case Divide():
            return act.way != "on purpose"
    return isinstance(act, PRESSING)
