"""Notebooks that were added long ago must give the same entries: ``tests/data/entry_ids``."""

import json
from pathlib import Path

from combwright.records.notebook.from_lines import read_notebook
from combwright.terms.entries import AnyEntry

BEFORE = Path(__file__).parents[2] / "data" / "entry_ids"


def entries(name: str) -> list[AnyEntry]:
    found = read_notebook((BEFORE / f"{name}.csv").read_bytes())
    assert not found.problems
    return [each for line in found.lines for each in line.entries]


def test_the_ids_of_a_spring_are_those_of_before() -> None:
    told = (BEFORE / "spring.ids").read_text("utf-8").splitlines()
    assert [f"{each.id} {each.kind}" for each in entries("spring")] == told


def test_every_heading_gives_the_entries_of_before() -> None:
    told = map(json.loads, (BEFORE / "every_heading.jsonl").read_text("utf-8").splitlines())
    for each, before in zip(entries("every_heading"), told, strict=True):
        assert each.model_dump(mode="json").items() >= before.items()
