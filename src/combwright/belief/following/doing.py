"""Doing to a belief what was done on a day."""

from collections.abc import Callable, Iterable
from dataclasses import replace
from datetime import date
from typing import Any, Final

import numpy as np

from combwright.belief.following.acting import act
from combwright.belief.following.causes import Since
from combwright.belief.following.followed import Followed
from combwright.belief.numbers import number
from combwright.belief.weighing.filter import Belief
from combwright.kit.catalogue import Catalogue
from combwright.kit.evening import evening
from combwright.kit.standing import Standing, in_order_of_work, usual
from combwright.simulation.columns import CELL, copied
from combwright.simulation.hands.dividing import split, unite
from combwright.terms.entries import End, Harvest, Move, Noted, Queen, Split, Unite
from combwright.terms.errors import CombwrightError
from combwright.terms.percent import in_percent
from combwright.terms.streams import stream

Other = Callable[[str, date], Followed | None]
LIKELY: Final = number("cells_likely")


def do(
    followed: Followed,
    entries: Iterable[Noted],
    day: date,
    *,
    catalogue: Catalogue,
    seed: int,
    other: Other,
) -> Followed:
    """Do to the members what was done on a day; what cannot have been is told and left out."""
    rng = stream(seed, followed.belief.colony, "done", day.toordinal())
    belief = replace(followed.belief, colonies=copied(followed.belief.colonies))
    followed = replace(followed, belief=belief)
    entries = in_order_of_work(entries)
    stood = evening(followed.standing, entries, catalogue)
    harvested = any(isinstance(entry, Harvest) for entry in entries)
    for entry in entries:
        odd = [f"{day:%d %B %Y}: {one.what}" for one in stood.odd.get(entry.id, ())]
        told = (*odd, *last_cells(entry, followed.belief.colonies))
        if (wrong := stood.impossible.get(entry.id)) is not None:
            said = f"{wrong.what} {wrong.remedy}"
            followed = followed.told(_left_out(day, said, entry))
            continue
        try:
            followed = _one(followed, entry, catalogue, rng, other, harvested=harvested)
        except CombwrightError as error:
            told = (*told, _left_out(day, str(error), entry))
        followed = followed.told(*told)
    since = _standing_since(followed.belief, entries)
    return replace(followed, belief=replace(followed.belief, since=since))


def _left_out(day: date, why: str, entry: Noted) -> str:
    return f"{day:%d %B %Y}: {why} The belief leaves this {entry.kind} out."


def _standing_since(belief: Belief, entries: Iterable[Noted]) -> tuple[Since, Since]:
    """After the keeper changed queen or bees, what follows from that is no hidden trouble."""
    if any(isinstance(entry, Split | Unite | Queen) and not cuts_cells(entry) for entry in entries):
        now = Since.now(belief.colonies)
        return now, now
    return belief.since


def _one(
    followed: Followed,
    entry: Noted,
    catalogue: Catalogue,
    rng: np.random.Generator,
    other: Other,
    *,
    harvested: bool,
) -> Followed:
    colonies, colony = followed.belief.colonies, followed.belief.colony
    match entry:
        case Split() if entry.colony == colony:
            divide(colonies, entry, catalogue)
            return followed
        case Unite() if entry.into == colony:
            joining = other(entry.colony, entry.on)
            if joining is None or entry.colony == colony:
                return followed.told(
                    f"{entry.on:%d %B %Y}: {entry.colony} cannot be united into {colony}; "
                    "there is no such other colony in the book by then."
                )
            unite(copied(joining.belief.colonies), colonies)
            return followed
        case Unite() | End():
            return replace(followed, has_ended=True)
        case Move():
            return replace(followed, yard=entry.yard)
        case _:
            standing = act(entry, colonies, followed.standing, catalogue, rng, harvested=harvested)
            return replace(followed, standing=standing)


def divide(colonies: Any, entry: Split, catalogue: Catalogue) -> tuple[Any, Standing]:
    """Take a split from a colony in place; give the new colony and how it stands."""
    hive = catalogue.hive(entry.hive)
    standing = usual(hive)
    new = split(
        colonies,
        hive,
        standing.set_up,
        frames_of_bees=entry.frames_of_bees,
        frames_of_brood=entry.frames_of_brood,
        frames_of_stores=entry.frames_of_stores,
        goes_with=entry.goes_with,
    )
    return new, standing


def cuts_cells(entry: Noted) -> bool:
    """Tell whether all queen cells were knocked down."""
    return isinstance(entry, Queen) and entry.event == "cells knocked down"


def last_cells(entry: Noted, colonies: Any) -> tuple[str, ...]:
    """Say when the cells that were knocked down were probably all that a colony had of a queen."""
    on_cells = float(np.mean(colonies["queen"] == CELL))
    if not cuts_cells(entry) or on_cells <= LIKELY:
        return ()
    said = (
        f"{entry.on:%d %B %Y}: all queen cells were knocked down in a colony that had no queen "
        f"beside them (chance {in_percent(on_cells)}): the belief takes it to be queenless. If "
        "one cell was left, put this entry right: “one cell left”."
    )
    return (said,)
