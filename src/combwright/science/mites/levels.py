"""Levels at which countries say to act, side by side; they were made for different aims."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from combwright.terms.parameters import Verified
from combwright.terms.ranges import within

Measure = Literal["mites", "fall per day", "mites per 100 bees"]
Verdict = Literal["low", "watch", "act", "severe"]
_YEAR = tuple(range(1, 13))


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


_NBU = "UK National Bee Unit, as remembered"
_SWISS = "Agroscope / Swiss bee health service, as remembered"
_AUSTRIA = "table of an Austrian and German breeding project, second-hand"
_DH = "Delaplane & Hood 1999, Apidologie 30:383-395, doi:10.1051/apido:19990504"

# Fall a day above which the UK leaflet expects collapse before the season ends; none for October.
UK_FALL: Mapping[int, float] = {
    **dict.fromkeys((11, 12, 1, 2, 3, 4), 0.5),
    5: 6.0,
    6: 10.0,
    7: 16.0,
    8: 33.0,
    9: 20.0,
}
_SWISS_FALL = {5: 3.0, 6: 10.0, 7: 10.0, 8: 25.0, 10: 5.0, 11: 5.0, 12: 1.0, 1: 1.0, 2: 1.0}
_AUSTRIAN_PERCENT = {5: 2.0, 6: 3.0, 7: 4.0, 8: 3.0, 9: 1.0, 10: 1.0}

LEVELS: tuple[Level, ...] = (
    Level(
        "United Kingdom", "mites", 1000, _YEAR,
        "keep below; above, the risk of damage rises quickly",
        "NBU and Defra leaflet 2005, second-hand", "read",
    ),
    *(
        Level(
            "United Kingdom", "fall per day", value, (month,),
            "collapse before the end of the season is likely", _NBU, "from memory",
        )
        for month, value in UK_FALL.items()
    ),
    Level(
        "United Kingdom", "fall per day", 9, _YEAR,
        "severe risk in any month", "leaflet 2005, reported on a blog", "read",
    ),
    Level(
        "Germany", "fall per day", 10, (7,),
        "treat a production colony; 5 for a young one", "City of Hanover bee page", "read",
    ),
    Level(
        "Germany", "fall per day", 1, (11,),
        "treat in winter: several hundred mites remain",
        "German associations, second-hand", "read",
    ),
    *(
        Level("Switzerland", "fall per day", value, (month,), "treat", _SWISS, "from memory")
        for month, value in _SWISS_FALL.items()
    ),
    *(
        Level(
            "Austria and Germany", "mites per 100 bees", value, (month,),
            "at most so many", _AUSTRIA, "read",
        )
        for month, value in _AUSTRIAN_PERCENT.items()
    ),
    Level(
        "Canada", "mites per 100 bees", 1, (8,),
        "more colonies die in winter", "Morfin et al. 2024, Front. Bee Sci. 2:1355401", "read",
    ),
    Level(
        "United States", "mites per 100 bees", 3, _YEAR,
        "usual economic threshold", "Florida 2023; USDA Tucson", "read",
    ),
    Level(
        "United States", "mites", 3172, (8,),
        "economic threshold (to 4261) in the South-East: where a treatment pays", _DH, "read",
    ),
    Level(
        "United States", "fall per day", 59, (8,),
        "economic threshold (to 187) on an overnight insert", _DH, "read",
    ),
    Level(
        "model", "mites", 2000, _YEAR,
        "with deformed wing virus the colony may collapse (to 3600)",
        "Martin 2001, J. Appl. Ecol. 38:1082-1093", "from memory",
    ),
)  # fmt: skip


def levels_for(month: int) -> list[Level]:
    """Give the levels that apply in a month.

    References
    ----------
    .. [1] See ``LEVELS``; each names its source.

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

    Parameters
    ----------
    per_100
        Mites per 100 adult bees. [-]
    fall_per_day
        Natural fall, if a tray was counted. [mites/day]
    high
        Upper end of the range of the mites. [mites]

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
