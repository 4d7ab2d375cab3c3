"""Pests and diseases to report, and to whom, by country; never a diagnosis. Check the law."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from combwright.terms.data_files import contents, rows


@dataclass(frozen=True, slots=True)
class ToReport:
    """A thing to report: how it looks, whether it stops all moves, the duty by country.

    ``each_place`` are the countries that want one report of each place where it is known.
    """

    name: str
    sign: str
    stops_moves: bool
    duty: Mapping[str, str]
    source: str
    each_place: tuple[str, ...] = ()


THINGS: Final[tuple[ToReport, ...]] = tuple(
    ToReport(**row) for row in rows("science/notifiable", "thing")
)
STOPS: Final = frozenset(one.name for one in THINGS if one.stops_moves)
CHECKED_ON: Final[str] = contents("science/notifiable")["tell"]["checked_on"]


def told_to(name: str, country: str) -> str:
    """Name the kind of authority that is told of a thing in a country.

    Examples
    --------
    >>> told_to("American foulbrood", "SCT"), told_to("yellow-legged hornet", "NI")[:22]
    ('the Scottish Government’s bee inspectors', 'the environment agency')

    """
    table = "hornet" if "hornet" in name else "tell"
    found: str = contents("science/notifiable")[table][country]
    return found


def notices_wanted(seen: int, reported: int, country: str) -> int:
    """Count the notices of varroa still to send: one for each place where it is known.

    Examples
    --------
    >>> notices_wanted(2, 1, "ENG"), notices_wanted(2, 0, "IE")
    (1, 0)

    """
    varroa = next(one for one in THINGS if one.name == "varroa")
    return max(0, seen - reported) if country in varroa.each_place else 0
