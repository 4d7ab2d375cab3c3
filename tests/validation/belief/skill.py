"""How much better one-week forecasts are than two rules of thumb, and in which worlds.

The rules: "same as last time", and a straight line through the last two notes. A single number
scores its distance; that is how a keeper would judge it. As a harder rival, "same as last time"
is also given a spread: the errors that it made in all other colonies of the study.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import timedelta
from typing import Final

import numpy as np
from tests.validation.belief.keeper import Floats, Habits, Years, ahead, believed, live

from combwright.belief.scoring import SCORED, crps
from combwright.belief.weighing.filter import QUANTITIES
from combwright.belief.weighing.observation import EYE, looked_at
from combwright.simulation.begin import SPREAD
from combwright.simulation.biology import BIOLOGY
from combwright.terms.streams import stream

WIDER: Final = 1.5  # colonies differ by so much more than the belief takes for granted
FROM: Final = 3  # visit from which forecasts are scored


@dataclass(frozen=True)
class Forecast:
    """One forecast for one visit, against the truth and against what was noted."""

    colony: int
    quantity: str
    against: str
    crps: float
    last_time: float  # signed error
    trend: float | None
    share: float


def differing(number: int) -> Habits:
    """A keeper of a colony whose own parameters are drawn more widely than the belief's prior."""
    rng = stream(number, "differing")
    traits = {
        name: float(np.exp(WIDER * p.value * rng.standard_normal())) for name, p in SPREAD.items()
    }
    return Habits(first_day=int(rng.integers(80, 130)), rounds_to_halves=True, traits=traits)


def misled(number: int) -> Habits:
    """A world outside the central half of the prior: forager deaths, flow, laying curve."""
    habits, rng = differing(number), stream(number, "misled")
    sign, early, high = rng.choice([-1.0, 1.0], 3)
    sd = SPREAD["forager_mortality"].value
    traits = {**habits.traits, "forager_mortality": float(np.exp(sign * 1.5 * sd))}
    biology = BIOLOGY._replace(
        season_rise=BIOLOGY.season_rise * float(np.exp(early * 20.0 / BIOLOGY.season_rise_days)),
        lay_peak=BIOLOGY.lay_peak * (1.0 + 0.15 * high),
    )
    days = int(14 * early)

    def shifted(nectar: Floats) -> Floats:
        return np.roll(nectar, days, axis=1)

    return replace(habits, traits=traits, biology=biology, nectar=shifted)


def forecasts_of(number: int, habits: Habits) -> list[Forecast]:
    """Forecast each visit of a season a week before, and score it."""
    truth = live(f"colony {number}", 730_000 + number, habits)
    book, _ = believed(truth, truth.states[-1][0] + timedelta(days=1))
    found = []
    for place in range(FROM, habits.visits - 1):
        on = truth.states[place][0]
        morning, until = on + timedelta(days=1), truth.states[place + 1][0]
        days = (until - morning).days
        drawn = ahead(book, Years(truth, morning, 200, 77), truth.name, morning, days=days)
        followed = book.follow(truth.name, morning)
        assert followed is not None
        shared = followed.belief.shared
        after = book.follow(truth.name, until + timedelta(days=1))
        assert after is not None
        seen = {s.quantity: s for s in after.scored if s.on == until}
        for quantity in SCORED:
            if quantity not in seen:
                continue
            members = QUANTITIES[quantity](drawn)
            true = float(QUANTITIES[quantity](truth.seen[place][1])[0])
            rng = stream(number, place, quantity)
            looked = EYE[quantity].draw(looked_at(drawn, shared, empty_kg=0.0)[quantity], rng)
            last, trend = seen[quantity].last_time, seen[quantity].trend
            for against, values, came in (
                ("truth", members, true),
                ("note", looked, seen[quantity].seen),
            ):
                if last is None:
                    continue
                found.append(
                    Forecast(
                        number,
                        quantity,
                        against,
                        crps(values, came),
                        last - came,
                        None if trend is None else trend - came,
                        float((values < came).mean()),
                    )
                )
    return found


def skill(found: list[Forecast]) -> Mapping[tuple[str, str], dict[str, float]]:
    """Compare forecasts with the rules: share of the score that is saved, and coverage."""
    table = {}
    for against in ("truth", "note"):
        for quantity in SCORED:
            some = [f for f in found if f.quantity == quantity and f.against == against]
            if not some:  # this keeper does not count so
                continue
            ours = np.array([f.crps for f in some])
            errors = np.array([f.last_time for f in some])
            trended = [(f.crps, abs(f.trend)) for f in some if f.trend is not None]
            with_trend = np.array(trended).mean(axis=0)
            dressed = np.array([crps(f.last_time - errors, 0.0) for f in some])
            shares = np.array([f.share for f in some])
            table[against, quantity] = {
                "forecasts": float(len(some)),
                "crps": float(ours.mean()),
                "last time": float(np.abs(errors).mean()),
                "trend": float(with_trend[1]),
                "better than last time": 1.0 - float(ours.mean() / np.abs(errors).mean()),
                "better than trend": 1.0 - float(with_trend[0] / with_trend[1]),
                "better than last time with a spread": 1.0 - float(ours.mean() / dressed.mean()),
                "within 50 %": float((np.abs(shares - 0.5) <= 0.25).mean()),
                "within 90 %": float((np.abs(shares - 0.5) <= 0.45).mean()),
            }
    return table
