"""A note may lie on a phone for weeks: ``tests/data/entry_ids`` holds some as they lie there."""

import json
from pathlib import Path

from combwright.services.book.notes import note_entries

BEFORE = Path(__file__).parents[2] / "data" / "entry_ids"


def test_notes_that_a_phone_still_holds_give_the_entries_of_before() -> None:
    stored = json.loads((BEFORE / "forms.json").read_text("utf-8"))
    given = {
        str(each.id): each.model_dump(mode="json") for form in stored for each in note_entries(form)
    }
    told = [json.loads(line) for line in (BEFORE / "forms.jsonl").read_text("utf-8").splitlines()]
    assert given.keys() == {before["id"] for before in told}
    for before in told:
        assert given[before["id"]].items() >= before.items()
