import re
import subprocess
import sys
from pathlib import Path

import pytest

from combwright.records.notebook.from_lines import read_notebook
from combwright.records.notebook.headings import BY_WORD
from combwright.terms.entries import ENTRY
from combwright.terms.errors import NotebookError

PAGE = Path(__file__).parents[3] / "docs" / "notebook.md"


def test_the_page_holds_the_table_that_the_code_makes() -> None:
    told = subprocess.run(
        [sys.executable, "-m", "cogapp", "--check", str(PAGE)], capture_output=True, check=False
    )
    assert told.returncode == 0, "run: python -m cogapp -r docs/notebook.md"


def test_the_example_on_the_page_can_be_added() -> None:
    example = re.search(r"```csv\n(.*?)```", PAGE.read_text("utf-8"), re.DOTALL)
    assert example
    found = read_notebook(example[1].encode())
    assert not found.problems
    assert [line.problems for line in found.lines] == [()] * 4


@pytest.mark.parametrize("word", [word for word, one in BY_WORD.items() if one.field.limits])
def test_the_limits_of_a_heading_are_those_of_the_entry(word: str) -> None:
    """What the heading lets through the entry takes, and what lies just outside it refuses."""
    heading = BY_WORD[word]
    limits, times = heading.field.limits, heading.field.about.times
    low, high = limits.get("ge", limits.get("gt", 0)) / times, limits["le"] / times
    assert heading.read(f"{high:.0f}") == pytest.approx(high * times)
    with pytest.raises(NotebookError, match="is not possible"):
        heading.read(f"{high + 1:.0f}")
    with pytest.raises(NotebookError, match="is not possible"):
        heading.read(f"{low - 1:.0f}")


def test_every_kind_of_entry_that_is_noted_at_a_hive_has_a_heading() -> None:
    kinds = {one.field.kind.__name__.lower() for one in BY_WORD.values()}
    schema = ENTRY.json_schema()
    known = {name.lower() for name in schema["$defs"]}
    at_the_desk = {
        "kit",
        "limit",
        "price",
        "aim",
        "wording",
        "product",
        "purchase",
        "disposal",
    }
    indoors = {"honeybatch", "honeysource", "jarrun", "jarweights", "honeysale", "keeper"}
    indoors |= {"beessold", "movement", "namesdeleted", "suspicion"}
    assert known - kinds == {*at_the_desk, *indoors, "correction"}
