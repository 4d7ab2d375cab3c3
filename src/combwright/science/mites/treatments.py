"""Ways to kill mites, as windows: brood, temperature, supers, days, how often. Never a dose.

Doses and conditions stand on the product's label. Where the label and this table differ, the
label is right.
"""

from collections.abc import Container
from dataclasses import dataclass
from typing import Literal

from combwright.science.mites.counts import BroodState
from combwright.terms.data_files import rows
from combwright.terms.parameters import Verified
from combwright.terms.ranges import within

Substance = Literal[
    "oxalic acid",
    "formic acid",
    "thymol",
    "amitraz",
    "tau-fluvalinate or flumethrin",
    "drone brood removed",
]
Needs = Literal["no brood", "works with brood", "brood and a caged queen", "needs drone brood"]
Possible = Literal["yes", "no", "check"]

LABEL = (
    "Use only a product authorised for bees in your country, in the dose and way its label says: "
    "the label and the law stand above everything shown here."
)
VAPOURS = ("formic acid", "thymol")  # they work by the air of the hive
DRONE_MONTHS = (4, 5, 6, 7)
ORDER: dict[Possible, int] = {"yes": 0, "check": 1, "no": 2}


@dataclass(frozen=True, slots=True)
class MiteTreatment:
    """One way to kill mites and the window it needs.

    ``kill_percent`` is the range of published kills of all mites under the conditions named in
    ``needs``, none where they run from full to failure; temperatures are of the outside air by
    day. ``once``: labels allow it once while a colony is without brood. [%, °C, days]
    """

    substance: Substance
    way: str
    needs: Needs
    days: tuple[int, int]
    cautions: tuple[str, ...]
    source: str
    verified: Verified
    low_c: float | None = None
    high_c: float | None = None
    kill_percent: tuple[float, float] | None = None
    supers_off: bool = True
    once: bool = False


TREATMENTS: tuple[MiteTreatment, ...] = tuple(
    MiteTreatment(**row) for row in rows("science/mite_treatments", "treatment")
)


@dataclass(frozen=True, slots=True)
class Option:
    """A treatment and whether it is possible now, with the reasons, what forbids it first."""

    treatment: MiteTreatment
    possible: Possible
    because: tuple[str, ...]


def options(
    month: int,
    brood: BroodState = "not known",
    supers: int | None = None,
    temperature_c: float | None = None,
    had: Container[str] = (),
) -> list[Option]:
    """Tell which treatments the colony and the weather allow now.

    All ways of the table: those that are possible first, then those to check.

    ``temperature_c``: temperature by day over the time of the treatment, if known [°C].
    ``had``: substances that the bees of this winter were given already.

    Examples
    --------
    >>> [option.treatment.way for option in options(12, "no brood", supers=0, temperature_c=6)
    ...  if option.possible == "yes"][:2]
    ['trickled', 'sublimated']

    """
    number = int(within(month, 1, 12, "The month"))
    if temperature_c is not None:
        within(temperature_c, -30, 45, "The temperature", "°C", remedy="Is it in Fahrenheit?")
    found = [
        _option(way, [
            _of_brood(way, number, brood), _of_supers(way, supers), _of_warmth(way, temperature_c),
            _of_others(way, had),
        ])
        for way in TREATMENTS
    ]  # fmt: skip
    return sorted(found, key=lambda option: ORDER[option.possible])


def _option(way: MiteTreatment, verdicts: list[tuple[Possible, str]]) -> Option:
    hardest = sorted(verdicts, key=lambda verdict: ORDER[verdict[0]], reverse=True)
    return Option(way, hardest[0][0], tuple(reason for _, reason in hardest if reason))


def _of_brood(way: MiteTreatment, month: int, brood: BroodState) -> tuple[Possible, str]:
    if way.needs == "needs drone brood":
        raised = month in DRONE_MONTHS and brood != "no brood"
        return ("yes", "") if raised else ("no", "colonies raise no drone brood now")
    if way.needs == "no brood":
        return _BROODLESS_ONLY[brood]
    if way.needs == "brood and a caged queen" and brood == "no brood":
        return "no", "there is no brood, so caging is not needed"
    return "yes", ""


_BROODLESS_ONLY: dict[BroodState, tuple[Possible, str]] = {
    "no brood": ("yes", "there is no brood, so every mite can be reached"),
    "brood": ("no", "it does not reach mites under the cap, and there is brood"),
    "not known": ("check", "only if there is no brood: look first"),
}


def _of_supers(way: MiteTreatment, supers: int | None) -> tuple[Possible, str]:
    if not way.supers_off or supers == 0:
        return "yes", ""
    if supers is None:
        return "check", "honey supers must be off, unless the label allows them"
    return "no", "take the honey supers off first, unless the label allows them"


def _of_warmth(way: MiteTreatment, temperature_c: float | None) -> tuple[Possible, str]:
    if way.low_c is None and way.high_c is None:
        return "yes", ""
    window = " and ".join(
        said
        for said in (
            f"above {way.low_c:g} °C" if way.low_c is not None else "",
            f"below {way.high_c:g} °C" if way.high_c is not None else "",
        )
        if said
    )
    if temperature_c is None:
        return "check", f"needs days {window}: see the forecast and the label"
    low = way.low_c if way.low_c is not None else -100
    high = way.high_c if way.high_c is not None else 100
    if low <= temperature_c <= high:
        return "yes", f"{temperature_c:.0f} °C lies in its window ({window})"
    return "no", f"needs days {window}; it has {temperature_c:.3g} °C"


def _of_others(way: MiteTreatment, had: Container[str]) -> tuple[Possible, str]:
    if way.once and way.substance in had:
        return "no", "it was given this winter, and labels allow it once; repeating it harms bees"
    return "yes", ""
