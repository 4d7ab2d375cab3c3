"""What if: the chosen plan beside the keeper's own idea, under the same luck."""

from dataclasses import asdict, dataclass
from datetime import date
from typing import Any

from combwright.advice.plan import plan
from combwright.advice.situation import Situation, band
from combwright.advice.trial import Tried, given, try_all
from combwright.records.store.book_handle import Book
from combwright.services.rounds.situations import AskedRound, situations_of
from combwright.simulation import observe
from combwright.simulation.hands.actions import refuse_impossible
from combwright.terms.set_up import SetUp

TENTHS = ("frames of bees", "frames of brood", "stores kg")


@dataclass(frozen=True)
class Idea:
    """What the keeper would rather do; ``None`` where the plan's choice is kept."""

    feed_g: int | None = None
    sugar_share: float | None = None
    frames: int | None = None
    foundation: int | None = None
    dummy_boards: int | None = None
    supers: int | None = None


@dataclass(frozen=True)
class Outcome:
    """What comes of one way by the margin after the next visit."""

    name: str
    set_up: SetUp
    feed_g: int
    chances: dict[str, float]
    expected: dict[str, tuple[float, float, float]]

    def as_json(self) -> dict[str, Any]:
        """Plain data."""
        shown = asdict(self)
        shown["set_up"] = self.set_up.model_dump()
        shown["expected"] = {
            name: dict(zip(("low", "mid", "high"), values, strict=True))
            for name, values in self.expected.items()
        }
        return shown


@dataclass(frozen=True)
class Compared:
    """The plan, the idea and doing nothing, after the same weather and luck."""

    colony: str
    until: date
    outcomes: tuple[Outcome, ...]


def whatif(
    book: Book,
    colony: str,
    on: date,
    idea: Idea,
    *,
    days: int = 7,
    members: int = 200,
    seed: int = 1,
) -> Compared:
    """Try the keeper's idea on the same members, weather and luck as the plan.

    Parameters
    ----------
    book
        The book.
    colony
        The colony.
    on
        The day.
    idea
        What the keeper would rather do.
    days, members, seed
        As for the round.

    """
    situations = situations_of(book, AskedRound(on, None, days, members, seed))
    situation = situations.of(situations.follow(colony))
    advised = plan(situation).advised
    wished = _wished(situation, advised.set_up, idea)
    grams = advised.grams if idea.feed_g is None else idea.feed_g
    share = idea.sugar_share or advised.sugar_fraction or situation.syrup_fraction
    ways = (
        ("the plan", advised.set_up, advised.grams, advised.sugar_fraction or share),
        ("your idea", wished, grams, share),
        ("nothing done", situation.standing.set_up, 0, share),
    )
    tried = try_all(situation, [given(situation, way[1], way[2], way[3]) for way in ways])
    outcomes = tuple(
        _outcome(name, set_up, fed, each)
        for (name, set_up, fed, _), each in zip(ways, tried, strict=True)
    )
    return Compared(colony, situation.next_visit, outcomes)


def _wished(situation: Situation, planned: SetUp, idea: Idea) -> SetUp:
    asked = {
        "frames": idea.frames,
        "foundation": idea.foundation,
        "dummy_boards": idea.dummy_boards,
        "supers": idea.supers,
    }
    said = {name: value for name, value in asked.items() if value is not None}
    if idea.supers is not None:
        said["excluder"] = idea.supers > 0
    wished = SetUp.model_validate({**planned.model_dump(), **said})
    refuse_impossible(situation.standing.hive, wished)
    return wished


def _outcome(name: str, set_up: SetUp, grams: int, tried: Tried) -> Outcome:
    expected = {
        "frames of bees": band(observe.frames_of_bees(tried.colonies)),
        "frames of brood": band(observe.frames_of_brood(tried.colonies)),
        "stores kg": band(observe.stores_kg(tried.colonies)),
        "room cells": band(tried.colonies["room"]),
        "mites": band(observe.mites(tried.colonies)),
    }
    rounded = {
        what: tuple(_sensible(what, value) for value in values) for what, values in expected.items()
    }
    return Outcome(name, set_up, grams, tried.chances, rounded)  # type: ignore[arg-type]


def _sensible(what: str, value: float) -> float:
    """Round to what can be seen at a hive: tenths of a frame, three digits of a count."""
    return round(value, 1) if what in TENTHS else float(round(float(f"{value:.3g}")))
