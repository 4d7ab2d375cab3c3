"""How good past forecasts were: each visit against what was expected before it."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from typing import Final

import numpy as np

from combwright.belief.scoring import SCORED, Scored
from combwright.records.store.book_handle import Book
from combwright.services.beliefs.resumed_replay import resumed_replay
from combwright.services.beliefs.workers import follow_each
from combwright.services.progress import Progress, silent
from combwright.services.rounds.situations import AskedRound, situations_of
from combwright.terms.errors import NotFoundError
from combwright.terms.percent import in_percent

ENOUGH: Final = 8  # forecasts from which anything is said of their bands; judgement
WORDS: Final = {
    "frames_of_bees": "Frames of bees",
    "seams_of_bees": "Seams of bees",
    "frames_of_brood": "Frames of brood",
    "combs_with_brood": "Combs with brood",
    "stores_kg": "Stores in kg",
}


@dataclass(frozen=True)
class ScoreLine:
    """How good the forecasts of one quantity were, in one colony or in all.

    ``error`` and its rivals are mean CRPS, in the unit of the quantity; ``saved`` tells what share
    of a rule's error the forecasts save, where there were notes enough for the rule.
    """

    colony: str | None
    quantity: str
    forecasts: int
    within_50: float
    within_90: float
    error: float
    error_last_time: float | None
    error_trend: float | None
    saved_last_time: float | None
    saved_trend: float | None
    in_words: str


@dataclass(frozen=True)
class ScoreReport:
    """The scores of a book up to a day: all colonies together, then each."""

    on: date
    together: tuple[ScoreLine, ...]
    by_colony: tuple[ScoreLine, ...]


def score_book(
    book: Book,
    on: date,
    *,
    colony: str | None = None,
    members: int = 200,
    seed: int = 1,
    progress: Progress = silent,
) -> ScoreReport:
    """Score each visit before a day, of one colony or all, against what was expected of it.

    Every forecast knows the colony's earlier notes, and of the weather what the book holds.
    """
    situations = situations_of(book, AskedRound(on, members=members, seed=seed))
    replay = resumed_replay(
        book,
        situations.entries,
        situations.around.season,
        on=on,
        members=members,
        seed=seed,
        with_neighbours=False,
    )
    if colony is not None and colony not in replay.colonies:
        raise NotFoundError(
            f"There is no colony “{colony}” in the book.",
            remedy=f"There are: {', '.join(replay.colonies)}.",
        )
    names = replay.colonies if colony is None else [colony]
    found = follow_each(replay, names, on, progress)
    scored = [each for followed in found if followed for each in followed.scored]
    if not scored:
        raise NotFoundError(
            f"No visit before {on:%d %B %Y} can be scored yet.",
            where=colony or book.place,
            remedy="A colony's second visit is the first with a forecast; note what you see there.",
        )
    names = list(dict.fromkeys(each.colony for each in scored))
    return ScoreReport(
        on,
        _lines(None, scored),
        tuple(line for name in names for line in _lines(name, scored)),
    )


def _lines(colony: str | None, scored: Sequence[Scored]) -> tuple[ScoreLine, ...]:
    mine = [each for each in scored if colony is None or each.colony == colony]
    groups = [[each for each in mine if each.quantity == quantity] for quantity in SCORED]
    return tuple(_line(colony, group) for group in groups if group)


def _line(colony: str | None, scored: Sequence[Scored]) -> ScoreLine:
    ours = _mean([each.crps for each in scored])
    fifty = _mean([each.within(0.5) for each in scored])
    ninety = _mean([each.within(0.9) for each in scored])
    last, saved_last = _against([(s, s.last_time) for s in scored])
    trend, saved_trend = _against([(s, s.trend) for s in scored])
    quantity = scored[0].quantity
    words = _words(quantity, len(scored), ninety, saved_last)
    return ScoreLine(
        colony,
        quantity,
        len(scored),
        fifty,
        ninety,
        ours,
        last,
        trend,
        saved_last,
        saved_trend,
        words,
    )


def _mean(values: Sequence[float]) -> float:
    return float(np.mean(values))


def _against(pairs: Sequence[tuple[Scored, float | None]]) -> tuple[float | None, float | None]:
    """Give the mean error of a rule, and the share of it that the forecasts save."""
    known = [(each.crps, abs(rule - each.seen)) for each, rule in pairs if rule is not None]
    if not known:
        return None, None
    ours, theirs = np.array(known).mean(axis=0)
    return float(theirs), float(1.0 - ours / theirs) if theirs > 0.0 else None


def _words(quantity: str, count: int, ninety: float, saved: float | None) -> str:
    within = f"{round(ninety * count)} of {count} notes lay within the band for nine in ten"
    said = f"{WORDS[quantity]}: {within}"
    if count < ENOUGH:
        return f"{said}; too few to judge by."
    if ninety < 0.8:  # noqa: PLR2004  (said in the sentence)
        verdict = "the forecasts are too sure of themselves"
    elif ninety > 0.97:  # noqa: PLR2004
        verdict = "the forecasts are less sure than they could be"
    else:
        verdict = "the forecasts are as sure as they should be"
    if saved is None:
        return f"{said}; {verdict}."
    better = "nearer" if saved >= 0.0 else "further off"
    return f"{said}; {verdict}, and {in_percent(abs(saved))} {better} than “same as last time”."
