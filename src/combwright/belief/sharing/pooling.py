"""Learning across the yard: what the colonies of a keeper teach each other.

Every colony is first followed by its own notes alone. Where many of them lean the same way, the
cause is shared: the district's flow, or the keeper's way of counting. The common part is
estimated and all are followed again from there. It is rounded coarsely, so that one more note in
one colony seldom changes it, and the others need not be followed again.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any, Final

import numpy as np
from scipy.special import logit

from combwright.belief.numbers import PARAMETERS, number
from combwright.belief.sharing import shared
from combwright.belief.weighing.filter import Belief
from combwright.belief.worlds import shares, taught_by
from combwright.simulation.begin import SPREAD

FLOW: Final = "forage_success"
FLOW_SPREAD: Final = PARAMETERS["flow_spread"]
Moments = Mapping[str, tuple[float, float]]  # mean and standard deviation, by what is shared
STEP: Final = number("pool_step")
FEWEST: Final = number("pool_fewest")
LEAST_CHANCE: Final = number("least_otherwise")
MOST_ODDS: Final = number("most_odds")
LEAST_SD: Final = 1e-3  # so that what is known for certain does not divide by nothing


@dataclass(frozen=True)
class Pooled:
    """What neighbours teach: middles and spreads of what is shared, as logarithms."""

    middle: Mapping[str, float] = field(default_factory=dict)
    spread: Mapping[str, float] = field(default_factory=dict)

    def teach(self, colonies: Any) -> None:
        """Bring what is known of the flow into colonies at their start, in place."""
        colonies[FLOW] *= np.exp(self.middle.get(FLOW, 0.0))

    @cached_property
    def key(self) -> str:
        """Tell one set of lessons from another."""
        return repr((sorted(self.middle.items()), sorted(self.spread.items())))


NOTHING: Final = Pooled()


def common_part(
    means: Sequence[float], sds: Sequence[float], own: float, common: float
) -> tuple[float, float]:
    r"""Estimate what is common to colonies from their separate beliefs.

    Each colony's logarithm is a common part, with prior :math:`N(0, \tau^2)`, plus its own part,
    :math:`N(0, \sigma^2)`. Dividing the prior out of each belief leaves what its notes say.

    Means and standard deviations of beliefs are taken about the prior's mean, [colony]. [log]

    Notes
    -----
    A belief that was started with the spread of the own part alone counts its own part only; so
    does one wider than its prior, from which nothing was learned.

    Examples
    --------
    >>> middle, sd = common_part([0.1] * 50, [0.1] * 50, own=0.3, common=0.2)
    >>> 0.08 < middle < 0.12, sd < 0.06
    (True, True)

    """
    precision, pull = 1.0 / common**2, 0.0
    for mean, sd in zip(means, sds, strict=True):
        said = 1.0 / max(sd, LEAST_SD) ** 2 - 1.0 / own**2
        if said <= 0.0:
            continue
        value = mean / max(sd, LEAST_SD) ** 2 / said
        weight = 1.0 / (own**2 + 1.0 / said)
        precision += weight
        pull += weight * value
    return pull / precision, float(precision**-0.5)


def moments_of(belief: Belief) -> Moments:
    """Give mean and spread of what a belief says of flow and eye, as logarithms."""
    own = SPREAD[FLOW].value
    logs = {FLOW: np.log(belief.colonies[FLOW]) + 0.5 * own * own}
    logs |= {name: belief.shared[name] for name in (*shared.EYES, *shared.OTHERWISE)}
    found = {name: (float(log.mean()), float(log.std())) for name, log in logs.items()}
    return found | {name: (share, 0.0) for name, share in shares(belief.colonies).items()}


def pool(moments: Sequence[Moments], doubts: Mapping[str, float] | None = None) -> Pooled:
    """Estimate what the colonies of one yard have in common.

    From the moments of beliefs that follow their own notes alone, on one day; nothing when there
    are too few of them. ``doubts`` are the chances from which they began that each is counted
    otherwise than its heading says.
    """
    if len(moments) < FEWEST:
        return NOTHING
    own = SPREAD[FLOW].value
    means, sds = zip(*(each[FLOW] for each in moments), strict=True)
    flow, _ = common_part(means, sds, own=own, common=FLOW_SPREAD.value)
    middle, spread = {FLOW: rounded(flow)}, {}
    for eye, usual in shared.EYES.items():
        at, sd = _same([each[eye] for each in moments], usual.value)
        middle[eye], spread[eye] = rounded(at), max(STEP / 2.0, rounded(sd))
    for name, chance in (doubts or {}).items():
        middle[name] = _odds([each[name][0] for each in moments], chance)
    told = [{name: at for name, (at, _) in each.items()} for each in moments]
    return Pooled(middle | taught_by(told), spread)


def _odds(shares: Sequence[float], chance: float) -> float:
    """Add up by how much beliefs about one way of counting moved from its chance. [log odds]."""
    told = np.clip(shares, LEAST_CHANCE, 1.0 - LEAST_CHANCE)
    moved = float((logit(told) - logit(chance)).sum())
    return float(np.clip(round(moved), -MOST_ODDS, MOST_ODDS))


def rounded(value: float) -> float:
    """Round to the step in which shared logarithms are told on."""
    return round(round(value / STEP) * STEP, 10) + 0.0


def _same(values: Sequence[tuple[float, float]], usual: float) -> tuple[float, float]:
    """Multiply beliefs about one and the same number, with its prior counted once."""
    precision, pull = 1.0 / usual**2, 0.0
    for mean, sd in values:
        said = 1.0 / max(sd, LEAST_SD) ** 2 - 1.0 / usual**2
        if said > 0.0:
            precision += said
            pull += mean / max(sd, LEAST_SD) ** 2
    return pull / precision, float(precision**-0.5)
