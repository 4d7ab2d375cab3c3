"""The plan for one colony: the decisions in their order, none against another."""

from dataclasses import dataclass

from combwright.advice.branches import Found, branches
from combwright.advice.food import Portion, portion
from combwright.advice.situation import Situation
from combwright.advice.space import Space, space
from combwright.kit.geometry import spacing_notice

NOT_TODAY_C = 8.0  # mean high below which a hive is not opened; common practice says 10 °C


@dataclass(frozen=True)
class Plan:
    """Everything advised for one colony until its next visit."""

    space: Space
    portion: Portion
    branches: tuple[Found, ...]
    jobs: tuple[str, ...]
    because: tuple[str, ...]
    chances: dict[str, float]
    inputs: dict[str, float]


def plan(situation: Situation) -> Plan:
    """Decide room and warmth first, then the food that fits into it, then the branches."""
    room = space(situation)
    food = portion(situation, room.set_up)
    chances = {**food.chances, "swarm": food.chances["swarm"]}
    return Plan(
        room,
        food,
        branches(situation, room, food),
        (*_first_jobs(situation), *room.jobs, *_food_jobs(food), *_last_jobs(situation, chances)),
        (*food.because, *room.because),
        chances,
        {**room.inputs, **food.inputs},
    )


def _first_jobs(situation: Situation) -> tuple[str, ...]:
    jobs = ["Look for eggs, stores, room, and any sign of disease."]
    day = situation.on.timetuple().tm_yday
    if 105 < day < 210:
        jobs.append("Look for queen cells.")
    return tuple(jobs)


def _food_jobs(food: Portion) -> tuple[str, ...]:
    if not food.grams:
        return ()
    if food.feed == "fondant":
        return (f"Lay {food.grams} g of fondant over the cluster.",)
    litres = food.grams / 1287.0
    return (f"Give {food.grams} g ({litres:.1f} L) of syrup, hand-warm, in the evening.",)


def _last_jobs(situation: Situation, chances: dict[str, float]) -> tuple[str, ...]:
    jobs = []
    set_up = situation.standing.set_up
    notice = None
    if situation.pitch_mm is not None:
        notice = spacing_notice(
            situation.standing.hive, set_up.frames, situation.pitch_mm, set_up.dummy_boards
        )
    if notice:
        jobs.append(notice)
    if chances["swarm"] >= situation.limits.swarm:
        jobs.append(
            f"Swarm likely ({chances['swarm']:.0%} before the next visit): have a nuc box ready."
        )
    return tuple(jobs)
