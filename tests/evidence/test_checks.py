"""Every published value, and the rules for how one is written down."""

from functools import cache
from pathlib import Path

import pytest

from combwright.evidence import page
from combwright.evidence.assumptions import assumptions
from combwright.evidence.check_files import Check, read_checks
from combwright.evidence.running import Finding, run
from combwright.evidence.targets import targets
from combwright.evidence.wording import conflicts

CHECKS = read_checks()
BY_ID = {check.id: check for check in CHECKS}
WIDEST_SHARE = 0.3


@cache
def found(name: str) -> Finding:
    return run(BY_ID[name])


def _marked(check: Check) -> object:
    failing = pytest.mark.xfail(reason=check.fails_because)
    return pytest.param(check, id=check.id, marks=[failing] if check.fails_because else [])


@pytest.mark.parametrize("check", [_marked(check) for check in CHECKS])
def test_the_published_value_is_reproduced(check: Check) -> None:
    finding = found(check.id)
    assert finding.passes, f"{finding.got} {finding.error}, published {check.expected}"


def test_a_wide_tolerance_is_explained() -> None:
    """Above 30 % of the value it needs a note that says why."""
    numbers = [check for check in CHECKS if check.is_number and not check.note]
    assert [
        check.id for check in numbers if check.tolerance > WIDEST_SHARE * abs(float(check.expected))
    ] == []


def test_a_number_of_our_own_files_counts_as_constant() -> None:
    ours = {(one.module, one.parameter.value) for one in assumptions()}
    for check in CHECKS:
        module = check.function.rpartition(".")[0]
        if module == "kit.catalogue" or (module, found(check.id).got) in ours:
            assert check.stands == "constant", check.id


def test_what_the_fit_was_given_counts_as_tuned_to() -> None:
    for check in CHECKS:
        if check.function == "evidence.simulated_lives.own_winters" and check.pick in targets():
            held_out = targets()[check.pick].held_out
            assert check.stands == ("independent" if held_out else "tuned to"), check.id


def test_weather_against_the_tables_it_was_made_from_counts_as_in_sample() -> None:
    for check in CHECKS:
        if check.source.startswith("Met Éireann daily data"):
            assert check.stands == "in sample", check.id


def test_enough_is_read_and_independent_and_enough_of_it_on_simulated_colonies() -> None:
    carrying = [check for check in CHECKS if check.carries]
    assert len(carrying) >= 150
    assert sum(check.simulated for check in carrying) >= 40


def test_the_page_of_the_docs_is_current(root: Path) -> None:
    told = page.markdown([found(check.id) for check in CHECKS])
    assert (root / "docs" / "evidence.md").read_text("utf-8") == told, "run `make docs`"


def test_a_conflict_has_two_sides() -> None:
    groups = conflicts([found(check.id) for check in CHECKS])
    assert [name for name, group in groups.items() if len(group) < 2] == []
