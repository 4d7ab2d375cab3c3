"""What if: the chosen plan beside the keeper's own idea, under the same luck."""

from collections.abc import Mapping
from dataclasses import asdict, dataclass, field
from datetime import date, timedelta
from typing import Any, Final

from combwright.advice.actions import Action, of_kind
from combwright.advice.kit_acts import Feeding
from combwright.advice.plan import Plan, plan
from combwright.advice.situation import Situation, band
from combwright.advice.stacking import set_up_after, steps_to
from combwright.advice.trial import Tried, doing, lived_on, try_all
from combwright.belief.weighing.filter import QUANTITIES
from combwright.kit.fits import refuse_impossible
from combwright.planning.round import TENTHS
from combwright.records.store.book_handle import Book
from combwright.services.beliefs.branching import Series, series_of
from combwright.services.rounds.situations import AskedRound, situations_of
from combwright.terms.set_up import SetUp

DRAWN_WAYS: Final = ("the plan", "your idea")


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
        expected = {
            name: dict(zip(("low", "mid", "high"), values, strict=True))
            for name, values in self.expected.items()
        }
        return asdict(self) | {"expected": expected}


@dataclass(frozen=True)
class Compared:
    """The plan, the idea and doing nothing, after the same weather and luck.

    ``courses`` hold, by quantity and way, the bands of the days from ``days`` on which they lie.
    """

    colony: str
    until: date
    outcomes: tuple[Outcome, ...]
    days: tuple[date, ...] = ()
    courses: Mapping[str, Mapping[str, Series]] = field(default_factory=dict)


def whatif(
    book: Book,
    colony: str,
    on: date,
    idea: Idea,
    *,
    days: int = 7,
    members: int = 200,
    seed: int = 1,
    with_courses: bool = False,
) -> Compared:
    """Try the keeper's idea on the same members, weather and luck as the plan.

    With ``with_courses`` the days on the way are kept too, of the plan and of the idea.
    """
    situations = situations_of(book, AskedRound(on, None, days, members, seed))
    situation = situations.of(situations.follow(colony))
    planned = plan(situation, with_branches=False)
    share = idea.sugar_share or planned.portion.sugar_fraction or situation.syrup_fraction
    ways = {
        "the plan": _work(situation, planned.set_up, planned.portion),
        "your idea": _wished(situation, planned, idea, share),
        "nothing done": (),
    }
    tried = try_all(situation, [doing(situation, actions) for actions in ways.values()])
    outcomes = tuple(
        _outcome(name, set_up_after(situation.standing.set_up, actions), actions, each)
        for (name, actions), each in zip(ways.items(), tried, strict=True)
    )
    drawn = {name: ways[name] for name in DRAWN_WAYS} if with_courses else {}
    on_the_way, courses = _courses(situation, drawn)
    return Compared(colony, situation.planned_until, outcomes, on_the_way, courses)


def _courses(
    situation: Situation, ways: Mapping[str, tuple[Action, ...]]
) -> tuple[tuple[date, ...], dict[str, dict[str, Series]]]:
    """Let the members live on under each way day by day, for the bands of a chart."""
    if not ways:
        return (), {}
    lived = {name: lived_on(situation, doing(situation, each)) for name, each in ways.items()}
    days = tuple(situation.on + timedelta(days=day) for day in range(situation.horizon + 1))
    return days, {
        quantity: {name: series_of(quantity, members) for name, members in lived.items()}
        for quantity in QUANTITIES
    }


def _work(situation: Situation, set_up: SetUp, portion: Feeding) -> tuple[Action, ...]:
    """Give what leads to a set-up and a portion."""
    steps = steps_to(situation.standing.hive, situation.standing.set_up, set_up)
    return (*steps, portion) if portion.grams else steps


def _wished(
    situation: Situation, planned: Plan, idea: Idea, sugar_share: float
) -> tuple[Action, ...]:
    """Give the plan's actions with what the keeper would rather do in their place."""
    asked = {
        "frames": idea.frames,
        "foundation": idea.foundation,
        "dummy_boards": idea.dummy_boards,
        "supers": idea.supers,
    }
    said: dict[str, object] = {name: value for name, value in asked.items() if value is not None}
    if idea.supers is not None:
        said["excluder"] = idea.supers > 0
    wished = SetUp.model_validate({**planned.set_up.model_dump(), **said})
    refuse_impossible(situation.standing.hive, wished)
    grams = planned.portion.grams if idea.feed_g is None else idea.feed_g
    portion = planned.portion.model_copy(update={"grams": grams, "sugar_fraction": sugar_share})
    return _work(situation, wished, portion)


def _outcome(name: str, set_up: SetUp, actions: tuple[Action, ...], tried: Tried) -> Outcome:
    grams = sum(each.grams for each in of_kind(actions, Feeding))
    expected = {
        what.replace("_", " "): tuple(_sensible(what, value) for value in band(of(tried.colonies)))
        for what, of in QUANTITIES.items()
    }
    return Outcome(name, set_up, grams, tried.chances, expected)  # type: ignore[arg-type]


def _sensible(what: str, value: float) -> float:
    """Round to what can be seen at a hive: tenths of a frame, three digits of a count."""
    return round(value, 1) if what in TENTHS else float(round(float(f"{value:.3g}")))
