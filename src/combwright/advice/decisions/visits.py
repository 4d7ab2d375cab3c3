"""The next visit: the longest wait that the limits on harm allow."""

from datetime import timedelta
from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.advice.decision import Decision
from combwright.advice.situation import Situation
from combwright.advice.words.wording import day_words
from combwright.simulation import observe
from combwright.simulation.run import run

# Longest wait by month: weekly in the swarm season, a month in winter (associations' practice).
LONGEST_WAIT: Final = {
    1: 28,
    2: 21,
    3: 14,
    4: 10,
    5: 7,
    6: 7,
    7: 10,
    8: 14,
    9: 21,
    10: 28,
    11: 28,
    12: 28,
}


def next_visit(situation: Situation, planned: NDArray[np.void], *, keep_out: bool) -> Decision:
    """Tell by when the colony must be seen again under the plan.

    ``planned`` holds the members after today's work. Each day ahead the chance of hunger, of a
    queen short of room and of a swarm is followed; the last day within the limits counts.
    """
    longest = LONGEST_WAIT[situation.on.month]
    most = min(longest, situation.conditions.shape[1] - 1)
    colonies = planned.copy()
    colonies["hungry_days"] = colonies["short_of_room_days"] = colonies["swarmed"] = 0.0
    reason, last = "nothing is due before", most
    for day in range(most):
        run(colonies, situation.conditions[:, day : day + 1], situation.luck[:, day : day + 1])
        broken = _broken(situation, colonies)
        if broken:
            reason, last = f"{broken} after", max(1, day)
            break
    if keep_out:
        reason, last = "a virgin is not disturbed before", max(last, situation.days)
    by = situation.on + timedelta(days=last)
    inputs = {"days_at_most": float(last)}
    jobs: tuple[str, ...] = ()
    if last < situation.days:
        jobs = (f"Look again by {by:%a} {day_words(by)}: {reason} then.",)
    return Decision("next visit", jobs, (f"Seen again by {day_words(by)}: {reason} then.",), inputs)


def _broken(situation: Situation, colonies: NDArray[np.void]) -> str:
    limits = situation.limits
    if _share(colonies["hungry_days"] > 0.0) > limits.hunger:
        return "food may run out"
    if _share(colonies["short_of_room_days"] >= 2.0) > limits.no_room:
        return "the queen may be short of room"
    if _share(colonies["swarmed"] > 0.0) > limits.swarm:
        return "it may swarm"
    return "it may be dead" if _share(observe.adults(colonies) <= 0.0) > 0.5 else ""


def _share(happened: NDArray[np.bool_]) -> float:
    return np.count_nonzero(happened) / len(happened)
