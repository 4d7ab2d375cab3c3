"""Levels at which countries say to act, side by side; they were made for different aims."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Literal

from combwright.terms.data_files import rows
from combwright.terms.parameters import Verified
from combwright.terms.ranges import within

Measure = Literal["mites", "fall per day", "mites per 100 bees"]
Verdict = Literal["low", "watch", "act", "severe"]


@dataclass(frozen=True, slots=True)
class Level:
    """At or above this value, in these months, a country or study says to act."""

    place: str
    measure: Measure
    value: float
    months: tuple[int, ...]
    says: str
    source: str
    verified: Verified


def _levels() -> Iterator[Level]:
    for row in rows("science/levels", "level"):
        by_month = row.pop("by_month", None)
        if by_month is None:
            yield Level(**row)
        else:
            yield from (Level(**row, value=value, months=(month,)) for month, value in by_month)


LEVELS: tuple[Level, ...] = tuple(_levels())
# Fall a day above which the UK leaflet expects collapse before the season ends; none for October.
UK_FALL: Mapping[int, float] = {
    level.months[0]: level.value
    for level in LEVELS
    if (level.place, level.measure) == ("United Kingdom", "fall per day") and len(level.months) == 1
}


def levels_for(month: int) -> list[Level]:
    """Give the levels that apply in a month.

    Examples
    --------
    >>> [level.value for level in levels_for(8) if level.measure == "mites"]
    [1000, 3172, 2000]

    """
    number = int(within(month, 1, 12, "The month"))
    return [level for level in LEVELS if number in level.months]


def verdict(
    month: int, mites: float, per_100: float, fall_per_day: float | None = None, high: float = 0.0
) -> Verdict:
    """Sum up a count against the levels, from the careful side.

    It is ``severe`` from 2000 mites or 10 per 100 bees; ``act`` from 1000 mites, the UK fall of the
    month or 3 per 100 bees; ``watch`` from half of any of these, or when 1000 lies within the
    range; else ``low``.

    ``per_100``: mites per 100 adult bees [-]. ``high``: upper end of the range of the mites
    [mites].

    References
    ----------
    .. [1] See ``LEVELS``. That half a level means to watch is a judgement of ours.

    Examples
    --------
    >>> verdict(8, 990, 1.8, fall_per_day=33)
    'act'

    """
    number = int(within(month, 1, 12, "The month"))
    total, share = (
        float(within(mites, 0, 1e7, "The number of mites")),
        float(within(per_100, 0, 1000, "Mites per 100 bees")),
    )
    limit = UK_FALL.get(number)
    parts = [total / 1000, share / 3]
    if fall_per_day is not None and limit is not None:
        parts.append(float(within(fall_per_day, 0, 1e5, "The fall", "a day")) / limit)
    if total / 2000 >= 1 or share / 10 >= 1:
        return "severe"
    if max(parts) >= 1:
        return "act"
    return "watch" if max(*parts, high / 2000) >= 1 / 2 else "low"
