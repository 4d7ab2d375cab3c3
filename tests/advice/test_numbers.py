"""No decision weighs by a bare number: each lies in a data file with unit, range and source."""

from pathlib import Path

import pytest
from tests.bare_numbers import bare

import combwright.advice
from combwright.advice.numbers import is_between, numbers

ADVICE = Path(combwright.advice.__file__).parent
DECIDING = sorted(
    path
    for path in ADVICE.rglob("*.py")
    if "words" not in path.parts  # rounding and spelling; what they choose by is in the data too
)
ROOMS = sorted(path.stem for path in (ADVICE / "data").glob("*.toml"))
# What counts, halves, turns units or names months; none of these could be argued about.
PLAIN = {0, 1, 2, -1, 0.5, 100, 365, 1000, 13, 2000}
# Defaults of typed actions that say what a label, the law or the trade asks for.
AS_ASKED = {"kit_acts.py": {5, 7, 50}}


@pytest.mark.parametrize("path", DECIDING, ids=lambda path: str(path.relative_to(ADVICE)))
def test_no_decision_weighs_by_a_bare_number(path: Path) -> None:
    counting = PLAIN | AS_ASKED.get(path.name, set())
    assert not bare(path.read_text("utf-8"), counting=counting)


@pytest.mark.parametrize("room", ROOMS)
def test_every_number_of_a_room_is_used_by_its_name(room: str) -> None:
    """By its whole name, or by the start or end of it where names are put together."""
    texts = [path.read_text("utf-8") for path in ADVICE.rglob("*.py")]
    mine = " ".join(text for text in texts if f'numbers("{room}")' in text)
    for name in numbers(room):
        start, _, end = name.partition("_")
        named = f'"{name}"' in mine or f'"{start}' in mine or f'_{end}"' in mine
        assert named or room == "visits", name


def test_a_span_of_months_may_go_over_the_turn_of_the_year() -> None:
    inside = {first: [m for m in range(1, 13) if is_between(m, first, 2)] for first in (1, 11)}
    assert inside == {1: [1, 2], 11: [1, 2, 11, 12]}
