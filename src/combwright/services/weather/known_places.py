"""Climate and forage of a yard; a book may name some that this program does not know."""

from collections.abc import Iterable, Iterator
from typing import Final

from combwright.terms.entries import Yard
from combwright.terms.errors import NotFoundError
from combwright.weather.climate import Climate
from combwright.weather.climates import climate
from combwright.weather.forage import Plant, calendar, districts

DEFAULT_CLIMATE: Final = "Dublin Airport"


def climate_of(yard: Yard | None) -> Climate:
    """Give the climate of a yard, or the usual one."""
    try:
        return climate(yard.climate if yard is not None else DEFAULT_CLIMATE)
    except NotFoundError:
        return climate(DEFAULT_CLIMATE)


def plants_of(yard: Yard) -> tuple[Plant, ...]:
    """Give what flowers around a yard, or the usual."""
    try:
        return calendar(yard.district)
    except NotFoundError:
        return calendar(districts()[0])


def unknown_places(yards: Iterable[Yard]) -> Iterator[str]:
    """Say which yards lie in a climate or district that is not known, and what stands in."""
    for yard in yards:
        for look_up, name, usual in (
            (climate, yard.climate, DEFAULT_CLIMATE),
            (calendar, yard.district, districts()[0]),
        ):
            try:
                look_up(name)
            except NotFoundError as error:
                yield f"Yard “{yard.yard}”: {error.what} “{usual}” stands in. {error.remedy}"
