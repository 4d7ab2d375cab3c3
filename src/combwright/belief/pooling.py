"""Learning across the yard: what the colonies of a keeper teach each other.

Every colony is first followed by its own notes alone. Where many of them lean the same way, the
cause is shared: the district's flow, or the keeper's way of counting. The common part is
estimated and all are followed again from there. It is rounded coarsely, so that one more note in
one colony seldom changes it, and the others need not be followed again.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, Final

import numpy as np

from combwright.belief.filter import Belief
from combwright.belief.shared import EYE_SPREAD, EYES
from combwright.simulation.begin import SPREAD
from combwright.terms.parameters import Parameter

FLOW: Final = "forage_success"
FLOW_SPREAD: Final = Parameter(
    0.20,
    "log sd",
    0.1,
    0.4,
    "of a district's flow between years beyond what weather and calendar explain",
    "judgement",
)
STEP: Final = 0.05  # to which shared logarithms are rounded
FEWEST: Final = 4  # colonies from which a common part is estimated; judgement


@dataclass(frozen=True)
class Pooled:
    """What neighbours teach: middles and spreads of what is shared, as logarithms."""

    middle: Mapping[str, float] = field(default_factory=dict)
    spread: Mapping[str, float] = field(default_factory=dict)

    def teach(self, colonies: Any) -> None:
        """Bring what is known of the flow into colonies at their start, in place."""
        colonies[FLOW] *= np.exp(self.middle.get(FLOW, 0.0))

    @property
    def key(self) -> str:
        """Tell one set of lessons from another."""
        return repr((sorted(self.middle.items()), sorted(self.spread.items())))


NOTHING: Final = Pooled()


def common_part(
    means: Sequence[float], sds: Sequence[float], own: float, shared: float
) -> tuple[float, float]:
    r"""Estimate what is common to colonies from their separate beliefs.

    Each colony's logarithm is a common part, with prior :math:`N(0, \tau^2)`, plus its own part,
    :math:`N(0, \sigma^2)`. Dividing the prior out of each belief leaves what its notes say.

    Parameters
    ----------
    means, sds
        Mean and standard deviation of each belief, about the prior's mean, [colony]. [log]
    own, shared
        Standard deviations of the own part and of the common part. [log]

    Returns
    -------
    tuple
        Mean and standard deviation of the common part. [log]

    Notes
    -----
    A belief that was started with the spread of the own part alone counts its own part only; so
    does one wider than its prior, from which nothing was learned.

    Examples
    --------
    >>> middle, sd = common_part([0.1] * 50, [0.1] * 50, own=0.3, shared=0.2)
    >>> 0.08 < middle < 0.12, sd < 0.06
    (True, True)

    """
    precision, pull = 1.0 / shared**2, 0.0
    for mean, sd in zip(means, sds, strict=True):
        said = 1.0 / max(sd, 1e-3) ** 2 - 1.0 / own**2
        if said <= 0.0:
            continue
        value = mean / max(sd, 1e-3) ** 2 / said
        weight = 1.0 / (own**2 + 1.0 / said)
        precision += weight
        pull += weight * value
    return pull / precision, float(precision**-0.5)


def pool(beliefs: Sequence[Belief]) -> Pooled:
    """Estimate what the colonies of one keeper in one district have in common.

    Parameters
    ----------
    beliefs
        Followed by their own notes alone, on one day.

    Returns
    -------
    Pooled
        Nothing when there are too few of them.

    """
    if len(beliefs) < FEWEST:
        return NOTHING
    middle, spread = {}, {}
    own = SPREAD[FLOW].value
    logs = [np.log(belief.colonies[FLOW]) + 0.5 * own * own for belief in beliefs]
    found, _ = common_part(*_moments(logs), own=own, shared=FLOW_SPREAD.value)
    middle[FLOW] = rounded(found)
    for eye in EYES:
        # the eye is the same for all: its own part is next to nothing
        at, sd = _same([belief.shared[eye] for belief in beliefs])
        middle[eye], spread[eye] = rounded(at), max(STEP / 2.0, rounded(sd))
    return Pooled(middle, spread)


def rounded(value: float) -> float:
    """Round to the step in which shared logarithms are told on."""
    return round(round(value / STEP) * STEP, 10) + 0.0


def _moments(logs: Sequence[Any]) -> tuple[list[float], list[float]]:
    return [float(each.mean()) for each in logs], [float(each.std()) for each in logs]


def _same(values: Sequence[Any]) -> tuple[float, float]:
    """Multiply beliefs about one and the same number, with its prior counted once."""
    prior = 1.0 / EYE_SPREAD.value**2
    precision, pull = prior, 0.0
    for each in values:
        sd = max(float(each.std()), 1e-3)
        said = max(0.0, 1.0 / sd**2 - prior)
        precision += said
        pull += float(each.mean()) / sd**2 if said > 0.0 else 0.0
    return pull / precision, float(precision**-0.5)
