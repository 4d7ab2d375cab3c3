"""Whether a sample of jars keeps to the weight on the label: by the average, or every jar."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from combwright.science.honey.jars import tolerable_error_g

TENTHS: Final = 10  # weights are held in whole tenths of a gram: no sum of them is ever off
SHORT_IN: Final = 40  # at most one jar in so many may lack more than the tolerable error


@dataclass(frozen=True, slots=True)
class NetWeights:
    """A sample of jars against its label. [g]; ``faults`` say which rule it breaks."""

    jars: int
    label_g: float
    mean_g: float
    least_g: float
    tolerance_g: float
    short: int
    faults: tuple[str, ...]


def net_weights(weights_g: Sequence[float], label_g: float, *, every_jar: bool) -> NetWeights:
    """Hold weighed jars against the three rules of the average system, or the stricter one.

    The mean may lack nothing; at most one jar in 40 may lack more than the tolerable error; none
    may lack more than twice that. A sample says so of itself, not of the jars left unweighed.

    References
    ----------
    .. [1] Packaged goods, guidance of the British government and of Irish metrology; read.

    Examples
    --------
    >>> net_weights([341, 339, 340], 340, every_jar=False).faults
    ()

    """
    tenths = [round(TENTHS * one) for one in weights_g]
    label, tolerance = round(TENTHS * label_g), round(TENTHS * float(tolerable_error_g(label_g)))
    short = sum(one < label - tolerance for one in tenths)
    far = sum(one < label - 2 * tolerance for one in tenths)
    under = sum(one < label for one in tenths)
    faults = []
    if every_jar and under:
        faults.append(f"{_jars(under)} below the weight on the label.")
    if not every_jar and sum(tenths) < label * len(tenths):
        lacking = (label * len(tenths) - sum(tenths)) / len(tenths) / TENTHS
        faults.append(f"The mean lacks {lacking:.1f} g of the weight on the label.")
    if not every_jar and short * SHORT_IN > len(tenths):
        faults.append(f"{_jars(short)} short by more than the tolerable error: 1 in 40 may be.")
    if not every_jar and far:
        faults.append(f"{_jars(far)} short by more than twice the tolerable error: none may be.")
    return NetWeights(
        len(tenths),
        label_g,
        round(sum(tenths) / len(tenths) / TENTHS, 3),
        min(tenths) / TENTHS,
        tolerance / TENTHS,
        short,
        tuple(faults),
    )


def _jars(count: int) -> str:
    return "1 jar is" if count == 1 else f"{count} jars are"
