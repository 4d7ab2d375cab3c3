"""The next visit: the day that pays best, no later than the limits on harm allow."""

from dataclasses import replace
from datetime import date, timedelta
from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.advice.actions import Action
from combwright.advice.bee_acts import Due, LeaveShut, Look
from combwright.advice.deciding import Deciding
from combwright.advice.decision import Decision
from combwright.advice.decisions import food, queen, space, swarm
from combwright.advice.decisions.honey import after_honey
from combwright.advice.decisions.kept_shut import is_cold
from combwright.advice.lately import done_by
from combwright.advice.numbers import is_in_season, numbers
from combwright.advice.season_ahead import SWARM_SHARE, ahead_of
from combwright.advice.situation import Situation
from combwright.advice.swarm_chance import calibrated
from combwright.advice.trial import doing
from combwright.advice.weighing import apart_by
from combwright.advice.words.money_words import money_words
from combwright.advice.words.wording import day_words
from combwright.belief.worlds import WORLDS
from combwright.simulation import observe
from combwright.simulation.columns import copied
from combwright.simulation.run import run

Floats = NDArray[np.float64]
PARAMETERS: Final = numbers("visits")
YEAR: Final = 2000  # any: of its months the names are taken
# The longest wait by month where the day is not weighed (associations' practice).
USUAL_WAIT: Final = {
    month: int(wait.value)
    for month in range(1, 13)
    if (wait := PARAMETERS.get(f"{date(YEAR, month, 1):%B}".lower()))
}
LONGEST_WAIT: Final = int(PARAMETERS["longest"].value)
WAITS: Final = tuple(
    int(number.value) for name, number in PARAMETERS.items() if name.startswith("after_")
)


def decide(deciding: Deciding) -> Decision:
    """Tell when the colony is best seen again under the plan, and by when it must be.

    Each day ahead, after today's work, the chance of hunger, of a queen short of room and of a
    swarm is followed; the last day within the limits counts. In the season a later day than the
    one asked for is told if it brings more, each trip at its price. A virgin is left alone until
    she should lay.
    """
    situation = deciding.situation
    shut = deciding.of(queen.decide).asks(LeaveShut)
    if shut and shut[0].until is not None:
        days = (shut[0].until - situation.on).days
        return _seen_again(
            situation, days, {"days_at_most": float(days)}, "a virgin is not disturbed before then"
        )
    situation = deciding.of(after_honey)
    made = (deciding.of(decide) for decide in (space.decide, swarm.decide, food.decide))
    work = tuple(action for decision in made for action in decision.actions)
    most, due, swarmed = _within_limits(situation, work, can_give_room=_can_give_room(deciding))
    inputs = {"days_at_most": float(most)}
    days, gained = _pays_best(situation, work, most, swarmed)
    if days < most or due is None:
        asked = situation.on + timedelta(days=situation.days)
        reason = f"worth {money_words(gained)} more than a trip by {day_words(asked)}"
        why = f"{reason}, swarms and trips counted" if gained > 0.0 else "as you mean to"
        return _seen_again(situation, days, inputs | {"worth_more": gained}, why)
    told = _seen_again(situation, days, inputs, f"{due} after then")
    if days >= situation.days:
        return told
    by = situation.on + timedelta(days=days)
    return replace(told, actions=(Look(at="colony", by=by, due=due),))


def days_of(deciding: Deciding) -> int:
    """Give the days until the colony is best seen again."""
    return int(deciding.of(decide).inputs["days"])


def _seen_again(situation: Situation, days: int, inputs: dict[str, float], reason: str) -> Decision:
    by = situation.on + timedelta(days=days)
    because = f"Seen again by {day_words(by)}: {reason}."
    return Decision(topic="next visit", because=(because,), inputs=inputs | {"days": float(days)})


def _pays_best(
    situation: Situation, work: tuple[Action, ...], most: int, swarmed: list[float]
) -> tuple[int, float]:
    """Give the wait that was asked for, or a longer one that brings clearly more, and by how much.

    The season ahead is lived with the first visit on each day; a visit saved is worth its price,
    and a swarm that leaves before anybody comes is lost whole.
    """
    asked = min(most, situation.days)
    if not is_in_season(situation.on, PARAMETERS, "weighed"):
        return asked, 0.0
    waits = sorted({asked, most, *(wait for wait in WAITS if asked < wait < most)})
    lost = (1.0 - SWARM_SHARE) * situation.account.swarm_loss
    saved = situation.prices.visit / situation.days
    costs = {wait: lost * swarmed[wait - 1] - saved * wait for wait in waits}
    brought = ahead_of(
        situation.colonies,
        [doing(situation, work)] * len(waits),
        situation.account,
        costs=list(costs.values()),
        done=[done_by(work, situation.on)] * len(waits),
        waits=waits,
    )
    worth = {wait: ahead.money - costs[wait] for wait, ahead in zip(waits, brought, strict=True)}
    best = max(waits, key=lambda wait: float(worth[wait].mean()))
    brought_more = apart_by(worth[best] - worth[asked])
    return (best, brought_more.money) if brought_more.is_worth_it else (asked, 0.0)


def _can_give_room(deciding: Deciding) -> bool:
    """Tell whether an early look could give the queen room: not in the cold, nor in vain."""
    if is_cold(deciding):
        return False
    short = deciding.of(space.decide).inputs.get("no_room", 0.0)
    return short <= deciding.situation.limits.no_room


def _within_limits(
    situation: Situation, work: tuple[Action, ...], *, can_give_room: bool
) -> tuple[int, Due | None, list[float]]:
    """Follow planned members to the last day within the limits; tell what breaks them.

    Gives with it the share that has swarmed by each of the days. It is not calibrated: that was
    done on weekly looks, and nobody looks here.
    """
    colonies = copied(situation.colonies)
    doing(situation, work)(colonies)
    most = min(LONGEST_WAIT, situation.conditions.shape[1] - 1)
    if not is_in_season(situation.on, PARAMETERS, "weighed"):
        most = min(most, USUAL_WAIT[situation.on.month])
    swarmed: list[float] = []
    colonies["hungry_days"] = colonies["short_of_room_days"] = colonies["swarmed"] = 0.0
    for day in range(most):
        today, chance = situation.conditions[:, day : day + 1], situation.luck[:, day : day + 1]
        run(colonies, today, chance, worlds=WORLDS)
        swarmed.append(_share(colonies["swarmed"] > 0.0))
        if due := _broken(situation, colonies, swarmed[-1], can_give_room=can_give_room):
            return max(1, day), due, swarmed
    return most, None, swarmed


def _broken(
    situation: Situation, colonies: NDArray[np.void], swarmed: float, *, can_give_room: bool
) -> Due | None:
    limits = situation.limits
    if _share(colonies["hungry_days"] > 0.0) > limits.hunger:
        return "food may run out"
    short = _share(colonies["short_of_room_days"] >= PARAMETERS["short_days"].value)
    if can_give_room and short > limits.no_room:
        return "the queen may be short of room"
    if calibrated(swarmed, len(colonies)) > limits.swarm:
        return "it may swarm"
    return "it may be dead" if _share(observe.adults(colonies) <= 0.0) > 0.5 else None


def _share(happened: NDArray[np.bool_]) -> float:
    return np.count_nonzero(happened) / len(happened)
