"""The queen: laying, virgin or gone, and when to look, wait or give her a successor."""

from dataclasses import dataclass
from datetime import timedelta
from typing import Final

import numpy as np

from combwright.advice.decision import Decision
from combwright.advice.situation import Situation
from combwright.advice.words.wording import day_words
from combwright.simulation.columns import CELL, LAYING, QUEENLESS, VIRGIN

WORRY: Final = 0.5  # chance of no laying queen from which something is done
OLD_YEARS: Final = 1.7  # of laying, from which a queen is replaced before she fails; judgement
REQUEEN_SEASON: Final = (140, 235)  # days of the year in which mated queens are to be had
FEWEST_FOR_A_QUEEN: Final = 3.0  # frames of bees below which a queen is wasted; judgement
LAYS_BY: Final = 24.0  # days after emergence by which a virgin should lay


@dataclass(frozen=True)
class QueenPlan:
    """The decision, and whether a queen is to be given."""

    decision: Decision
    give_queen: bool = False
    keep_out: bool = False
    unite: bool = False
    requeen: bool = False


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
        return _in_time(situation, shares["laying"], inputs)
    if shares["virgin"] + shares["cell"] >= shares["none"]:
        return QueenPlan(_wait(situation, shares, inputs), keep_out=True)
    return _without(situation, shares, inputs)


def _in_time(situation: Situation, laying: float, inputs: dict[str, float]) -> QueenPlan:
    """Leave a laying queen, or give her a successor while she is still good."""
    years = float(np.median(situation.colonies["queen_age"])) / 365.0
    inputs = {**inputs, "queen_years": years}
    there = f"A laying queen is there with {laying:.0%}; she has laid for {years:.1f} years"
    first, last = REQUEEN_SEASON
    in_season = first <= situation.on.timetuple().tm_yday <= last
    if years < OLD_YEARS or not in_season:
        return QueenPlan(Decision("queen", (), (f"{there}.",), inputs))
    job = "Replace the queen by a young mated one, when you have one; the old one goes first."
    because = (
        f"{there}: from the second year on a queen lays about a tenth less each year, and her "
        "colony swarms more readily."
    )
    return QueenPlan(Decision("queen", (job,), (because,), inputs), requeen=True)


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


def _without(situation: Situation, shares: dict[str, float], inputs: dict[str, float]) -> QueenPlan:
    """Give a queenless colony a queen while there are any, or unite it."""
    bees = situation.bees
    inputs = {**inputs, "frames_of_bees": bees}
    month = situation.on.month
    unite = bees < FEWEST_FOR_A_QUEEN and 4 <= month <= 8
    if month in (10, 11, 12, 1, 2, 3):
        act = "Wait: no eggs say little while it rests. Without any by April, unite it."
    elif unite:
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
    decision = Decision("queen", (act,), because, inputs)
    return QueenPlan(decision, give_queen=not unite and 4 <= month <= 9, unite=unite)
