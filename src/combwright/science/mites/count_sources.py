"""What each source makes of the same count: they disagree, and a keeper should see it."""

from collections.abc import Mapping

from combwright.science.mites.counts import SUMMER_MONTHS, WINTER_MONTHS, BroodState
from combwright.terms.parameters import Parameter, Verified
from combwright.terms.ranges import within

_OF_FALL = "mites per mite fallen a day"
_OF_SAMPLE = "mites in all per mite on bees"


def _one(value: float, unit: str, source: str, verified: Verified) -> Parameter:
    """Give what a source says as one number, without a range."""
    return Parameter(value, unit, value, value, source, verified)


_LEAFLET = "UK National Bee Unit, Managing Varroa"
_MARTIN = "model, Ecol. Modelling 109:267-281"
_BRANCO = "Apidologie 37:452-461: linear, colonies with brood only"
FALL: Mapping[str, Parameter] = {
    "UK leaflet, summer": _one(30, _OF_FALL, f"{_LEAFLET}: May to August", "from memory"),
    "UK leaflet, spring and autumn": _one(
        100, _OF_FALL, f"{_LEAFLET}: March, April, Sept., October", "from memory"
    ),
    "UK leaflet, winter": _one(400, _OF_FALL, f"{_LEAFLET}: November to February", "from memory"),
    "Martin 1998, brood": Parameter(30, _OF_FALL, 20, 40, f"{_MARTIN}: with brood", "from memory"),
    "Martin 1998, no brood": Parameter(
        224, _OF_FALL, 100, 500, f"{_MARTIN}: without brood", "from memory"
    ),
    "Branco 2006": Parameter(25, _OF_FALL, 20, 30, _BRANCO, "from memory"),
    "Delaplane & Hood 1997": _one(
        27, _OF_FALL, "3172 mites at 117 on an overnight insert, August, SE USA", "computed"
    ),
    "Delaplane & Hood 1999": Parameter(
        35, _OF_FALL, 23, 54, "4261 at 187 and 3172 at 59, August, SE USA", "computed"
    ),
    "German July rule": _one(
        300, _OF_FALL, "association leaflet, second-hand: a safety rule of thumb", "read"
    ),
}
SAMPLE: Mapping[str, Parameter] = {
    "Lee 2010": _one(
        2, _OF_SAMPLE, "J. Econ. Entomol. 103:1039-1050: brood doubles the count", "read"
    ),
    "Delaplane & Hood 1997": _one(
        2.56, _OF_SAMPLE, "3172 mites at 15 in 300 of 24 808 bees, ether roll", "computed"
    ),
    "two thirds in brood": Parameter(
        3, _OF_SAMPLE, 2, 6.7, "textbooks: 50 to 85 % of the mites sit in cells", "from memory"
    ),
}
MEASURED_IN_AUGUST = ("Delaplane & Hood 1997", "Delaplane & Hood 1999")


def fall_sources(month: int, brood: BroodState) -> list[str]:
    """Name the sources that speak of a colony in this month and state.

    Parameters
    ----------
    brood
        Whether the colony has brood.

    References
    ----------
    .. [1] See ``FALL``.

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

    Parameters
    ----------
    name
        Key of ``FALL``.
    fallen
        Mites on the tray. [mites]
    days
        Days the tray was in. [days]

    References
    ----------
    .. [1] See ``FALL``.

    Examples
    --------
    >>> round(fall_estimate("UK leaflet, winter", 1, 2))
    200

    """
    time = within(days, 0.25, 60, "Days of the tray", "days")
    return float(FALL[name].value * within(fallen, 0, 50_000, "Mites fallen", "mites") / time)


def sample_estimate(name: str, mites: int, bees: int, bees_in_colony: float) -> float:
    """Mites in a colony with brood as one source has it, from a sample of bees. [mites].

    Parameters
    ----------
    name
        Key of ``SAMPLE``.
    mites, bees
        Mites found in so many bees.
    bees_in_colony
        Adult bees. [bees]

    References
    ----------
    .. [1] See ``SAMPLE``.

    Examples
    --------
    >>> round(sample_estimate("Lee 2010", 9, 300, 30_000))
    1800

    """
    sample = within(bees, 20, 2000, "Bees in the sample", "bees")
    colony = within(bees_in_colony, 500, 100_000, "Bees in the colony", "bees")
    found = within(mites, 0, 2000, "Mites in the sample", "mites")
    return float(SAMPLE[name].value * found / sample * colony)
