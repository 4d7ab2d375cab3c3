"""The queen: laying, virgin or gone, and when to look, wait or give her a successor."""

from datetime import timedelta
from typing import Any, Final

import numpy as np

from combwright.advice.actions import Action
from combwright.advice.bee_acts import EggFrame, LeaveCells, LeaveShut, Look, Requeen, Uniting, Wait
from combwright.advice.costs import cost_of
from combwright.advice.deciding import Deciding
from combwright.advice.decision import Decision
from combwright.advice.numbers import is_in_months, is_in_season, numbers
from combwright.advice.situation import Situation
from combwright.advice.weighing import Weighed, gain, weigh
from combwright.advice.words.money_words import money_words
from combwright.simulation.columns import (
    CELL,
    DRONE_LAYER,
    LAYING,
    LAYING_WORKERS,
    QUEENLESS,
    VIRGIN,
)
from combwright.simulation.hands.actions import change_queen
from combwright.simulation.step.shapes import YEAR
from combwright.terms.entries import Visit
from combwright.terms.percent import in_percent
from combwright.terms.ranked import median

PARAMETERS: Final = numbers("queen")
FEWEST_FOR_A_QUEEN: Final = PARAMETERS["fewest_bees"].value
WAIT: Final = (PARAMETERS["wait_least"].value, PARAMETERS["wait_most"].value)


def decide(deciding: Deciding) -> Decision:
    """Decide what the belief about the queen asks for."""
    situation = deciding.situation
    state = situation.colonies["queen"]
    shares = {
        "laying": float(np.mean(state == LAYING)),
        "virgin": float(np.mean(state == VIRGIN)),
        "cell": float(np.mean(state == CELL)),
        "none": float(np.mean(state == QUEENLESS)),
        "drone layer": float(np.mean(state == DRONE_LAYER)),
        "laying workers": float(np.mean(state == LAYING_WORKERS)),
    }
    inputs = {f"queen_{name.replace(' ', '_')}": share for name, share in shares.items()}
    if shares["laying"] >= PARAMETERS["worry"].value:
        return _in_time(situation, shares["laying"], inputs)
    drones = shares["drone layer"] + shares["laying workers"]
    if drones > max(shares["virgin"] + shares["cell"], shares["none"]):
        return _only_drones(situation, shares, inputs)
    waiting = shares["virgin"] + shares["cell"]
    if waiting >= max(shares["none"], shares["laying"]):
        return _wait(situation, shares, inputs)
    if shares["laying"] > shares["none"]:
        return _in_time(situation, shares["laying"], inputs)
    return _without(situation, shares, inputs)


def _in_time(situation: Situation, laying: float, inputs: dict[str, float]) -> Decision:
    """Leave a laying queen, unless a young one is worth more than her price."""
    years = median(situation.colonies["queen_age"]) / YEAR
    inputs = {**inputs, "queen_years": years}
    there = f"A laying queen is there with {in_percent(laying)}; she has laid for {years:.1f} years"
    may_be = years >= PARAMETERS["old_years"].value
    if not may_be or not is_in_season(situation.on, PARAMETERS, "season"):
        looks = _in_doubt(situation, laying)
        return Decision(topic="queen", actions=looks, because=(f"{there}.",), inputs=inputs)
    refused = (1.0 - PARAMETERS["accepted"].value) * queen_loss(situation)
    left, given = _without_and_with(situation, -refused)
    brought = gain(given, left)
    inputs |= {"worth_more": brought.money}
    if not brought.is_worth_it:
        told = f"{there}: a young one would not be worth her price now."
        looks = _in_doubt(situation, laying)
        return Decision(topic="queen", actions=looks, because=(told,), inputs=inputs)
    because = (
        f"{there}: from the second year on a queen lays less each year, and her colony swarms more "
        f"readily. A young one is worth {money_words(inputs['worth_more'])} more."
    )
    acts = _given(situation, queen_loss(situation))
    return Decision(topic="queen", actions=acts, because=(because,), inputs=inputs)


