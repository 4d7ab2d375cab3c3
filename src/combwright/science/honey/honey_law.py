"""How much water honey for sale may hold, by kind and law."""

from dataclasses import dataclass
from typing import Literal, get_args

from combwright.terms.errors import OutOfRangeError

Kind = Literal["general", "heather", "baker", "baker-heather"]
Law = Literal["eu", "uk"]


@dataclass(frozen=True, slots=True)
class WaterLimit:
    """The most water that a kind of honey may hold, and which text says so."""

    kind: Kind
    law: Law
    most_percent: float
    text: str
    as_of: str


_MOST: dict[Kind, float] = {
    "general": 20.0,
    "heather": 23.0,
    "baker": 23.0,
    "baker-heather": 25.0,
}
_TEXTS: dict[Law, tuple[str, str]] = {
    "eu": (
        "Council Directive 2001/110/EC, annex II, as amended by (EU) 2024/1438",
        "read in 2026; the amendment applies from 14 June 2026",
    ),
    "uk": (
        "Honey (England) Regulations 2015, schedule (other parts of the country have their own)",
        "20 % read in 2026, the other kinds from memory",
    ),
}


def water_limit(kind: str = "general", law: str = "eu") -> WaterLimit:
    """Give the legal limit on water. [g per 100 g].

    ``kind``: "general", "heather" (*Calluna*), "baker" (for food industry only) or "baker-heather".

    References
    ----------
    .. [1] Council Directive 2001/110/EC of 20 December 2001, annex II; read.
    .. [2] The Honey (England) Regulations 2015 (S.I. 2015/1348); 20 % read second-hand.

    Examples
    --------
    >>> water_limit("heather").most_percent
    23.0

    """
    for known in get_args(Kind):
        for state in get_args(Law):
            if (known, state) == (kind, law):
                text, as_of = _TEXTS[state]
                return WaterLimit(known, state, _MOST[known], text, as_of)
    raise OutOfRangeError(
        f"“{kind}” honey under “{law}” law is not known.",
        remedy=f"Kinds: {', '.join(get_args(Kind))}. Laws: {', '.join(get_args(Law))}.",
    )


def is_legal(water_percent: float, kind: str = "general", law: str = "eu") -> bool:
    """Whether honey of a kind may be sold with so much water.

    The limit itself is legal.

    ``water_percent``: water, as measured and rounded by the instrument [g per 100 g].

    Examples
    --------
    >>> is_legal(20.0), is_legal(20.1)
    (True, False)

    """
    return water_percent <= water_limit(kind, law).most_percent
