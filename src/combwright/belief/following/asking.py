"""What the keeper is asked when notes clash with what was expected."""

from collections.abc import Sequence
from typing import Final

from combwright.belief.following.causes import ASKED_FROM, IN_WORDS
from combwright.belief.numbers import number
from combwright.belief.scoring import Scored
from combwright.belief.weighing.filter import Belief
from combwright.terms.percent import in_percent
from combwright.terms.ranked import quantile

MENTIONED: Final = number("mentioned")
TAIL: Final = number("tail")
BEYOND: Final = number("beyond")
WHAT: Final = {
    "frames_of_bees": ("frames of bees", ""),
    "seams_of_bees": ("seams of bees", ""),
    "frames_of_brood": ("frames of brood", ""),
    "combs_with_brood": ("combs with brood", ""),
    "stores_kg": ("of stores", " kg"),
}


# What is counted, what its heading says, and the other way.
WAYS: Final = {
    "frames_of_bees": ("bees_otherwise", "bees", "frames covered", "seams with bees in them"),
    "seams_of_bees": ("bees_otherwise", "bees", "seams with bees in them", "frames covered"),
    "frames_of_brood": ("brood_otherwise", "brood", "frames filled", "combs with brood in them"),
    "combs_with_brood": ("brood_otherwise", "brood", "combs with brood in them", "frames filled"),
}


def questions(scored: Sequence[Scored], after: Belief) -> tuple[str, ...]:
    """Ask the keeper, in plain words, about notes that what was expected does not explain."""
    ranked = sorted(after.chances.items(), key=lambda item: -item[1])
    likely = [
        f"{IN_WORDS[name]} ({in_percent(share)})" for name, share in ranked if share >= MENTIONED
    ]
    asked = [_asked(each, likely) for each in scored if is_surprise(each)]
    if not asked and suspected(after):
        asked = [f"From what you saw, {' or '.join(likely)}. Is that so?"]
    asked += [_counted(after, *WAYS[each.quantity]) for each in scored if _doubted(each, after)]
    return tuple(asked)


def _doubted(score: Scored, after: Belief) -> bool:
    """Tell whether what was counted fits the other way of counting far better."""
    way = WAYS.get(score.quantity)
    return way is not None and bool(after.shared[way[0]].mean() >= number("ask_counting"))


def _counted(after: Belief, way: str, what: str, said: str, other: str) -> str:
    share = float(after.shared[way].mean())
    fits = f"Your counts of {what} fit “{other}” far better than “{said}” ({in_percent(share)})"
    return f"{fits}: which do you count? Say it once, under “How you count”."


def suspected(after: Belief) -> bool:
    """Tell whether some trouble that nobody noted is likely enough to ask about it."""
    return any(share >= ASKED_FROM[name] for name, share in after.chances.items())


def is_surprise(score: Scored) -> bool:
    """Tell whether what was seen lay well beyond the forecast."""
    low, middle, high = quantile(score.ladder, TAIL, 0.5, 1.0 - TAIL)
    below, above = middle - score.seen, score.seen - middle
    return bool(below > BEYOND * (middle - low) or above > BEYOND * (high - middle))


def _asked(score: Scored, likely: Sequence[str]) -> str:
    low, high = quantile(score.ladder, number("told_from"), number("told_to"))
    what, unit = WHAT[score.quantity]
    said = f"The book expected {low:.0f} to {high:.0f}{unit} {what}, you saw {score.seen:g}{unit}"
    return f"{said}: {', '.join([*likely, 'or miscounted'])}?"
