from hypothesis import given
from tests.records.samples import histories

from combwright.services.book.entry_words import ELSEWHERE, said, spoken
from combwright.terms.entries import AnyEntry, Change, Correction, Noted, Queen, TrayCount
from combwright.terms.entries.fields import fields_of


@given(histories())
def test_nothing_that_was_noted_goes_unsaid(entries: list[AnyEntry]) -> None:
    for each in entries:
        if isinstance(each, Correction):
            continue
        values = each.model_dump(exclude_none=True, exclude=set(ELSEWHERE))
        words = said(each)
        for name, value in values.items():
            assert value == "" or spoken(fields_of(type(each))[name], value) in words
        assert each.remark in words


def test_entries_are_said_in_trade_words() -> None:
    note = {"id": "6d0c1a52-3f0e-5c5b-9a39-3f9b6a1f2c77", "on": "2027-04-24", "colony": "Alder"}
    told: list[Noted] = [
        Queen.model_validate(note | {"event": "introduced", "queen_year": 2026}),
        Change.model_validate(note | {"part": "brood frame", "count": -1}),
        Change.model_validate(note | {"part": "drawn frame", "count": 2}),
        TrayCount.model_validate(note | {"mites": 12, "days": 7}),
    ]
    assert [said(each) for each in told] == [
        "introduced, queen of 2026",
        "brood frame, 1 taken out",
        "drawn frame, 2 put in",
        "mites on the tray 12, in 7 days",
    ]
