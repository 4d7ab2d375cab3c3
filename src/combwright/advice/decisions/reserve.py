"""The reserve below which a colony must not be expected to fall, and what it lacks of it."""

from dataclasses import dataclass
from typing import Final

from combwright.advice.numbers import numbers
from combwright.advice.situation import Situation
from combwright.advice.trial import fed_with, try_all
from combwright.simulation import observe
from combwright.terms.ranked import median, quantile

PARAMETERS: Final = numbers("food")


@dataclass(frozen=True)
class Lack:
    """The sugar that a colony lacks; nought or less where it lacks none. [g].

    ``food``: lest hunger come at the careful end, until some days after the next visit;
    ``reserve``: half of what it will lack of its reserve at the visit after the next, for the other
    half is given then; ``use``: what it uses beyond its nectar until the next visit. ``left_kg``
    are its stores at the visit after the next, unfed; it is rich where its stores at the next are
    far above its reserve.
    """

    food: float
    reserve: float
    use: float
    left_kg: float
    is_rich: bool


def reserve_kg(situation: Situation) -> float:
    """Give the stores below which the colony must not be expected to fall. [kg]."""
    return PARAMETERS[f"reserve_{situation.standing.hive.kind}_kg"].value


def lack_of(situation: Situation, fraction: float) -> Lack:
    """Work out what a colony lacks, by what it would use if it wanted for nothing.

    More bees, fewer stores or more days never lack less.
    """
    ample = PARAMETERS["ample_g_a_frame"].value * situation.bees * situation.horizon
    (trial,) = try_all(situation, [fed_with(situation, ample, fraction)])
    lived, visits = trial.colonies, situation.days / situation.horizon
    used = lived["used_total"]
    eaten = used - lived["gathered_total"]
    held = 1000.0 * observe.sugar_kg(situation.colonies) + situation.colonies["feeder"]
    kept = 1000.0 * reserve_kg(situation) * observe.SUGAR_IN_HONEY
    least = PARAMETERS["least_need"].value * median(used)
    next_left, last_left = (median(held - times * visits * eaten) for times in (1, 2))
    return Lack(
        food=quantile(eaten - held, 1.0 - situation.limits.hunger)[0],
        reserve=0.5 * (kept - last_left),
        use=visits * float(max(median(eaten), least)),
        left_kg=max(0.0, last_left) / (1000.0 * observe.SUGAR_IN_HONEY),
        is_rich=next_left >= PARAMETERS["rich_times"].value * kept,
    )