def _in_doubt(situation: Situation, laying: float) -> tuple[Action, ...]:
    """Look for eggs again soon, where to miss that she is gone costs more than a visit."""
    if laying == 1.0 or is_in_months(situation.on, PARAMETERS, "rests"):
        return ()
    if (1.0 - laying) * queen_loss(situation) <= situation.prices.visit:
        return ()
    again = situation.on + timedelta(days=PARAMETERS["look_again"].value)
    return (Look(at="eggs", on=again, if_none="test frame"),)


def _given(situation: Situation, at_stake: float, *, is_lost: bool = False) -> tuple[Action, ...]:
    """Give a queen, and look for her eggs where to miss that she was refused costs more."""
    given = Requeen(is_lost=is_lost)
    if (1.0 - PARAMETERS["accepted"].value) * at_stake <= situation.prices.visit:
        return (given,)
    given_on = situation.on + timedelta(days=_until_queens(situation))
    lays = given_on + timedelta(days=PARAMETERS["laid_by_days"].value)
    return given, Look(at="eggs", on=lays, if_none="test frame")


def _until_queens(situation: Situation) -> int:
    """Give the days until mated queens are to be had."""
    first = int(PARAMETERS["queens_from"].value)
    return max(0, first - situation.on.timetuple().tm_yday)


def queen_loss(situation: Situation) -> float:
    """Give what a colony loses with its queen."""
    return PARAMETERS["loss_share"].value * situation.account.swarm_loss


def introduced(colonies: Any) -> None:
    """Give colonies a bought queen that lays, in place."""
    change_queen(colonies, "introduced", age_days=PARAMETERS["new_days"].value)


def _without_and_with(situation: Situation, besides: float = 0.0) -> list[Weighed]:
    """Weigh the season as the queen is, and with a bought one, who may bring or cost more."""
    changes, works = [lambda _: None, introduced], [(), (Requeen(),)]
    return weigh(situation, changes, works, besides=[0.0, besides])


def _wait(situation: Situation, shares: dict[str, float], inputs: dict[str, float]) -> Decision:
    waiting = situation.colonies[np.isin(situation.colonies["queen"], (CELL, VIRGIN))]
    clock = np.where(
        waiting["queen"] == VIRGIN,
        waiting["queen_clock"],
        waiting["queen_clock"] - PARAMETERS["emerges"].value,
    )
    left = int(np.clip(median(PARAMETERS["lays_by"].value - clock), *WAIT))
    look = situation.on + timedelta(days=left)
    casts = (LeaveCells(which="one good one"),) if _may_cast(situation) else ()
    actions = (
        *casts,
        LeaveShut(why="queen is likely", until=look),
        Look(at="eggs", on=look, if_none="test frame"),
    )
    because = (
        f"Laying {in_percent(shares['laying'])}, virgin {in_percent(shares['virgin'])}, cell "
        f"{in_percent(shares['cell'])}, none {in_percent(shares['none'])}. A queen lays two to "
        "three weeks after she emerges; opened at midday, one on her flight may be lost."
    )
    return Decision(topic="queen", actions=actions, because=(because,), inputs=inputs)


def _only_drones(
    situation: Situation, shares: dict[str, float], inputs: dict[str, float]
) -> Decision:
    """Replace a drone layer while her bees are worth a queen; unite where workers lay.

    Common practice, no source: laying workers kill queens and tear down cells, and a frame of brood
    among them is lost.
    """
    inputs = {**inputs, "frames_of_bees": situation.bees}
    queenright = shares["laying"] + shares["virgin"] + shares["cell"]
    is_sure = _saw_drone_brood(situation) or _missed_twice(situation)
    if queenright > PARAMETERS["unite_laying"].value or not is_sure:
        return _again(situation, shares, inputs)
    without, with_her = _without_and_with(situation)
    told = _given(situation, with_her.ahead.mean - without.ahead.mean)
    if shares["laying workers"] > shares["drone layer"]:
        told = (Uniting(why="laying workers"),)
    elif _is_past_a_queen(situation):
        told = (Uniting(why="drone layer"),)
    because = (
        f"A drone layer with {in_percent(shares['drone layer'])}, laying workers with "
        f"{in_percent(shares['laying workers'])}: no worker brood follows, and the bees grow old."
    )
    return Decision(topic="queen", actions=told, because=(because,), inputs=inputs)


