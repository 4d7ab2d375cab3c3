"""The next visit: the longest wait that the limits on harm allow."""

from dataclasses import replace
from datetime import date, timedelta
from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.advice.bee_acts import Due, LeaveShut, Look
from combwright.advice.deciding import Deciding
from combwright.advice.decision import Decision
from combwright.advice.decisions import food, queen, space, swarm
from combwright.advice.decisions.honey import after_honey
from combwright.advice.decisions.kept_shut import is_cold
from combwright.advice.numbers import numbers
from combwright.advice.situation import Situation
from combwright.advice.swarm_chance import calibrated
from combwright.advice.trial import doing
from combwright.advice.words.wording import day_words
from combwright.belief.worlds import WORLDS
from combwright.simulation import observe
from combwright.simulation.run import run

# Longest wait by month: weekly in the swarm season, a month in winter (associations' practice).
PARAMETERS: Final = numbers("visits")
YEAR: Final = 2000  # any: of its months the names are taken
LONGEST_WAIT: Final = {
    month: int(PARAMETERS[f"{date(YEAR, month, 1):%B}".lower()].value) for month in range(1, 13)
}


def decide(deciding: Deciding) -> Decision:
    """Tell by when the colony must be seen again under the plan.

    Each day ahead, after today's work, the chance of hunger, of a queen short of room and of a
    swarm is followed; the last day within the limits counts. A virgin is left alone until she
    should lay.
    """
    shut = deciding.of(queen.decide).asks(LeaveShut)
    if shut and shut[0].until is not None:
        days = (shut[0].until - deciding.situation.on).days
        return _seen_again(deciding.situation, days, "a virgin is not disturbed before")
    situation = deciding.of(after_honey)
    made = (deciding.of(decide) for decide in (space.decide, swarm.decide, food.decide))
    work = [action for decision in made for action in decision.actions]
    planned = situation.colonies.copy()
    doing(situation, work)(planned)
    days, due = _within_limits(situation, planned, can_give_room=_can_give_room(deciding))
    told = _seen_again(situation, days, f"{due} after" if due else "nothing is due before")
    if due is None or days >= situation.days:
        return told
    by = situation.on + timedelta(days=days)
    return replace(told, actions=(Look(at="colony", by=by, due=due),))


def _seen_again(situation: Situation, days: int, reason: str) -> Decision:
    by = situation.on + timedelta(days=days)
    because = f"Seen again by {day_words(by)}: {reason} then."
    inputs = {"days_at_most": float(days)}
    return Decision(topic="next visit", because=(because,), inputs=inputs)


def _can_give_room(deciding: Deciding) -> bool:
    """Tell whether an early look could give the queen room: not in the cold, nor in vain."""
    if is_cold(deciding):
        return False
    short = deciding.of(space.decide).inputs.get("no_room", 0.0)
    return short <= deciding.situation.limits.no_room


def _within_limits(
    situation: Situation, colonies: NDArray[np.void], *, can_give_room: bool
) -> tuple[int, Due | None]:
    """Follow planned members in place to the last day within the limits; tell what breaks them."""
    most = min(LONGEST_WAIT[situation.on.month], situation.conditions.shape[1] - 1)
    colonies["hungry_days"] = colonies["short_of_room_days"] = colonies["swarmed"] = 0.0
    for day in range(most):
        today, chance = situation.conditions[:, day : day + 1], situation.luck[:, day : day + 1]
        run(colonies, today, chance, worlds=WORLDS)
        if due := _broken(situation, colonies, can_give_room=can_give_room):
            return max(1, day), due
    return most, None


def _broken(situation: Situation, colonies: NDArray[np.void], *, can_give_room: bool) -> Due | None:
    limits = situation.limits
    if _share(colonies["hungry_days"] > 0.0) > limits.hunger:
        return "food may run out"
    short = _share(colonies["short_of_room_days"] >= PARAMETERS["short_days"].value)
    if can_give_room and short > limits.no_room:
        return "the queen may be short of room"
    swarmed = _share(colonies["swarmed"] > 0.0)
    if calibrated(swarmed, len(colonies)) > limits.swarm:
        return "it may swarm"
    return "it may be dead" if _share(observe.adults(colonies) <= 0.0) > 0.5 else None


def _share(happened: NDArray[np.bool_]) -> float:
    return np.count_nonzero(happened) / len(happened)
