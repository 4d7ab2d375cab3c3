"""Bench list and load list: the one is the sum of the other, and both of the colonies."""

from datetime import date
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.paper.conftest import colony_sheet

from combwright.planning.sheet import ColonySheet
from combwright.planning.supplies import SPARE, bench, load

YARDS = ("Alder Bank", "Mill Orchard", "Quarry Field")
FEEDS = st.sampled_from(("syrup", "syrup", "fondant"))


@st.composite
def rounds(draw: st.DrawFn) -> list[ColonySheet]:
    """Draw up to twelve colonies with any portion and any change to their stack."""
    return [
        _changed(draw, colony_sheet(order, f"C{order}", draw(st.sampled_from(YARDS))))
        for order in range(1, draw(st.integers(1, 12)) + 1)
    ]


def _changed(draw: st.DrawFn, sheet: ColonySheet) -> ColonySheet:
    portion: dict[str, Any] = {"syrup_g": draw(st.integers(0, 5800)), "feed": draw(FEEDS)}
    then = {
        "frames": draw(st.integers(2, 11)),
        "foundation": draw(st.integers(0, 3)),
        "dummy_boards": draw(st.integers(0, 2)),
        "supers": draw(st.integers(0, 3)),
        "excluder": draw(st.booleans()),
    }
    return sheet.model_copy(
        update={
            "portion": sheet.portion.model_copy(update=portion),
            "set_up": sheet.set_up.model_copy(update=then),
        }
    )


@given(rounds())
def test_the_loads_of_the_yards_add_up_to_the_bench(colonies: list[ColonySheet]) -> None:
    made, loaded = bench(colonies, 0.6), load(colonies, YARDS, 0.6)
    for part in ("frames_drawn", "frames_foundation", "dummy_boards", "supers"):
        assert sum(getattr(stop, part) for stop in loaded) == getattr(made, part)
    assert sum(stop.syrup_l for stop in loaded) == pytest.approx(made.syrup_l, abs=0.2)
    assert sum(stop.colonies for stop in loaded) == len(colonies)


@given(rounds())
def test_the_bench_makes_the_portions_and_a_little_to_spare(colonies: list[ColonySheet]) -> None:
    made = bench(colonies, 0.6)
    wanted = sum(c.portion.syrup_g for c in colonies if c.portion.feed == "syrup") / 1000.0
    assert made.sugar_kg + made.water_kg == pytest.approx(SPARE * wanted, abs=0.15)
    assert made.sugar_kg == pytest.approx(1.5 * made.water_kg, abs=0.15)
    fondant = sum(c.portion.syrup_g for c in colonies if c.portion.feed == "fondant") / 1000.0
    assert sum(s.fondant_kg for s in load(colonies, YARDS, 0.6)) == pytest.approx(fondant, abs=0.2)


def test_what_is_to_be_done_indoors_is_said_in_steps() -> None:
    colonies = [colony_sheet(order, f"C{order}", YARDS[0]) for order in range(1, 7)]
    steps = " ".join(bench(colonies, 0.6).steps)
    assert "sugar" in steps
    assert "not boiling" in steps
    assert "lukewarm" in steps
    assert "2 frames of foundation" in steps
    assert "1 super" in steps


def test_nothing_to_feed_is_nothing_to_mix() -> None:
    colony = colony_sheet(10, "C", YARDS[0])
    colony = colony.model_copy(
        update={
            "portion": colony.portion.model_copy(update={"syrup_g": 0}),
            "set_up": colony.set_up_now,
        }
    )
    made = bench([colony], 0.6)
    assert (made.sugar_kg, made.water_kg, made.syrup_l, made.steps) == (0.0, 0.0, 0.0, [])


def test_sixty_percent_syrup_does_not_crystallise_above_freezing_but_two_to_one_does() -> None:
    """Solubility of sucrose 64.4 % at 0 °C and 67.1 % at 20 °C: ICUMSA, see science/sucrose."""
    colonies = [colony_sheet(1, "C", YARDS[0])]
    assert bench(colonies, 0.6).crystallises_below_c is None
    cold = bench(colonies, 2.0 / 3.0).crystallises_below_c
    assert cold is not None
    assert 10.0 < cold < 25.0


def test_a_likely_swarm_and_open_questions_are_packed_for() -> None:
    colony = colony_sheet(7, "C", YARDS[0])
    likely = colony.model_copy(update={"chances": {"swarm": 0.3}})
    (stop,) = load([likely], [YARDS[0]], 0.6)
    assert any("nuc box" in item for item in stop.items)
    assert "time for 1 colony that the book asks about" in stop.items
    assert date(2026, 4, 14) < likely.next_visit


@given(rounds())
def test_the_bench_says_by_how_much_the_counted_shelf_is_short(
    colonies: list[ColonySheet],
) -> None:
    whole = bench(colonies, 0.6)
    needed = {
        "drawn frame": whole.frames_drawn,
        "super": whole.supers,
        "sugar kg": whole.sugar_kg,
        "contact feeder": sum(
            c.portion.syrup_g > 0 and c.portion.feed == "syrup" for c in colonies
        ),
    }
    assert bench(colonies, 0.6, on_shelf=dict.fromkeys(needed, 1e6)).short == []
    enough = bench(colonies, 0.6, on_shelf=needed)
    assert (enough.short, enough.steps) == ([], whole.steps)
    found = bench(colonies, 0.6, on_shelf=dict.fromkeys(needed, 0.0))
    assert {one.what.removeprefix("contact "): one.needed for one in found.short} == {
        item.removeprefix("contact "): amount for item, amount in needed.items() if amount
    }
    assert found.steps == [*(one.said for one in found.short), *whole.steps]
