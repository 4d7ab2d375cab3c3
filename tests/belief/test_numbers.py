"""Numbers that one could argue about stand in the data, not in the belief, and all are read."""

from pathlib import Path

import pytest
from tests.bare_numbers import bare

import combwright
from combwright.belief.numbers import PARAMETERS, ROWS, on_day, row

BELIEF = Path(combwright.__file__).parent / "belief"
FILES = sorted(BELIEF.rglob("*.py"))
COUNTING = {0, 1, 2, 10, 0.5}
NAMED = {  # at the head of a module: units, and guards of the arithmetic
    "WEEK_DAYS": 7.0,
    "RUNGS": 100,
    "DIGEST_BYTES": 16,
    "LEAST_SD": 1e-3,
    "LEAST_PART": 1e-3,
    "LEAST_LOG": 1e6,
    "FEWEST_MITES": 1e-3,
    "NEXT_TO_NOTHING": 1e-6,
}


@pytest.mark.parametrize("path", FILES, ids=lambda path: str(path.relative_to(BELIEF)))
def test_the_belief_has_no_bare_number(path: Path) -> None:
    assert not bare(path.read_text("utf-8"), counting=COUNTING, named=NAMED)


def test_every_number_of_the_data_is_read() -> None:
    whole = "".join(path.read_text("utf-8") for path in FILES)
    made = {f"{eye}_{part}" for eye in ("bees", "brood", "seams", "combs", "stores", "left")
            for part in ("relative", "absolute", "span")}  # fmt: skip
    made |= {f"{what}_counted_otherwise" for what in ("bees", "brood")}
    made |= {f"cells_seen_{stage}" for stage in ("quiet", "begun", "charged", "sealed")}
    assert (
        {name for name in (PARAMETERS | ROWS) if f'"{name}"' not in whole}
        <= made
        <= set(PARAMETERS | ROWS)
    )


def test_what_is_seen_of_queen_cells_is_one_of_what_can_be_seen() -> None:
    for stage in ("quiet", "begun", "charged", "sealed"):
        assert sum(row(f"cells_seen_{stage}").values()) == pytest.approx(1.0)


@pytest.mark.parametrize("name", [name for name in ROWS if name.endswith("weekly")])
def test_a_season_goes_through_its_values_and_not_beyond(name: str) -> None:
    known = row(name)
    assert [on_day(name, day) for day in known] == pytest.approx(list(known.values()))
    assert max(on_day(name, day) for day in range(366)) == max(known.values())
