import re
from typing import get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.mites.counts import BroodState
from combwright.science.mites.levels import LEVELS, UK_FALL, levels_for, verdict
from combwright.science.mites.treatments import LABEL, TREATMENTS, options
from combwright.terms.errors import OutOfRangeError

State = st.sampled_from(get_args(BroodState))
Maybe = st.one_of(st.none(), st.integers(0, 3))
Warmth = st.one_of(st.none(), st.floats(-20, 40))
RANK = {"low": 0, "watch": 1, "act": 2, "severe": 3}


@given(st.integers(1, 12), State, Maybe, Warmth)
def test_every_way_is_judged_once(
    month: int, brood: BroodState, supers: int | None, degrees: float | None
) -> None:
    found = options(month, brood, supers, degrees)
    assert sorted(map(id, TREATMENTS)) == sorted(id(option.treatment) for option in found)
    assert all(option.because for option in found if option.possible != "yes")


@given(st.integers(1, 12), State, Warmth)
def test_supers_on_stop_what_must_not_meet_honey(
    month: int, brood: BroodState, degrees: float | None
) -> None:
    for option in options(month, brood, 1, degrees):
        assert not (option.treatment.supers_off and option.possible == "yes")


def test_oxalic_acid_alone_is_no_answer_to_brood() -> None:
    for option in options(8, "brood", 0, 20):
        if option.treatment.needs == "no brood":
            assert option.possible == "no"
            assert "under the cap" in option.because[0]


# Windows of the table: formic acid to 29.5 °C, thymol from 15 °C (labels rule).
@pytest.mark.parametrize(
    ("substance", "degrees", "possible"),
    [("formic acid", 20, "yes"), ("formic acid", 32, "no"), ("thymol", 10, "no"),
     ("thymol", 20, "yes")],
)  # fmt: skip
def test_windows_of_temperature(substance: str, degrees: float, possible: str) -> None:
    found = options(8, "brood", 0, degrees)
    assert {each.possible for each in found if each.treatment.substance == substance} == {possible}


# EU summary of a trickled product, 4.4: “must only be applied once in brood-free colonies”.
@given(st.integers(1, 12), State, Maybe, Warmth)
def test_what_labels_allow_once_is_not_repeated(
    month: int, brood: BroodState, supers: int | None, degrees: float | None
) -> None:
    first = options(month, brood, supers, degrees)
    again = options(month, brood, supers, degrees, had={"oxalic acid"})
    once = [each for each in again if each.treatment.once]
    assert {each.treatment.way for each in once} == {"trickled", "sublimated"}
    assert all(each.possible == "no" for each in once)
    assert [each for each in again if not each.treatment.once] == [
        each for each in first if not each.treatment.once
    ]


@given(st.integers(1, 12), State, Maybe, Warmth)
def test_what_forbids_stands_before_what_allows(
    month: int, brood: BroodState, supers: int | None, degrees: float | None
) -> None:
    for each in options(month, brood, supers, degrees):
        if each.possible == "no":
            assert not each.because[0].startswith("there is no brood, so every")
            assert "lies in its window" not in each.because[0]


def test_drone_brood_is_cut_in_spring_only() -> None:
    spring = {option.treatment.substance: option.possible for option in options(5, "brood", 2)}
    autumn = {option.treatment.substance: option.possible for option in options(9, "brood", 0)}
    assert spring["drone brood removed"] == "yes"
    assert autumn["drone brood removed"] == "no"


def test_no_dose_is_ever_given() -> None:
    words = " ".join([LABEL, *(" ".join((way.way, *way.cautions)) for way in TREATMENTS)])
    assert not re.search(r"\d\s*(ml|mL|g|grams?|litres?|l|%)\b", words)


def test_acids_come_with_a_caution() -> None:
    for way in TREATMENTS:
        if "acid" in way.substance:
            assert any("eyes" in caution for caution in way.cautions)


# UK leaflet 2005: 1000 mites; fall limits as remembered; Delaplane & Hood 1999: 3172 mites.
def test_levels_of_august() -> None:
    august = {(level.place, level.measure): level.value for level in levels_for(8)}
    assert august["United Kingdom", "mites"] == 1000
    assert august["United States", "mites"] == 3172
    assert august["Canada", "mites per 100 bees"] == 1


def test_every_level_names_its_source() -> None:
    assert all(level.source and level.verified for level in LEVELS)


@pytest.mark.parametrize(("month", "fall"), UK_FALL.items())
def test_the_fall_of_the_month_means_to_act(month: int, fall: float) -> None:
    assert verdict(month, 100, 0.1, fall_per_day=fall) == "act"


@given(st.integers(1, 12), st.floats(0, 5000), st.floats(0, 30), st.floats(1, 3))
def test_more_mites_never_look_better(
    month: int, mites: float, per_100: float, factor: float
) -> None:
    few, many = verdict(month, mites, per_100), verdict(month, mites * factor, per_100 * factor)
    assert RANK[few] <= RANK[many]


def test_fahrenheit_is_noticed() -> None:
    with pytest.raises(OutOfRangeError, match="Fahrenheit"):
        options(8, "brood", 0, 70)
