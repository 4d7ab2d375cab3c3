"""The label of a lot, made from the book: what it says, what it lacks, what it rests on."""

from collections import defaultdict
from dataclasses import dataclass
from datetime import date
from typing import Final

from combwright.records.store.book_handle import Book
from combwright.records.store.contents import Contents
from combwright.science.honey.jars import figure_height_mm
from combwright.science.honey.label_law import (
    JarLabel,
    LabelRule,
    cautions,
    label_faults,
    label_rule,
    origin_of,
)
from combwright.science.honey.lots import best_before_words
from combwright.science.honey.trade_codes import trade_text
from combwright.services.honey.tanks import country_of, keeper_of
from combwright.terms.errors import NotFoundError

INFANTS: Final = "Not for infants under 12 months."  # advised by the trade, not law


@dataclass(frozen=True, slots=True)
class LotLabels:
    """The label of a lot and how many are needed."""

    on: date
    label: JarLabel
    rule: LabelRule
    origin: str
    words: str
    advice: str
    jars: int
    faults: tuple[str, ...]
    cautions: tuple[str, ...]
    trade_text: str = ""


def labels_of(book: Book, code: str, article: str = "") -> LotLabels:
    """Make the label of a lot for the keeper's country, by the rule of the day it was filled.

    With an ``article`` number of GS1 it says what a trade code on it would; no law asks for one.
    """
    now = book.now()
    if code not in now.lots:
        raise NotFoundError(
            f"There is no lot “{code}” in the book.",
            remedy="“combwright honey list” names the lots.",
        )
    known, keeper = now.lots[code], keeper_of(book)
    run, durable = known.run, known.durable_until
    rule = label_rule(country_of(book), run.on)
    home = rule.origins[0] if rule.origins else ""
    label = JarLabel(
        name=keeper.honey_name if keeper else "Honey",
        weight=weight_words(run.jar_g),
        net_g=run.jar_g,
        figures_mm=float(figure_height_mm(run.jar_g)),
        operator=keeper.keeper if keeper else "",
        address=keeper.address if keeper else "",
        origin=shares(now, run.honey, home),
        best_before=best_before_words(run.best_before, run.shows),
        shows_day=run.shows == "day",
        lot=run.lot,
    )
    return LotLabels(
        run.on,
        label,
        rule,
        origin_of(label, rule),
        keeper.label_text if keeper else "",
        INFANTS,
        run.jars,
        label_faults(label, rule),
        cautions(label, rule),
        # (10) says already that it is a lot: the L of the printed mark would say it twice
        trade_text(article, durable, run.lot.removeprefix("L"), run.jar_g) if article else "",
    )


def weight_words(grams: float) -> str:
    """Write a net weight, in kilograms from one kilogram on.

    Examples
    --------
    >>> weight_words(340), weight_words(1360)
    ('340 g', '1.36 kg')

    """
    return f"{grams:g} g" if grams < 1000.0 else f"{grams / 1000.0:g} kg"  # noqa: PLR2004


def shares(now: Contents, honey: str, home: str) -> tuple[tuple[str, float], ...]:
    """Give the countries of a batch by weight, the largest first, in whole percent.

    Honey of one's own hives is of the keeper's country; unweighed, it is all there is.
    """
    weights = _weights(now, honey, home, frozenset())
    total = sum(weights.values())
    if not total or len(weights) == 1:
        return tuple((country, 100.0) for country in weights or {home: 0.0} if country)
    found = [(country, round(100.0 * kg / total)) for country, kg in weights.items()]
    return tuple(sorted(found, key=lambda one: (-one[1], one[0])))


def _weights(now: Contents, honey: str, home: str, met: frozenset[str]) -> dict[str, float]:
    found: defaultdict[str, float] = defaultdict(float)
    known = now.honey.get(honey)
    for source in known.sources if known and honey not in met else ():
        kg = source.kg or 0.0
        if source.from_honey:
            inner = _weights(now, source.from_honey, home, met | {honey})
            total = sum(inner.values())
            for country, part in inner.items():
                found[country] += kg * part / total if total else kg
        else:
            found[source.country or home] += kg
    return dict(found)
