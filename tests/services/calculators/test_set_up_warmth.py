"""What a keeper is told about warmth: ranges that hold, changes that fit, honest words."""

import json

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from combwright.kit.catalogue import catalogue
from combwright.services.calculators.set_up_warmth import Spread, warmth
from combwright.terms.errors import ClashError, NotFoundError, OutOfRangeError

KEYS = [hive.key for hive in catalogue().hives()]


def test_boards_save_a_range_and_two_save_more_than_one_in_a_timber_national() -> None:
    told = warmth("national timber", 7, outside_c=5)
    one, two = told.changes[:2]
    assert (one.set_up.dummy_boards, two.set_up.dummy_boards) == (1, 2)
    assert 0 < one.saves_w.low < one.saves_w.middle < one.saves_w.high
    assert two.saves_w.middle > one.saves_w.middle
    assert any("two boards with the nest in the middle are warmer" in s for s in told.how_sure)
    assert any("0.8 to over 2.5 W/K" in sentence for sentence in told.how_sure)


@settings(max_examples=40, deadline=None)
@given(
    st.sampled_from(KEYS),
    st.floats(0.5, 5),
    st.integers(0, 1),
    st.sampled_from(["crown board", "cushion", "vented"]),
    st.floats(-20, 35),
)
def test_every_answer_is_a_range_and_plain_json(
    key: str, bees: float, boards: int, cover: str, outside: float
) -> None:
    frames = min(5, catalogue().hive(key).capacity - boards)
    told = warmth(
        key, min(bees, frames), frames=frames, dummy_boards=boards, cover=cover, outside_c=outside
    )
    spreads: list[Spread] = [told.loss_w_per_k, told.heat_w, told.syrup_g_per_day]
    spreads += [change.saves_w for change in told.changes]
    assert all(s.low <= s.middle <= s.high for s in spreads)
    assert json.loads(json.dumps(told.as_json(), allow_nan=False))["changes"]
    assert all(change.set_up != told.set_up for change in told.changes)


def test_no_heat_is_needed_when_it_is_as_warm_outside() -> None:
    told = warmth("national timber", 7, nest_c=30, outside_c=35)
    assert told.syrup_g_per_day.high == 0
    assert all(change.saves_w.high == 0 for change in told.changes)


def test_syrup_is_the_sugar_at_sixty_per_cent() -> None:
    told = warmth("national timber", 7)
    assert told.syrup_g_per_day.middle * 0.6 == pytest.approx(told.sugar_g_per_day.middle)


def test_only_changes_that_fit_the_box_are_named() -> None:
    told = warmth("national timber", 11.5, frames=12)  # 420 of 422 mm: no room for a board
    assert all(change.set_up.dummy_boards == 0 for change in told.changes)
    assert not any("tray" in change.instead for change in warmth("nuc 5 timber", 5).changes)


BAD = [
    ({"outside_c": 45.0}, "Fahrenheit"),
    ({"nest_c": 95.0}, "Fahrenheit; that would be 35 °C"),
    ({"frames_of_bees": 0}, "Frames of bees cannot be 0"),
    ({"frames_of_bees": float("nan")}, "Frames of bees cannot be nan"),
    ({"frames": 5}, "cannot cover 7 of 5"),
    ({"dummy_boards": 3}, "dummy boards cannot be 3"),
    ({"cover": "quilt"}, "cover cannot be 'quilt'"),
    ({"frames": 12, "dummy_boards": 1}, "do not fit"),
    ({"wind_m_s": -1.0}, "The wind cannot be -1"),
]


@pytest.mark.parametrize(("wrong", "says"), BAD)
def test_impossible_set_ups_get_a_sentence(wrong: dict[str, object], says: str) -> None:
    asked: dict[str, object] = {"frames_of_bees": 7.0, **wrong}
    with pytest.raises((OutOfRangeError, ClashError), match=says):
        warmth("national timber", **asked)  # type: ignore[arg-type]


def test_an_unknown_hive_names_its_neighbours() -> None:
    with pytest.raises(NotFoundError, match="national timber"):
        warmth("national wood", 7)