def _is_past_a_queen(situation: Situation) -> bool:
    """Tell whether no queen is to be had any more, or too few bees will be left by then."""
    halvings = _until_queens(situation) / PARAMETERS["halves_in"].value
    is_late = situation.on.timetuple().tm_yday > PARAMETERS["queens_to"].value
    return is_late or situation.bees < FEWEST_FOR_A_QUEEN * 2.0**halvings


def _may_cast(situation: Situation) -> bool:
    """Tell whether more swarms may follow the first: most members live on its cells."""
    from_swarm = (situation.colonies["queen"] == CELL) & (situation.colonies["swarmed"] > 0.0)
    return float(np.mean(from_swarm)) >= PARAMETERS["worry"].value


def _again(situation: Situation, shares: dict[str, float], inputs: dict[str, float]) -> Decision:
    """Look for eggs once more: to unite cannot be undone, and costs a colony that has a queen."""
    look = situation.on + timedelta(days=PARAMETERS["look_again"].value)
    because = (
        f"Laying {in_percent(shares['laying'])}, a drone layer "
        f"{in_percent(shares['drone layer'])}, laying workers "
        f"{in_percent(shares['laying workers'])}: a second look before anything that cannot be "
        "undone."
    )
    actions = (Look(at="eggs", on=look),)
    return Decision(topic="queen", actions=actions, because=(because,), inputs=inputs)


def _missed_twice(situation: Situation) -> bool:
    """Tell whether eggs were looked for and not found at the last two looks."""
    looked = [each.eggs for each in situation.history if isinstance(each, Visit)]
    return [eggs for eggs in looked if eggs is not None][-2:] == [False, False]


def _tested(situation: Situation) -> tuple[Action, ...]:
    """Put a test frame in, and be there again when it tells."""
    tells = situation.on + timedelta(days=PARAMETERS["test_days"].value)
    return EggFrame(), Look(at="cells on the test frame", on=tells)


def _saw_drone_brood(situation: Situation) -> bool:
    """Tell whether the last two looks that told the kind of brood found none of workers."""
    kinds = [each.brood_kind for each in situation.history if isinstance(each, Visit)]
    told = [kind for kind in kinds if kind is not None][-2:]
    return len(told) == 2 and "worker brood" not in told


def _without(situation: Situation, shares: dict[str, float], inputs: dict[str, float]) -> Decision:
    """Give a queenless colony a queen while there are any, or unite it."""
    bees = situation.bees
    inputs = {**inputs, "frames_of_bees": bees}
    told = _given_at_once(situation, shares["none"]) or _tested(situation)
    if is_in_months(situation.on, PARAMETERS, "rests"):
        told = (Wait(until_month=int(PARAMETERS["rests_to_month"].value) + 1),)
    elif bees < FEWEST_FOR_A_QUEEN and situation.on.month <= PARAMETERS["unite_to_month"].value:
        told = (Uniting(why="queenless"),)
    because = (
        f"No queen with {in_percent(shares['none'])}, laying with "
        f"{in_percent(shares['laying'])}, on {bees:.0f} frames of bees."
    )
    return Decision(topic="queen", actions=told, because=(because,), inputs=inputs)


def _given_at_once(situation: Situation, none: float) -> tuple[Action, ...]:
    """Give a queen without a test frame, where a visit for it costs more than the doubt left.

    Two looks without eggs come first: bees with a queen or a virgin kill the one that is given.
    """
    is_to_be_had = not _until_queens(situation) and not _is_past_a_queen(situation)
    wasted = (1.0 - none) * cost_of((Requeen(),), situation.prices)
    if not is_to_be_had or not _missed_twice(situation) or wasted > situation.prices.visit:
        return ()
    without, with_her = _without_and_with(situation)
    if not gain(with_her, without).is_worth_it:
        return ()
    return _given(situation, with_her.ahead.mean - without.ahead.mean, is_lost=True)
