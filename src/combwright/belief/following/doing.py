"""Doing to a belief what was done on a day."""

from collections.abc import Callable, Iterable
from dataclasses import replace
from datetime import date
from typing import Any

import numpy as np

from combwright.belief.following.causes import Since
from combwright.belief.following.followed import Followed
from combwright.belief.following.standing import Standing, act, usual
from combwright.belief.weighing.filter import Belief
from combwright.kit.catalogue import Catalogue
from combwright.simulation.columns import CELL
from combwright.simulation.hands.dividing import split, unite
from combwright.terms.entries import Change, End, Harvest, Move, Noted, Queen, Split, Stack, Unite
from combwright.terms.errors import CombwrightError
from combwright.terms.streams import stream

Other = Callable[[str, date], Followed | None]
MOST_BOARDS = 2
LIKELY = 0.5  # chance of living on cells alone from which knocking them down is told; judgement


def do(
    followed: Followed,
    entries: Iterable[Noted],
    day: date,
    *,
    catalogue: Catalogue,
    seed: int,
    other: Other,
) -> Followed:
    """Do to the members what was done on a day; what cannot have been is told and left out.

    Parameters
    ----------
    followed
        The colony in the morning of the day, after what was seen.
    entries
        All of the day's entries that concern it.
    day
        The day.
    catalogue
        The hives.
    seed
        Seed of the run.
    other
        Follows another colony, for a unite.

    """
    rng = stream(seed, followed.belief.colony, "done", day.toordinal())
    belief = replace(followed.belief, colonies=followed.belief.colonies.copy())
    followed = replace(followed, belief=belief)
    entries = sorted(entries, key=_turn)
    harvested = any(isinstance(entry, Harvest) for entry in entries)
    for entry in entries:
        told = (
            *contradictions(entry, followed.standing),
            *last_cells(entry, followed.belief.colonies),
        )
        try:
            followed = _one(followed, entry, catalogue, rng, other, harvested=harvested)
        except CombwrightError as error:
            notice = f"{day:%d %B %Y}: {error} The belief leaves this {entry.kind} out."
            told = (*told, notice)
        followed = followed.told(*told)
    since = _standing_since(followed.belief, entries)
    return replace(followed, belief=replace(followed.belief, since=since))


def _turn(entry: Noted) -> int:
    """Give the turn of an entry on its day, as work at a hive goes.

    Honey is taken before the supers that held it are gone, and a feeder before the next feed; how
    the stack is left has the last word.
    """
    if isinstance(entry, Harvest) or (isinstance(entry, Change) and entry.part == "feeder"):
        return 0
    return 2 if isinstance(entry, Stack | End) else 1


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
            unite(joining.belief.colonies.copy(), colonies)
            return followed
        case Unite() | End():
            return replace(followed, has_ended=True)
        case Move():
            return replace(followed, yard=entry.yard)
        case _:
            standing = act(entry, colonies, followed.standing, catalogue, rng, harvested=harvested)
            pitch = entry.pitch_mm if isinstance(entry, Stack) else None
            return replace(followed, standing=standing, pitch_mm=pitch or followed.pitch_mm)


def divide(colonies: Any, entry: Split, catalogue: Catalogue) -> tuple[Any, Standing]:
    """Take a split from a colony in place; give the new colony and how it stands."""
    hive = catalogue.hive(entry.hive)
    standing = Standing(hive, usual(hive))
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
        f"beside them (chance {on_cells:.0%}): the belief takes it to be queenless. If one cell "
        "was left, strike this entry out."
    )
    return (said,)


def contradictions(entry: Noted, standing: Standing) -> tuple[str, ...]:
    """Say what of an entry contradicts the stack as the book has it, and what was made of it."""
    now, said = standing.set_up, ""
    if isinstance(entry, Stack) and entry.supers and standing.hive.honey_super is None:
        said = f"{standing.hive.name} takes no super; the belief leaves {entry.supers} out."
    if isinstance(entry, Change) and entry.part != "feeder":
        have = {"dummy board": now.dummy_boards, "super": now.supers}.get(entry.part, now.frames)
        if -entry.count > have:
            said = f"{-entry.count} × {entry.part} taken out, but the book knows of {have} only."
        if entry.part == "dummy board" and have + entry.count > MOST_BOARDS:
            said = f"{have + entry.count} dummy boards in one box; the belief keeps {MOST_BOARDS}."
    return (f"{entry.on:%d %B %Y}: {said}",) if said else ()
