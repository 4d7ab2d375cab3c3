"""A colony's past and the weeks ahead as a chart, for page and terminal."""

from collections.abc import Mapping
from datetime import date
from typing import Final

from combwright.figures.bands import Course, Mark, Seen, season_chart
from combwright.services.beliefs.branching import Fork, Series
from combwright.services.beliefs.colony_history import TITLES, ColonyHistory
from combwright.services.beliefs.work_done import DIVIDED, FED, SUPERS, TREATED

SIGNS: Final[Mapping[str, str]] = {FED: "F", SUPERS: "S", DIVIDED: "D", TREATED: "T"}


def history_chart(
    told: ColonyHistory, quantity: str, *, width: int = 640, height: int = 260
) -> str:
    """Draw one quantity: what was believed, noted and done, and what may come, as SVG."""
    title, unit = TITLES[quantity]
    main = told.series[quantity]
    courses = {"goes on" if told.forks else "expected": _course(told.days, main)}
    courses |= {fork.what: _branch(told, fork, quantity) for fork in told.forks}
    return season_chart(
        courses,
        title=title,
        unit=unit,
        seen=[Seen(day, value) for day, value in told.notes.get(quantity, ())],
        marks=[Mark(each.on, SIGNS[each.what], each.what) for each in told.done],
        today=told.on,
        width=width,
        height=height,
    )


def signs_used(told: ColonyHistory) -> dict[str, str]:
    """Give the signs that a colony's charts use, and what they mean."""
    used = {each.what for each in told.done}
    return {sign: what for what, sign in SIGNS.items() if what in used}


def _branch(told: ColonyHistory, fork: Fork, quantity: str) -> Course:
    """Let a branch grow out of the line that goes on, the day before its own first one."""
    course, place = _course(fork.days, fork.series[quantity]), told.days.index(fork.days[0])
    if fork.days[0] == told.on:
        return course
    root = [told.series[quantity].mid[place - 1]]
    return Course(
        [told.days[place - 1], *course.days],
        *([*root, *values] for values in (course.low, course.mid, course.high)),
    )


def _course(days: tuple[date, ...], series: Series) -> Course:
    return Course(days, series.low, series.mid, series.high)
