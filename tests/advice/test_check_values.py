"""Check values of the trade, as bands. Common practice of keepers, without a published source."""

import re
from dataclasses import replace
from datetime import date

import numpy as np
import pytest
from tests.advice.situations import Case, drawn, situation

from combwright.advice.deciding import Deciding
from combwright.advice.decisions import space
from combwright.advice.decisions.food import FEEDER_G
from combwright.advice.plan import Plan, plan
from combwright.kit.catalogue import catalogue
from combwright.kit.items import Excluder
from combwright.simulation.enclosure.loss import slab_loss
from combwright.terms.set_up import SetUp

AVERAGE = Case(date(2027, 4, 24), 7.0, 4.0, 3.5, 8, nectar=0.0)
STRONG = Case(date(2027, 5, 22), 11.5, 7.0, 12.0, 11)


def planned(case: Case) -> Plan:
    return plan(situation(case), with_branches=False)


def uncounted(case: Case) -> SetUp:
    """Give the set-up for the season, which a count of mites pushes the tray in for."""
    return Deciding(situation(case)).of(space.decide).set_up


@pytest.mark.parametrize("seed", range(8))
@pytest.mark.parametrize("month", [4, 5])
def test_an_average_colony_never_gets_much_over_500_g_a_day_nor_a_full_feeder(
    month: int, seed: int
) -> None:
    bees = 5.0 + 0.4 * seed
    case = Case(date(2027, month, 20), bees, 0.55 * bees, 3.0, 8, nectar=0.0, seed=seed)
    food = planned(case).portion
    assert food.per_day_g <= 550
    assert food.grams < 0.75 * FEEDER_G


@pytest.mark.parametrize("month", [3, 4, 5, 6, 7, 8, 9])
def test_the_tray_is_open_75_to_125_mm_from_spring_to_autumn(month: int) -> None:
    told = uncounted(replace(AVERAGE, on=date(2027, month, 15)))
    assert 75 <= told.tray_open_mm <= 125


def test_the_tray_is_half_open_when_it_is_hot() -> None:
    told = uncounted(replace(AVERAGE, on=date(2027, 7, 15), warmer_k=9.0))
    assert 125 < told.tray_open_mm <= 230


@pytest.mark.parametrize("month", [11, 12, 1, 2])
def test_the_tray_is_out_in_winter(month: int) -> None:
    case = replace(AVERAGE, on=date(2027, month, 15), frames_of_brood=0.0, stores_kg=12.0)
    assert planned(case).set_up.tray_open_mm == 460


def test_the_tray_is_nearly_in_while_mites_are_counted() -> None:
    jobs = planned(replace(AVERAGE, on=date(2027, 5, 15))).jobs
    assert any("mite count" in job and "50 mm" in job for job in jobs)


def test_a_full_box_in_a_flow_gets_a_super() -> None:
    told = planned(replace(STRONG, nectar=0.9, frames=10, frames_of_bees=10.5)).set_up
    assert told.supers == 1
    assert told.excluder


def test_a_half_empty_box_gets_no_super() -> None:
    case = replace(STRONG, nectar=0.9, frames=10, frames_of_bees=5.0, frames_of_brood=3.0)
    assert planned(case).set_up.supers == 0


def test_no_super_goes_on_in_autumn() -> None:
    case = replace(STRONG, on=date(2027, 9, 10), frames_of_brood=2.0)
    assert planned(case).set_up.supers == 0


def test_excluder_slots_lie_between_4_2_and_4_5_mm() -> None:
    gaps = [each.gap_mm for each in catalogue().all_of(Excluder)]
    assert gaps
    assert all(4.2 <= gap <= 4.5 for gap in gaps)


@pytest.mark.parametrize("frames", [6, 7, 8, 9, 10])
def test_frames_are_added_at_the_edge_until_the_box_is_full(frames: int) -> None:
    case = Case(date(2027, 5, 8), frames + 0.8, 0.7 * frames, 5.0, frames)
    decided = planned(case)
    told = decided.set_up
    assert frames < told.frames <= frames + 2
    assert told.frames <= 11
    assert any("at the edge of the nest" in job for job in decided.jobs)
    if told.frames == 11:
        assert told.dummy_boards <= 1


@pytest.mark.parametrize("hive", ["national timber", "commercial", "national 14x12"])
@pytest.mark.parametrize("frames", [5, 6, 7, 8])
def test_two_boards_with_the_nest_in_the_middle_are_warmer_than_one(hive: str, frames: int) -> None:
    found = catalogue().hive(hive)
    one, two = (
        slab_loss(found, SetUp(hive=hive, frames=frames, dummy_boards=boards)) for boards in (1, 2)
    )
    assert two.w_per_k(frames) < one.w_per_k(frames)


NUMBER = re.compile(
    r"(?<![\w.])((?:under |over )?\d[\d,]*(?:\.\d+)?) ?(%|kg|g|frames|mites|W/K|years)(?!\w)"
)
SCALE = {"%": 100.0}


def traced(quoted: str, unit: str, inputs: dict[str, float]) -> bool:
    """Tell whether a figure is one of the inputs, within what it was rounded to."""
    scaled = [SCALE.get(unit, 1.0) * known for known in inputs.values()]
    value = float(quoted.rsplit(maxsplit=1)[-1].replace(",", ""))
    if quoted.startswith("under ") and unit == "%":
        return any(0.0 <= known < value for known in scaled)
    if quoted.startswith("over ") and unit == "%":
        return any(known > value for known in scaled)
    digits = len(quoted.split(".")[1]) if "." in quoted else 0
    half = 0.51 * 10.0**-digits
    rounded = {"g": 5.1 if value < 500.0 else 25.1}.get(unit, half)
    size = max(rounded, 0.051 * value if value >= 20.0 and unit == "mites" else half)
    return any(abs(known - value) <= size for known in scaled)


@pytest.mark.parametrize("first", range(0, 96, 24))
def test_every_figure_of_a_reason_is_among_its_inputs(first: int) -> None:
    """Chances, weights, frames, mites: what is quoted can be looked up in the JSON."""
    untraced = []
    for number in range(first, first + 24):
        decided = planned(drawn(number))
        for decision in decided.decisions:
            known = dict(decision.inputs)
            for reason in decision.because:
                untraced += [
                    (number, decision.topic, quoted, unit, reason)
                    for quoted, unit in NUMBER.findall(reason)
                    if not traced(quoted, unit, known)
                ]
    assert not untraced, "\n".join(map(str, untraced))


def test_the_reasons_of_a_plan_are_not_nan() -> None:
    values = [value for number in range(20) for value in planned(drawn(number)).inputs.values()]
    assert np.isfinite(values).all()
