"""What was done, done to a belief: each kind of action in the book, with its own uncertainty."""

from datetime import date
from typing import Any, Final

import numpy as np

from combwright.belief.numbers import number, row
from combwright.kit.catalogue import Catalogue
from combwright.kit.items import Hive
from combwright.kit.standing import Standing, after
from combwright.simulation.columns import LAYING
from combwright.simulation.hands import actions
from combwright.simulation.observe import FULL_BROOD_SHARE
from combwright.terms.entries import (
    Change,
    Feed,
    Harvest,
    Noted,
    Queen,
    Stack,
    Treatment,
)
from combwright.terms.entries.queens import HANDLED

BROOD_FRAME_FULL: Final = number("brood_frame_full")
STORES_FRAME_FULL: Final = number("stores_frame_full")
KILL_SPREAD: Final = row("kill_spread")  # by substance


def act(
    entry: Noted,
    colonies: Any,
    standing: Standing,
    catalogue: Catalogue,
    rng: np.random.Generator,
    *,
    harvested: bool = False,
) -> Standing:
    """Do to the members, in place, what an entry says was done; give the stack afterwards.

    Where honey was ``harvested`` that day, supers taken off take no more along than was noted.
    """
    standing = after(standing, entry, catalogue)
    match entry:
        case Stack():
            _rehouse(colonies, standing.hive)
            actions.rearrange(colonies, standing.hive, standing.set_up, honey_stays=harvested)
        case Change(part="feeder"):
            if entry.count < 0:
                actions.empty_feeder(colonies)
        case Change():
            actions.rearrange(colonies, standing.hive, standing.set_up, honey_stays=harvested)
            _carry(entry, colonies, rng)
        case Feed():
            measured = 1.0 + number("feed_spread") * rng.standard_normal(len(colonies))
            warmer = max(
                0.0, (entry.temperature_c or number("feed_usual_c")) - number("feed_cool_c")
            )
            actions.feed(colonies, 1.0, entry.sugar_fraction, warmer_k=warmer)
            colonies["feeder"] += (entry.grams * measured - 1.0) * entry.sugar_fraction
            colonies["feeder_water"] += (entry.grams * measured - 1.0) * (1 - entry.sugar_fraction)
        case Treatment():
            actions.treat(colonies, entry.substance)
            _differ(colonies, KILL_SPREAD.get(entry.substance, 0.0), rng)
        case Queen():
            _queen(entry, colonies)
        case Harvest():
            actions.harvest(colonies, entry.honey_kg)
            if entry.supers:
                actions.rearrange(colonies, standing.hive, standing.set_up, honey_stays=True)
        case _:
            pass
    return standing


def _rehouse(colonies: Any, hive: Hive) -> None:
    colonies["cells_per_frame"] = hive.frame.worker_cells
    colonies["bees_per_frame"] = hive.frame.bees_full_cover


def _differ(colonies: Any, spread: float, rng: np.random.Generator) -> None:
    """Let a treatment kill faster in some members than in others, in place."""
    times = np.exp(rng.normal(-0.5 * spread * spread, spread, len(colonies)))
    for column in ("kill_bees", "kill_cells"):
        colonies[column] = 1.0 - (1.0 - colonies[column]) ** times


def _carry(change: Change, colonies: Any, rng: np.random.Generator) -> None:
    """Bring in or take away what the frames of a change held, in place."""
    frames = change.count * np.exp(number("frame_spread") * rng.standard_normal(len(colonies)))
    if change.part == "stores frame":
        sugar = frames * STORES_FRAME_FULL * colonies["cells_per_frame"]
        sugar *= colonies["sugar_per_cell"]
        colonies["ripe"] = np.maximum(0.0, colonies["ripe"] + sugar)
    if change.part == "brood frame":
        cells = frames * BROOD_FRAME_FULL * FULL_BROOD_SHARE * colonies["cells_per_frame"]
        before = colonies["sealed"].sum(axis=1)
        if change.count > 0:
            colonies["sealed"] += (cells / colonies["sealed"].shape[1])[:, None]
        else:
            share = np.clip(1.0 + cells / np.maximum(before, 1.0), number("brood_left"), 1.0)
            colonies["sealed"] *= share[:, None]
            colonies["mites_worker"] *= share[:, None]


def _queen(entry: Queen, colonies: Any) -> None:
    if entry.event in HANDLED:
        colonies["queen"] = LAYING  # a queen that is marked or clipped was there
        return
    if entry.event == "cells knocked down":
        actions.cut_cells(colonies)
        return
    if entry.event == "one cell left":
        actions.leave_one_cell(colonies)
        return
    age = number("queen_age")
    if entry.queen_year is not None:
        emerged = date(entry.queen_year, int(number("queen_month")), int(number("queen_day")))
        age = max(1.0, float((entry.on - emerged).days))
    actions.change_queen(colonies, entry.event, age_days=age)
