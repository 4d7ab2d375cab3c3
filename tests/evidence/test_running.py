"""The runner itself, on functions of the standard kind whose results are known."""

from typing import Any

import numpy as np
import pytest

from combwright.evidence.check_files import Check
from combwright.evidence.running import agrees, pick, plain, run


def check(**changes: object) -> Check:
    fields: dict[str, Any] = {
        "topic": "test",
        "id": "test-one",
        "says": "A month within the year",
        "function": "terms.ranges.within",
        "arguments": {"values": 7, "low": 1, "high": 12, "name": "The month"},
        "expected": 7,
        "unit": "",
        "source": "the calendar",
        "verified": "judgement",
        "stands": "arithmetic",
    }
    return Check.model_validate({**fields, **changes})


def test_a_value_that_agrees_passes() -> None:
    assert run(check()).passes


def test_a_value_that_does_not_agree_fails_with_what_came_out() -> None:
    finding = run(check(expected=8))
    assert (finding.passes, finding.got, finding.unexplained) == (False, 7.0, True)


def test_a_formula_that_raises_is_a_failing_check_with_its_words() -> None:
    finding = run(check(arguments={"values": 13, "low": 1, "high": 12, "name": "The month"}))
    assert not finding.passes
    assert "The month cannot be 13" in finding.error


@pytest.mark.parametrize(
    "function", ["terms.ranges.nothing", "no_such.thing", "terms.parameters.Parameter"]
)
def test_a_missing_or_misused_function_fails(function: str) -> None:
    assert run(check(function=function)).error


def test_a_failure_with_a_reason_is_explained() -> None:
    assert not run(check(expected=8, fails_because="the calendar is disputed")).unexplained


@pytest.mark.parametrize(
    ("expected", "tolerance", "got", "agreed"),
    [
        (1.0, 0.1, 1.1, True),
        (1.0, 0.1, 1.11, False),
        (1.0, 0.0, 1.0, True),
        (1.0, 0.1, float("nan"), False),
        (1.0, 0.1, float("inf"), False),
        (1, 0.0, True, False),
        (True, 0.0, True, True),
        (True, 0.0, 1, False),
        ("safe", 0.0, "safe", True),
        ("safe", 0.0, "at risk", False),
    ],
)
def test_agreement(
    *, expected: bool | float | str, tolerance: float, got: bool | float | str, agreed: bool
) -> None:
    assert agrees(check(expected=expected, tolerance=tolerance), got) is agreed


def test_picking_follows_keys_positions_and_attributes() -> None:
    assert pick({"a": [np.array([1.0, 2.0])]}, "a.0.-1") == 2.0
    assert pick(check(), "topic") == "test"


@pytest.mark.parametrize("wrapped", [np.float64(3.0), np.array(3.0), np.array([3.0])])
def test_arrays_of_one_are_numbers(wrapped: object) -> None:
    assert plain(wrapped) == 3.0


def test_arrays_of_many_are_not() -> None:
    with pytest.raises(TypeError, match="pick one"):
        plain(np.array([1.0, 2.0]))
