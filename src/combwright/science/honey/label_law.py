"""What a label on a jar of honey must show, by country and day; check the text in force."""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Final

from combwright.science.honey.jars import figure_height_mm
from combwright.terms.data_files import contents, rows
from combwright.terms.dated import dated, in_days
from combwright.terms.errors import NotFoundError
from combwright.terms.parameters import Verified

CODES: Final[Mapping[str, str]] = contents("science/label_law")["codes"]
METRIC: Final = re.compile(r"^\s*\d+(\.\d+)?\s*k?g\b")
ROUNDING: Final = 1.0  # shares in whole percent may add up to so much more or less than 100


@dataclass(frozen=True, slots=True)
class LabelRule:
    """A country's rule of labels from a day on."""

    code: str
    country: str
    law: str
    valid_from: str
    checked_on: str
    shares: bool
    share_tolerance_percent: float
    codes_below_g: float
    origins: tuple[str, ...]
    source: str
    verified: Verified

    @property
    def sentence(self) -> str:
        """The rule in one sentence."""
        return in_days(
            f"{self.country}: {self.law} (valid from {self.valid_from}; looked up in copies that "
            f"may be old on {self.checked_on}). Check the current law of your country."
        )


@dataclass(frozen=True, slots=True)
class JarLabel:
    """What a label says. ``origin`` gives percent by country, the largest first."""

    name: str
    weight: str
    net_g: float
    figures_mm: float
    operator: str
    address: str
    origin: Sequence[tuple[str, float]]
    best_before: str
    shows_day: bool
    lot: str
    same_view: bool = True

    @property
    def origin_words(self) -> str:
        """The origin as the label says it."""
        if len(self.origin) == 1:
            return f"Origin: {self.origin[0][0]}"
        return ", ".join(f"{country} {percent:g} %" for country, percent in self.origin)


RULES: Final = tuple(
    sorted(
        (LabelRule(**row) for row in rows("science/label_law", "rule")),
        key=lambda one: one.valid_from,
    )
)


def label_rule(code: str, on: date) -> LabelRule:
    """Give the rule that holds in a country on a day.

    Examples
    --------
    >>> [label_rule("IE", date(2026, 6, day)).shares for day in (13, 14)]
    [False, True]

    """
    known = [one for one in RULES if one.code == code and one.valid_from <= on.isoformat()]
    if not known:
        raise NotFoundError(
            f"No rule of labels is known here for “{code}” on {dated(on)}.",
            remedy=f"Choose one of {', '.join(sorted({one.code for one in RULES}))}.",
        )
    return known[-1]


def label_faults(label: JarLabel, rule: LabelRule) -> tuple[str, ...]:
    """Say what a label lacks; it may be right all the same where a rule is not known here.

    References
    ----------
    .. [1] Regulation (EU) 1169/2011 and Directive 2011/91/EU, by lists of food authorities; read.

    Examples
    --------
    >>> bare = JarLabel("Honey", "12 oz", 340, 4, "A. Keeper", "1 Main St", [("Ireland", 100)],
    ...     "Best before end 2028", False, "L26195-1")
    >>> label_faults(bare, label_rule("IE", date(2026, 7, 14)))
    ('The net weight must stand in grams or kilograms first.',)

    """
    return tuple(_faults(label, rule))


def _faults(label: JarLabel, rule: LabelRule) -> Iterator[str]:
    needed = {
        "The name of the food": label.name,
        "Name of the producer": label.operator,
        "The address": label.address,
        "The country of origin": label.origin,
        "A best before date": label.best_before,
    }
    yield from (f"{what} is missing." for what, told in needed.items() if not told)
    if not METRIC.match(label.weight):
        yield "The net weight must stand in grams or kilograms first."
    if not label.same_view:
        yield "Name and net weight must be seen at one glance."
    least = float(figure_height_mm(label.net_g))
    if label.figures_mm < least:
        yield f"The figures of the weight are {label.figures_mm:g} mm high: {least:g} are needed."
    if not label.lot and not label.shows_day:
        yield "A lot is missing: without it the date must show day and month."
    yield from _origin_faults(label, rule)


def _origin_faults(label: JarLabel, rule: LabelRule) -> Iterator[str]:
    percents = [percent for _, percent in label.origin]
    if len(percents) == 1 or not percents or not rule.shares:
        return
    if percents != sorted(percents, reverse=True):
        yield "The countries must stand in the order of their weight."
    if abs(sum(percents) - 100.0) > ROUNDING:
        yield f"The shares of the countries add up to {sum(percents):g} %, not to 100."


def cautions(label: JarLabel, rule: LabelRule) -> tuple[str, ...]:
    """Say what is allowed, but worth a second look.

    Examples
    --------
    >>> own = JarLabel("Honey", "340 g", 340, 4, "A. Keeper", "1 Main St", [("Ireland", 100)],
    ...     "Best before 14 July 2028", True, "")
    >>> cautions(own, label_rule("IE", date(2026, 7, 14)))
    ('Without a lot, all jars of that best before day are one lot: print one.',)

    """
    told = []
    if not label.lot and label.shows_day:
        told.append("Without a lot, all jars of that best before day are one lot: print one.")
    if label.lot and not label.lot.startswith("L"):
        told.append("A lot begins with L unless it can be told from the rest of the label.")
    if rule.shares and len(label.origin) > 1:
        told.append(
            f"Each share may be off by {rule.share_tolerance_percent:g} %; whether of the share "
            "or of the whole was not settled by what was read: keep to the first."
        )
    return tuple(told)


def origin_of(label: JarLabel, rule: LabelRule) -> str:
    """Write the origin as a country asks for it.

    Examples
    --------
    >>> two = JarLabel("Honey", "340 g", 340, 4, "A. Keeper", "1 Main St",
    ...     [("Ireland", 62), ("Spain", 38)], "Best before end 2028", False, "L26195-1")
    >>> [origin_of(two, label_rule(code, date(2026, 7, 14))) for code in ("IE", "ENG")]
    ['Ireland 62 %, Spain 38 %', 'Blend of honeys from more than one country']

    """
    if len(label.origin) > 1 and not rule.shares:
        return "Blend of honeys from more than one country"
    if len(label.origin) > 1 and label.net_g < rule.codes_below_g:
        short = {name: code for code, name in CODES.items()}
        return ", ".join(f"{short.get(name, name)} {share:g} %" for name, share in label.origin)
    return label.origin_words
