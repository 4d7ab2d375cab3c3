"""Numbers that one could argue about stand in the data, not in the step, and all are read."""

import ast
from pathlib import Path

import pytest
from tests.bare_numbers import bare

import combwright
from combwright.simulation.biology import BIOLOGY, PARAMETERS, RECORD, as_table

STEP = Path(combwright.__file__).parent / "simulation" / "step"
FILES = sorted(STEP.glob("*.py"))
COUNTING = {0, 1, 10, 0.5}
NAMED = {  # at the head of a module: units, guards, how NumPy adds up, how a state is cut
    "CLOSE": 1e-7,
    "SECONDS_A_DAY": 86400.0,
    "SIDES": 2.0,
    "NOTHING": 1e-9,
    "YEAR": 365.0,
    "DROP_G": 1.0,
    "ROUNDING": 1e-6,
    "PAIRED": 8,
    "DRONE_OPEN_RATE": 3.0,
    "DRONE_SEALED_RATE": 5.0,
}


def found(source: str) -> list[str]:
    return bare(source, counting=COUNTING, named=NAMED, places=True)


def test_a_bare_number_is_found() -> None:
    assert found("def f(s):\n    return 0.3 * s.bees + s.sealed[11]") == ["line 2: 0.3"]
    assert found("HALF = 2000.0\nYEAR: Final = 365.0") == ["line 1: 2000.0"]
    assert found("x = spread(day, 95, 125)") == ["line 1: 95", "line 1: 125"]


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.name)
def test_the_step_has_no_bare_number(path: Path) -> None:
    assert not found(path.read_text("utf-8"))


def names_read(path: Path, record: str) -> set[str]:
    return {
        node.attr
        for node in ast.walk(ast.parse(path.read_text("utf-8")))
        if isinstance(node, ast.Attribute) and getattr(node.value, "id", "") == record
    }


def test_the_step_reads_every_number_and_no_other() -> None:
    read = set().union(*(names_read(path, "bio") for path in FILES))
    assert read == set(PARAMETERS)


def test_values_and_record_have_the_names_of_the_data() -> None:
    assert BIOLOGY._fields == RECORD.names == tuple(PARAMETERS)
    assert tuple(BIOLOGY) == tuple(number.value for number in PARAMETERS.values())


def test_the_record_carries_a_changed_value() -> None:
    changed = BIOLOGY._replace(lay_peak=1234.5)
    assert changed.lay_peak == as_table(changed)["lay_peak"][0] == 1234.5
    assert BIOLOGY.lay_peak == PARAMETERS["lay_peak"].value


def test_a_name_that_is_not_in_the_data_is_refused() -> None:
    with pytest.raises(ValueError, match="lay_peek"):
        BIOLOGY._replace(lay_peek=1.0)
