"""Small books for the tests of the belief."""

from datetime import date, timedelta
from typing import Any
from uuid import UUID, uuid5

import numpy as np

from combwright.belief.following.noted import notes_of_colonies
from combwright.belief.following.replay import Replay
from combwright.kit.catalogue import catalogue
from combwright.services.weather.surroundings import yard_conditions
from combwright.terms.entries import Colony, Noted, Split, Visit
from combwright.weather.climates import climate
from combwright.weather.generator import generate

PLACE = climate("Dublin Airport")
FIRST = date(2025, 4, 5)
KEY = UUID(int=5)


def day(number: int) -> date:
    return FIRST + timedelta(days=number)


Loose = Any  # entries of any kind, records of the simulation


def entry(kind: Loose, number: int, colony: str = "Sorrel", **fields: Loose) -> Loose:
    name = f"{kind.__name__} {number} {colony} {sorted(fields.items())}"
    return kind(id=uuid5(KEY, name), on=day(number), colony=colony, **fields)


def enters(colony: str = "Sorrel", number: int = 0) -> list[Noted]:
    return [
        entry(Colony, number, colony, yard="Home", hive="national timber", queen_year=2024),
        entry(Visit, number, colony, frames_of_bees=6, frames_of_brood=3, stores_kg=6, eggs=True),
    ]


def nuc(number: int, parent: str = "Sorrel", colony: str = "Nuc") -> Noted:
    made: Noted = entry(
        Split,
        number,
        parent,
        new_colony=colony,
        hive="nuc 6 polystyrene",
        frames_of_bees=2,
        frames_of_brood=1,
        goes_with="cell",
    )
    return made


_KNOWN = generate(PLACE, FIRST, 130, 1, 4)


def season(yard: str, first: date, until: date) -> Loose:
    """Conditions of a known spring in 20 versions of its flow."""
    del yard
    if not hasattr(season, "table"):
        season.table = yard_conditions(PLACE, _KNOWN, FIRST, day(130), members=20, seed=3)  # type: ignore[attr-defined]
    return season.table[:, (first - FIRST).days : (until - FIRST).days]  # type: ignore[attr-defined]


def replay(entries: list[Noted], *, members: int = 20, seed: int = 1, **more: Loose) -> Replay:
    return Replay(
        notes_of_colonies(entries), season, catalogue(), members=members, seed=seed, **more
    )


def is_sound(records: Loose) -> bool:
    """Whether all numbers are finite and none that cannot be is negative."""
    flat = [records[name] for name in records.dtype.names]
    return all(np.isfinite(part).all() and (part >= -1e-6).all() for part in flat)
