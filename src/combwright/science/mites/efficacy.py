"""How well a treatment worked: from trays, from washes, and how far to trust it."""

from dataclasses import dataclass

import numpy as np

from combwright.terms.errors import NotFoundError
from combwright.terms.parameters import Parameter
from combwright.terms.ranges import within

_EMA = "EMA/CVMP/EWP/459883/2008 as given in COLOSS BEEBOOK 4.5.4, read"
ACCEPTABLE_SYNTHETIC = Parameter(95.0, "%", 95.0, 95.0, _EMA, "read")
ACCEPTABLE_OTHER = Parameter(90.0, "%", 90.0, 90.0, _EMA, "read")
LEAST_COUNTING_DAYS = Parameter(
    14.0, "days", 14.0, 24.0, "COLOSS BEEBOOK 4.5.4: until the fall is as before", "read"
)
MOST_NATURAL_SHARE = 0.2

# Share of the mites killed in trials without brood (value and one standard error or range).
TRIALS = {
    "oxalic acid trickled, winter, Ireland": Parameter(
        0.815, "share", 0.78, 0.85, "Coffey & Breen 2016, J. Apic. Res. 55, trial 1", "read"
    ),
    "oxalic acid sublimated, winter, Ireland": Parameter(
        0.952, "share", 0.936, 0.968, "Coffey & Breen 2016, J. Apic. Res. 55, trial 1", "read"
    ),
    "oxalic acid trickled after queen caging": Parameter(
        0.8957, "share", 0.48, 0.8957, "Büchler et al. 2020, J. Apic. Res. 59:764-773", "read"
    ),
    "oxalic acid sublimated after queen caging": Parameter(
        0.8825, "share", 0.48, 0.8957, "Büchler et al. 2020, J. Apic. Res. 59:764-773", "read"
    ),
}


@dataclass(frozen=True, slots=True)
class TrayEfficacy:
    """Efficacy from tray counts, in per cent, as counted and less the natural fall."""

    percent: float
    without_natural_percent: float
    passes_synthetic: bool
    passes_other: bool
    warnings: tuple[str, ...]


def natural_fall(mites: float, days: float, multiplier: float = 30.0) -> float:
    """Mites that fall by themselves in the time of a treatment, if nothing were done.

    Parameters
    ----------
    mites
        Mites in the colony, taken as level. [mites]
    days
        Length of the treatment. [days]
    multiplier
        Mites in the colony per mite fallen a day. [-]

    Returns
    -------
    float
        Natural fall. [mites]

    References
    ----------
    .. [1] See ``mite_counts.fall_multiplier`` (computed).

    Examples
    --------
    >>> natural_fall(1000, 42)
    1400.0

    """
    time = within(days, 0, 120, "The time", "days")
    standing = within(mites, 0, 1e6, "The number of mites", "mites")
    return float(standing * time / within(multiplier, 1, 1000, "The multiplier"))


def tray_efficacy(
    fallen: float, follow_up: float, natural_per_day: float = 0.0, days: float = 0.0
) -> TrayEfficacy:
    r"""Efficacy of a treatment from what fell in it and in a follow-up.

    .. math:: E = 100\, A / (A + B), \qquad E' = 100\, A' / (A' + B), \qquad A' = \max(A - n t, 0)

    Parameters
    ----------
    fallen
        Mites fallen in the treatment :math:`A`. [mites]
    follow_up
        Mites killed by a follow-up with an unrelated substance of over 95 % efficacy :math:`B`.
        [mites]
    natural_per_day
        Natural fall before the treatment or in an untreated colony :math:`n`. [mites/day]
    days
        Length of the count :math:`t`; 0 if not known. [days]

    Returns
    -------
    TrayEfficacy
        Both efficacies, whether :math:`E` meets the limits, and what to mind. :math:`E'` is a
        lower bound: natural fall shrinks with the mites.

    References
    ----------
    .. [1] COLOSS BEEBOOK 4.5.4.2.6, after EMA/CVMP/EWP/459883/2008 (read): at least 95 % for
       synthetic substances, 90 % for others.

    Examples
    --------
    >>> result = tray_efficacy(900, 100)
    >>> result.percent, result.passes_other, result.passes_synthetic
    (90.0, True, False)

    """
    a = float(within(fallen, 0, 1e6, "Mites fallen in the treatment", "mites"))
    b = float(within(follow_up, 0, 1e6, "Mites killed in the follow-up", "mites"))
    within(a + b, 1, 2e6, "Mites fallen in all", "mites", remedy="Without mites nothing is shown.")
    time = float(within(days, 0, 120, "The time", "days"))
    natural = float(within(natural_per_day, 0, 5000, "The natural fall", "a day")) * time
    killed = max(a - natural, 0.0)
    percent = 100 * (a / (a + b))
    return TrayEfficacy(
        percent=percent,
        without_natural_percent=100 * (killed / (killed + b)) if killed + b else 0.0,
        passes_synthetic=percent >= ACCEPTABLE_SYNTHETIC.value,
        passes_other=percent >= ACCEPTABLE_OTHER.value,
        warnings=tuple(_warnings(a, natural, time)),
    )


