"""What a colony with two notes profits from twenty neighbours."""

from dataclasses import dataclass
from datetime import timedelta
from typing import Final

from tests.validation.belief.keeper import Habits, ahead, believed, live

from combwright.belief.scoring import crps
from combwright.belief.sharing.pooling import FLOW_SPREAD, moments_of, pool
from combwright.belief.sharing.shared import EYE_SPREAD, EYES
from combwright.belief.weighing.filter import QUANTITIES
from combwright.terms.streams import stream

NEIGHBOURS: Final = 20
DAYS: Final = 21


@dataclass(frozen=True)
class Gain:
    """Scores three weeks ahead of a colony with two notes, alone and with its neighbours."""

    quantity: str
    alone: float
    together: float


def gains_of(yard: int) -> list[Gain]:
    """Follow one yard whose flow and keeper differ from what the belief takes for granted."""
    rng = stream(yard, "yard")
    flow = float(rng.normal(0.0, FLOW_SPREAD.value))
    eyes = {eye: float(rng.normal(0.0, EYE_SPREAD.value)) for eye in EYES}
    day = int(rng.integers(95, 125))
    habits = Habits(first_day=day, visits=8, flow=flow, eyes=eyes, troubles=False)
    moments = []
    for number in range(NEIGHBOURS):
        truth = live(f"neighbour {number}", 40000 + 100 * yard + number, habits)
        on = truth.states[-1][0] + timedelta(days=1)
        followed = believed(truth, on)[0].follow(truth.name, on)
        assert followed is not None
        moments.append(moments_of(followed.belief))
    young = Habits(first_day=day + 42, visits=2, flow=flow, eyes=eyes, troubles=False)
    found = []
    for number in range(5):
        truth = live(f"young {number}", 60000 + 100 * yard + number, young)
        last, state = truth.states[-1]
        on = last + timedelta(days=1)
        later = truth.onward(truth.onward(state, last, 1), on, DAYS)
        alone, together = (
            ahead(*believed(truth, on, pooled=lessons), truth.name, on, days=DAYS)
            for lessons in (pool([]), pool(moments))
        )
        for quantity in ("frames_of_bees", "stores_kg"):
            of = QUANTITIES[quantity]
            true = float(of(later)[0])
            found.append(Gain(quantity, crps(of(alone), true), crps(of(together), true)))
    return found
