"""The queen: laying, virgin or gone, and when to look, wait or give her a successor."""

from dataclasses import dataclass
from datetime import timedelta
from typing import Final

import numpy as np

from combwright.advice.decision import Decision
from combwright.advice.situation import Situation
from combwright.advice.wording import day_words
from combwright.simulation import observe
from combwright.simulation.columns import CELL, LAYING, QUEENLESS, VIRGIN

WORRY: Final = 0.5  # chance of no laying queen from which something is done
LAYS_BY: Final = 24.0  # days after emergence by which a virgin should lay


@dataclass(frozen=True)
class QueenPlan:
    """The decision, and whether a queen is to be given."""

    decision: Decision
    give_queen: bool
    keep_out: bool


def queen(situation: Situation) -> QueenPlan:
    """Decide what the belief about the queen asks for."""
    state = situation.colonies["queen"]
    shares = {
        "laying": float(np.mean(state == LAYING)),
        "virgin": float(np.mean(state == VIRGIN)),
        "cell": float(np.mean(state == CELL)),
        "none": float(np.mean(state == QUEENLESS)),
    }
    inputs = {f"queen_{name}": share for name, share in shares.items()}
    if shares["laying"] >= WORRY:
        because = (f"A laying queen is there with {shares['laying']:.0%}.",)
        return QueenPlan(Decision("queen", (), because, inputs), give_queen=False, keep_out=False)
    if shares["virgin"] + shares["cell"] >= shares["none"]:
        return QueenPlan(_wait(situation, shares, inputs), give_queen=False, keep_out=True)
    return QueenPlan(_replace(situation, shares, inputs), give_queen=True, keep_out=False)


def _wait(situation: Situation, shares: dict[str, float], inputs: dict[str, float]) -> Decision:
    waiting = situation.colonies[np.isin(situation.colonies["queen"], (CELL, VIRGIN))]
    clock = np.where(
        waiting["queen"] == VIRGIN, waiting["queen_clock"], waiting["queen_clock"] - 16.0
    )
    left = int(np.clip(np.median(LAYS_BY - clock), 3.0, 40.0))
    look = situation.on + timedelta(days=left)
    jobs = (
        (
            f"A virgin or a cell is likely: keep out until {day_words(look)}, or look "
            "before 10 or after "
            "17 o'clock."
        ),
        f"{day_words(look)}: look for eggs; none: put in a test frame.",
    )
    because = (
        (
            f"Laying {shares['laying']:.0%}, virgin {shares['virgin']:.0%}, cell "
            f"{shares['cell']:.0%}, "
            f"none {shares['none']:.0%}. A queen lays two to three weeks after she "
            "emerges; opened at "
            "midday, one on her flight may be lost."
        ),
    )
    return Decision("queen", jobs, because, inputs)


def _replace(situation: Situation, shares: dict[str, float], inputs: dict[str, float]) -> Decision:
    bees = float(np.median(observe.frames_of_bees(situation.colonies)))
    late = situation.on.month in (9, 10, 11, 2, 3)
    if bees < 4.0 or late:
        act = "Unite it with a healthy neighbour through newspaper, once sure that it is queenless."
    else:
        act = (
            "Put in a frame with eggs; cells on it after 4 days: give a queen, a cell or leave one."
        )
    because = (
        (
            f"No queen with {shares['none']:.0%}, laying with {shares['laying']:.0%}, on "
            f"{bees:.0f} frames of bees."
        ),
    )
    return Decision("queen", (act,), because, inputs)
