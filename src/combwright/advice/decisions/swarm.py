"""Swarm: the chance before the next visit, and the plan with its dates if cells are found."""

from dataclasses import dataclass
from datetime import date, timedelta
from typing import Final

import numpy as np

from combwright.advice.decision import Decision
from combwright.advice.situation import Situation
from combwright.advice.trial import Tried
from combwright.advice.words.wording import chance_words, day_words
from combwright.belief.following.causes import TOO_WEAK

SEASON: Final = (100, 225)  # days of the year in which cells are looked for
CHARGED_ON: Final = 3.0  # day from the egg on which there is a larva in jelly
SURE: Final = 0.5  # chance of charged cells from which the colony is divided; judgement
CUT_AGAIN: Final = 6  # days after cells were knocked down: new ones are not sealed yet; judgement
QUEENS_FROM: Final = 130  # day of the year (10 May) from which mated queens are to be had


@dataclass(frozen=True)
class SwarmPlan:
    """The decision, whether the colony is divided today, and whether it is then given a queen."""

    decision: Decision
    divide: bool = False
    give_queen: bool = False


def swarm(
    situation: Situation, planned: Tried, as_it_is: Tried, *, is_shut: bool = False
) -> SwarmPlan:
    """Tell the chance of a swarm under the plan, and divide where charged cells are likely."""
    day = situation.on.timetuple().tm_yday
    if not SEASON[0] <= day <= SEASON[1]:
        return SwarmPlan(Decision("swarm"))
    begun = float(np.mean(situation.colonies["swarm_clock"] > 0.0))
    charged = float(np.mean(situation.colonies["swarm_clock"] >= CHARGED_ON))
    bees = situation.bees
    chance = planned.chances["swarm"]
    inputs = {
        "swarm": chance,
        "swarm_as_it_is": as_it_is.chances["swarm"],
        "cells_begun": begun,
        "cells_charged": charged,
    }
    jobs = ["Look for queen cells."]
    likely, unchanged = chance_words(chance), chance_words(as_it_is.chances["swarm"])
    if chance >= situation.limits.swarm:
        jobs.append(
            f"Swarm likely ({likely} before the next visit): look on every frame, and have a nuc "
            "box ready."
        )
    because = (
        (
            f"Chance of a swarm before {day_words(situation.next_visit)}: {likely} as planned, "
            f"{unchanged} if nothing is changed; that cells are begun: {chance_words(begun)}. "
            "No published figure says when bees swarm: comb, crowding, season and the queen's age "
            "are weighed by judgement."
        ),
    )
    if is_shut:
        return SwarmPlan(Decision("swarm", (), because, inputs))
    is_due = charged >= SURE and bees >= TOO_WEAK
    divide = is_due and situation.signs_at is None
    if divide:
        today, *later = nucleus_plan(situation.on)
        jobs += [f"Charged cells are likely. {today}", *later]
    elif is_due:
        again = day_words(situation.on + timedelta(days=CUT_AGAIN))
        jobs.append(
            "Charged cells are likely. Nothing is divided in this yard now, but no swarm should "
            f"carry disease away: knock down every cell today, and again by {again}."
        )
    decision = Decision("swarm", tuple(jobs), because, inputs)
    return SwarmPlan(decision, divide=divide, give_queen=divide and day >= QUEENS_FROM)


def nucleus_plan(on: date) -> tuple[str, ...]:
    """Give the nucleus method by the day, for charged cells found today.

    Once mated queens are to be had, one takes the place of the cell that is left: that saves three
    to four weeks of laying, which are worth far more than her price.

    The clock: a cell is sealed on day 8 from its egg and the virgin emerges on day 16; an open
    cell with a larva is three to eight days old.
    """

    def day(after: int) -> str:
        return day_words(on + timedelta(days=after))

    if on.timetuple().tm_yday >= QUEENS_FROM:
        return (
            (
                "Put the queen on her frame, one of stores and two of bees into a nuc; knock down "
                "all cells here and give a mated queen in a cage. Without one leave one open "
                "cell, marked, and do not open from day 8 to day 26."
            ),
            f"{day(7)}: knock down new cells; look whether she is free and lays.",
        )
    return (
        (
            "Put the queen on her frame, one of stores and two of bees into a nuc; leave one open "
            "cell here, marked, and knock down the rest."
        ),
        f"{day(7)}: knock down new cells, leave the marked one.",
        f"{day(8)} to {day(26)}: do not open; a virgin emerges and mates.",
        f"{day(28)}: look for eggs; none: test frame, or unite with the nuc.",
    )


def swarmed_plan(on: date) -> tuple[str, ...]:
    """Give what is done when it has swarmed already."""
    look = on + timedelta(days=24)
    return (
        "It has swarmed: leave one good cell.",
        f"Do not open before {day_words(look)}; then look for eggs.",
    )
