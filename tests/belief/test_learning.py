"""What is counted outweighs what was forecast: three notes teach, and surprise widens."""

from collections.abc import Mapping, Sequence
from datetime import date, timedelta
from typing import Any

import numpy as np
import pytest
from tests.belief.samples import KEY, day, enters, entry, replay

from combwright.belief.following.followed import Followed
from combwright.belief.scoring import LADDER, Scored, surprise
from combwright.belief.weighing.filter import QUANTITIES
from combwright.belief.weighing.observation import EYE
from combwright.terms.entries import HowCounted, Noted, Visit

WEEKS = (7, 14, 21)
SAYS: list[Noted] = [
    HowCounted(id=KEY, on=day(0), brood="frames filled", bees="frames covered"), *enters()
]  # fmt: skip


def after(seen: Mapping[str, Sequence[float]], until: int) -> Followed:
    """Follow a colony of six frames with weekly notes."""
    notes = list(SAYS)
    for place, number in enumerate(WEEKS[: max((len(one) for one in seen.values()), default=0)]):
        values: dict[str, Any] = {name: each[place] for name, each in seen.items()}
        notes.append(entry(Visit, number, **values))
    found = replay(notes, members=200).follow("Sorrel", day(until))
    assert found is not None
    return found


def middle(followed: Followed, quantity: str) -> float:
    return float(np.median(QUANTITIES[quantity](followed.belief.colonies)))


@pytest.fixture(scope="module")
def foreseen() -> list[Followed]:
    """What is believed week by week where nobody looked again."""
    return [after({}, number) for number in WEEKS]


@pytest.mark.parametrize(
    ("quantity", "times"),
    [
        ("frames_of_bees", 0.7),
        ("frames_of_bees", 1.25),
        ("frames_of_brood", 0.7),
        ("frames_of_brood", 1.4),
        ("stores_kg", 0.5),
        ("stores_kg", 1.6),
    ],
)
def test_a_steady_difference_is_learned_within_three_notes(
    foreseen: list[Followed], quantity: str, times: float
) -> None:
    """Counts lie well off every week: what is believed comes to within the error of one count."""
    plain = [middle(each, quantity) for each in foreseen]
    notes = [times * each for each in plain]
    off = abs(middle(after({quantity: notes}, WEEKS[2] + 1), quantity) - notes[2])
    eye = EYE[quantity]
    error = float(np.hypot(eye.relative * notes[2], eye.absolute))
    assert abs(notes[2] - plain[2]) > 1.4 * error
    assert off < error


def test_food_that_three_counts_did_not_find_is_not_believed() -> None:
    found = after({"stores_kg": (0.5, 0.0, 0.5)}, WEEKS[2] + 1)
    assert middle(found, "stores_kg") < 1.0
    assert np.quantile(QUANTITIES["stores_kg"](found.belief.colonies), 0.9) < 2.0


def scored(number: int, seen: float) -> Scored:
    on = date(2026, 5, 1) + timedelta(days=7 * number)
    return Scored("Sorrel", on, "stores_kg", seen, 5.0 + 2.0 * (LADDER - 0.5), None)


def test_bands_widen_when_notes_surprise_and_only_then() -> None:
    as_foreseen = [scored(number, 5.0 + 0.6 * (-1) ** number) for number in range(6)]
    off = [scored(number, 6.2) for number in range(6)]
    assert surprise([]) == surprise(as_foreseen) == 1.0
    assert surprise(as_foreseen[:3] + off[3:4]) < surprise(off) <= 2.0
    assert surprise(off[:2] + as_foreseen[2:]) == 1.0