def _warnings(fallen: float, natural: float, days: float) -> list[str]:
    said = []
    if days == 0 or natural == 0:
        said.append(
            "Mites also fall by themselves and count as killed here: give the natural fall before "
            "the treatment and its days, or count an untreated colony beside it."
        )
    elif natural > MOST_NATURAL_SHARE * fallen:
        said.append(
            f"About {natural:.0f} of the {fallen:.0f} mites would have fallen anyway: the efficacy "
            "as counted is too high."
        )
    if 0 < days < LEAST_COUNTING_DAYS.value:
        said.append("Count for at least 14 days: mites sealed in before the treatment fall later.")
    return said


def henderson_tilton(
    treated_before: float, treated_after: float, untreated_before: float, untreated_after: float
) -> float:
    r"""Efficacy from washes of treated and untreated colonies.

    .. math:: 100 \left(1 - \frac{T_a\, C_b}{T_b\, C_a}\right)

    Parameters
    ----------
    treated_before, treated_after
        Mites per 100 bees in treated colonies :math:`T_b`, :math:`T_a`. [-]
    untreated_before, untreated_after
        The same in untreated ones :math:`C_b`, :math:`C_a`. [-]

    Returns
    -------
    float
        Efficacy; negative if the treated fared worse. [%]

    References
    ----------
    .. [1] C. F. Henderson and E. W. Tilton, J. Econ. Entomol. 48:157-161, 1955 (from memory).

    Examples
    --------
    >>> henderson_tilton(10, 1, 10, 20)
    95.0

    """
    within([treated_before, untreated_after], 1e-9, 1e6, "Mites in these two counts")
    within([treated_after, untreated_before], 0, 1e6, "Mites in these two counts")
    return 100 * (1 - treated_after * untreated_before / (treated_before * untreated_after))


def efficacy_without_control(before: float, after: float, rate: float, days: float) -> float:
    r"""Efficacy from two counts of one colony, less the growth to be expected.

    .. math:: 100 \left(1 - \frac{M_a}{M_b e^{rt}}\right)

    Parameters
    ----------
    before, after
        Mites before and after, by the same method. [mites]
    rate
        Growth to be expected without treatment. [per day]
    days
        Time between the counts. [days]

    Returns
    -------
    float
        Efficacy. [%]

    References
    ----------
    .. [1] Exponential growth, see ``mite_growth.grown`` (computed).

    Examples
    --------
    >>> efficacy_without_control(100, 10, 0.0, 30)
    90.0

    """
    start = within(before, 1e-9, 1e7, "Mites before")
    growth = within(rate, -1, 1, "The growth rate", "per day") * within(days, 0, 400, "The time")
    return float(100 * (1 - within(after, 0, 1e7, "Mites after") / (start * np.exp(growth))))


def removal_rate(days: float, removed_share: float = 0.9) -> float:
    r"""Daily rate at which a treatment removes mites, from the time it takes.

    .. math:: -\ln(1 - q) / t

    Parameters
    ----------
    days
        Time :math:`t`. [days]
    removed_share
        Share gone by then :math:`q`. [-]

    Returns
    -------
    float
        Rate, net of growth. [per day]

    References
    ----------
    .. [1] Parasitologia 4(1):6, 2024 (abstract read): 90 % gone after 50.9 and 28.4 days with two
       amitraz strips.

    Examples
    --------
    >>> round(removal_rate(50.9), 4)
    0.0452

    """
    share = within(removed_share, 0.01, 0.9999, "The share gone", remedy="Give 90 % as 0.9.")
    return float(-np.log1p(-share) / within(days, 0.5, 400, "The time", "days"))


def survivors_of_trial(trial: str, mites: float) -> float:
    """Mites left after a treatment that works as it did in a published trial.

    Parameters
    ----------
    trial
        Key of ``TRIALS``.
    mites
        Mites before. [mites]

    Returns
    -------
    float
        Mites left. [mites]

    References
    ----------
    .. [1] See ``TRIALS``; each names its source.

    Examples
    --------
    >>> round(survivors_of_trial("oxalic acid trickled, winter, Ireland", 1000))
    185

    """
    if trial not in TRIALS:
        raise NotFoundError(f"No trial is called {trial}.", remedy=f"Known: {'; '.join(TRIALS)}.")
    return float(within(mites, 0, 1e7, "The number of mites", "mites") * (1 - TRIALS[trial].value))
