"""The calendar of queens: the days that follow from a graft, a split, or cells that were found."""

from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from math import ceil, floor
from typing import get_args

from combwright.science.queens.cells_needed import cells_needed
from combwright.science.queens.drones import drone_eggs_before
from combwright.science.queens.emergence import HOURS_A_DAY, NEST_C, emergence_window_h
from combwright.science.queens.first_egg import RIPE_BEFORE, mean_first_egg
from combwright.science.queens.mating import FULL_FLIGHT_ABOVE_C, NO_FLIGHT_BELOW_C
from combwright.science.queens.mating_success import SHOCK, usual_share
from combwright.science.queens.promise_day import promise_day
from combwright.science.queens.queen_clock import Days, Milestone, Start, queen_clock
from combwright.terms.errors import NotFoundError

TO_DO: dict[Milestone, str] = {
    "charged": "the egg hatches and is fed as a queen",
    "sealed": "do not tip, chill or knock the cells; a colony that swarms can go from now on",
    "emerges": "give ripe cells one or two days before",
    "flies to mate": "do not open her hive from ten to five",
    "lays": "look for eggs, not before",
    "sealed brood": "flat caps are workers: she is mated; domed caps in worker cells: she is not",
    "fit to sell": "three weeks of her laying can be seen",
    "too late": "a virgin that has not laid by now will not: unite or requeen",
}
HOW_SURE = f"""\
Mating wants a dry calm afternoon: none below {NO_FLIGHT_BELOW_C.value:g} °C, any from \
{FULL_FLIGHT_ABOVE_C.value:g} °C (judgement). Poor weather adds up to two weeks to what follows.
Early and late are what guides and studies span, with what is not known of her age on day 0.\
""".splitlines()


@dataclass(frozen=True, slots=True)
class QueenStage:
    """One stage of a queen, when it is to be expected, and what to do then."""

    stage: Milestone
    early: date
    usual: date
    late: date
    days: Days
    to_do: str


@dataclass(frozen=True, slots=True)
class QueenCalendar:
    """What follows from day 0."""

    start: Start
    day_0: date
    stages: tuple[QueenStage, ...]
    emerges: tuple[datetime, datetime]
    drone_eggs_by: date
    lays: float
    first_egg: date
    cells_for_wanted: int | None
    promise_for: date | None
    how_sure: list[str]


def queen_calendar(
    start: str,
    day_0: date,
    *,
    brood_c: float = NEST_C.value,
    wanted: int | None = None,
    cells: int | None = None,
) -> QueenCalendar:
    """Tell when the queens that begin on a day are sealed, emerge, mate, lay and may be sold.

    Only stages still ahead; early days are rounded down, late days up. ``brood_c`` is the warmth
    of the sealed cells [°C], ``wanted`` how many laying queens are needed with nine in ten,
    ``cells`` how many ripe cells are given for them.

    Examples
    --------
    >>> told = queen_calendar("graft", date(2027, 5, 20))
    >>> {each.stage: each.usual.isoformat() for each in told.stages}["emerges"]
    '2027-06-01'

    """
    known = {name: name for name in get_args(Start)}
    begun = known.get(start.strip().lower())
    if begun is None:
        raise NotFoundError(
            f"There is no start “{start}”.", remedy=f"It can be: {', '.join(known)}."
        )
    stages = tuple(_expected(each, days, day_0) for each, days in queen_clock(begun).items())
    first, last = emergence_window_h(begun, brood_c)
    emerges = emerges_at(begun, day_0, brood_c)
    eggs = drone_eggs_before((first + last) / 2 / HOURS_A_DAY)
    lays = usual_share(emerges[0].date() - timedelta(days=round(RIPE_BEFORE.value)))
    return QueenCalendar(
        begun,
        day_0,
        stages,
        emerges,
        day_0 + timedelta(days=floor(eggs)),
        lays,
        emerges[0].date() + timedelta(days=round(mean_first_egg())),
        None if wanted is None else cells_needed(wanted, lays, shock=SHOCK.value),
        _promise(emerges[0].date(), lays, wanted, cells),
        HOW_SURE,
    )


def _promise(emerges: date, lays: float, wanted: int | None, cells: int | None) -> date | None:
    days = None if wanted is None or cells is None else promise_day(wanted, cells, lays)
    given = emerges - timedelta(days=round(RIPE_BEFORE.value))
    return None if days is None else given + timedelta(days=days)


def emerges_at(
    start: Start, day_0: date, brood_c: float | None = None
) -> tuple[datetime, datetime]:
    """Give when the first and the last queen emerge, if all began at noon of day 0."""
    noon = datetime.combine(day_0, time(12))
    first, last = emergence_window_h(start, NEST_C.value if brood_c is None else brood_c)
    return noon + timedelta(hours=max(0.0, first)), noon + timedelta(hours=last)


def _expected(stage: Milestone, days: Days, day_0: date) -> QueenStage:
    early, usual, late = (
        day_0 + timedelta(days=whole)
        for whole in (floor(days.low), round(days.usual), ceil(days.high))
    )
    return QueenStage(stage, early, usual, late, days, TO_DO[stage])
