"""From a sample of washed or shaken bees to the mites in the colony."""

from collections.abc import Mapping
from typing import Literal

from combwright.science.mites.counts import joined_range
from combwright.science.mites.intervals import Estimate, poisson_interval
from combwright.terms.data_files import parameter, parameters
from combwright.terms.parameters import Parameter
from combwright.terms.ranges import within

Method = Literal["wash", "sugar"]

SAMPLE_TO_COLONY: Mapping[bool, Parameter] = {
    True: parameter("science/mites", "sample_with_brood"),
    False: parameter("science/mites", "sample_without_brood"),
}
RECOVERY: Mapping[Method, Parameter] = parameters("science/mites", "recovery")


def infestation(mites: int, bees: int) -> Estimate:
    """Mites per 100 bees from a washed or shaken sample, as counted.

    With its exact Poisson interval at 95 %. Mites are clumped, so the truth is wider.

    References
    ----------
    .. [1] Exact interval of a Poisson count (Garwood 1936), computed.

    Examples
    --------
    >>> sample = infestation(6, 300)
    >>> sample.mid, round(sample.low, 2), round(sample.high, 2)
    (2.0, 0.73, 4.35)

    """
    sample = float(within(bees, 20, 2000, "Bees in the sample", "bees"))
    found = int(
        within(
            mites,
            0,
            0.5 * sample,
            "Mites in the sample",
            "mites",
            remedy="More than one mite for two bees is not plausible: are mites and bees mixed up?",
        )
    )
    counted = poisson_interval(found)
    return Estimate(*(100 * count / sample for count in (counted.low, found, counted.high)))


def mites_from_sample(
    mites: int, bees: int, bees_in_colony: Parameter, *, brood: bool, method: Method = "wash"
) -> Estimate:
    r"""Mites in the colony from a washed or shaken sample of bees.

    .. math:: M = c\, \frac{n}{r\, b} B

    Its range joins those of count, recovery, factor and bees.

    ``mites``, ``bees``: mites found :math:`n` in so many bees :math:`b`. ``bees_in_colony``: adult
    bees :math:`B` and their range [bees]. ``brood``: whether the colony has brood, which sets the
    factor :math:`c`. ``method``: wash or icing sugar, which set the recovery :math:`r`.

    References
    ----------
    .. [1] K. V. Lee et al., J. Econ. Entomol. 103:1039-1050, 2010 (abstract read): with brood,
       twice the mites on adult bees.

    Examples
    --------
    >>> round(mites_from_sample(9, 300, Parameter(30e3, "bees", 24e3, 36e3, "", "read"),
    ...                         brood=True).mid)
    1800

    """
    infestation(mites, bees)
    within(bees_in_colony.value, 500, 100_000, "Bees in the colony", "bees")
    recovery, factor = RECOVERY[method], SAMPLE_TO_COLONY[brood]
    found = Parameter(
        1 / recovery.value, "", 1 / recovery.high, 1 / recovery.low, recovery.source, "computed"
    )
    scale = factor.value * found.value * bees_in_colony.value / bees
    return joined_range(poisson_interval(int(mites)), scale, [factor, found, bees_in_colony])
