"""Findings as they come."""

import pytest

from combwright.evidence import at_hand
from combwright.evidence.at_hand import AtHand
from combwright.evidence.check_files import read_checks

CHECKS = [*read_checks("honey"), *read_checks("syrup")[:2]]


@pytest.fixture
def some(monkeypatch: pytest.MonkeyPatch) -> AtHand:
    """Two topics of light checks, of which one is taken for one on simulated colonies."""
    heavy = CHECKS[0].model_copy(update={"function": "evidence.trials." + CHECKS[0].function})
    monkeypatch.setattr(at_hand, "read_checks", lambda: [heavy, *CHECKS])
    return AtHand()


def test_all_topics_are_found_in_time_each_in_its_place(some: AtHand) -> None:
    found = some.findings(20.0)
    assert list(found) == list(some.topics) == ["honey", "syrup"]
    assert [len(findings) for findings in found.values()] == [len(CHECKS) - 1, 2]
    assert some.findings(0.0) == found


def test_nobody_waits_and_what_needs_no_colonies_comes_first(some: AtHand) -> None:
    assert set(some.findings(0.0)) <= {"syrup", "honey"}
    assert "syrup" in some.findings(20.0, "syrup")
    while "honey" not in (found := some.findings(0.01)):
        assert set(found) == {"syrup"}
