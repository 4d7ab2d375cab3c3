"""What each source makes of the same count: they disagree, and a keeper should see it."""

from collections.abc import Mapping

from combwright.science.mites.counts import SUMMER_MONTHS, WINTER_MONTHS, BroodState
from combwright.terms.data_files import parameters
from combwright.terms.parameters import Parameter
from combwright.terms.ranges import within

FALL: Mapping[str, Parameter] = parameters("science/mites", "fall")
SAMPLE: Mapping[str, Parameter] = parameters("science/mites", "sample")
MEASURED_IN_AUGUST = ("Delaplane & Hood 1997", "Delaplane & Hood 1999")


def fall_sources(month: int, brood: BroodState) -> list[str]:
    """Name the sources that speak of a colony in this month and state.

    References
    ----------
    .. [1] See ``FALL``: each source names the months it speaks of.

    Examples
    --------
    >>> fall_sources(12, "no brood")
    ['UK leaflet, winter', 'Martin 1998, no brood']

    """
    number = int(within(month, 1, 12, "The month"))
    summer, winter = number in SUMMER_MONTHS, number in WINTER_MONTHS
    season = "summer" if summer else "winter" if winter else "spring and autumn"
    names = [f"UK leaflet, {season}"]
    if brood != "no brood" and (brood == "brood" or not winter):
        names += ["Martin 1998, brood", "Branco 2006"]
        names += MEASURED_IN_AUGUST if summer else ()
    if brood != "brood" and not (summer and brood == "not known"):
        names.append("Martin 1998, no brood")
    july, august = 7, 8
    return names + (["German July rule"] if number in (july, august) else [])


def fall_estimate(name: str, fallen: int, days: float) -> float:
    """Mites in the colony as one source has it. [mites].

    Examples
    --------
    >>> round(fall_estimate("UK leaflet, winter", 1, 2))
    200

    """
    time = within(days, 0.25, 60, "Days of the tray", "days")
    return float(FALL[name].value * within(fallen, 0, 50_000, "Mites fallen", "mites") / time)


def sample_estimate(name: str, mites: int, bees: int, bees_in_colony: float) -> float:
    """Mites in a colony with brood as one source has it, from a sample of bees. [mites].

    Examples
    --------
    >>> round(sample_estimate("Lee 2010", 9, 300, 30_000))
    1800

    """
    sample = within(bees, 20, 2000, "Bees in the sample", "bees")
    colony = within(bees_in_colony, 500, 100_000, "Bees in the colony", "bees")
    found = within(mites, 0, 2000, "Mites in the sample", "mites")
    return float(SAMPLE[name].value * found / sample * colony)
