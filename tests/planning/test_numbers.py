"""Numbers that one could argue about stand in the data: those of the round, and of what is seen."""

from pathlib import Path

import pytest
from tests.bare_numbers import bare

import combwright
from combwright.planning import at_every_colony

SOURCE = Path(combwright.__file__).parent
FILES = [*sorted((SOURCE / "planning").glob("*.py")), SOURCE / "simulation" / "observe.py"]
COUNTING = {0, 1, 2, 3, 1000}  # digits of a rounded chance and grams in a kilogram among them
NAMED = {"TRACE": 1e-6, "NOTHING": 1e-9}


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.name)
def test_there_is_no_bare_number(path: Path) -> None:
    assert not bare(path.read_text("utf-8"), counting=COUNTING, named=NAMED)


def test_every_number_of_the_data_is_read() -> None:
    whole = "".join(path.read_text("utf-8") for path in FILES)
    assert [name for name in at_every_colony.PARAMETERS if f'"{name}"' not in whole] == []
