from datetime import date
from uuid import UUID

from hypothesis import given
from tests.records.samples import a_visit, histories

from combwright.records.replay.corrections import standing
from combwright.terms.entries import AnyEntry, Correction, Noted


def corrected(at: int, corrects: int, replacement: Noted | None = None) -> Correction:
    return Correction(
        id=UUID(int=at), on=date(2026, 4, 9), corrects=UUID(int=corrects), replacement=replacement
    )


def test_a_correction_replaces_in_place() -> None:
    better = a_visit(11, frames_of_bees=6)
    entries: list[AnyEntry] = [a_visit(1), a_visit(2), corrected(3, 1, better)]
    assert standing(entries) == [better, a_visit(2)]


def test_a_correction_without_replacement_strikes_out() -> None:
    entries: list[AnyEntry] = [a_visit(1), a_visit(2), corrected(3, 1)]
    assert standing(entries) == [a_visit(2)]


def test_the_last_correction_counts() -> None:
    first, last = a_visit(11, frames_of_bees=6), a_visit(12, frames_of_bees=7)
    entries: list[AnyEntry] = [a_visit(1), corrected(3, 1, first), corrected(4, 1, last)]
    assert standing(entries) == [last]


def test_a_replacement_can_be_corrected_by_its_own_id() -> None:
    first, last = a_visit(11, frames_of_bees=6), a_visit(12, frames_of_bees=7)
    entries: list[AnyEntry] = [a_visit(1), corrected(3, 1, first), corrected(4, 11, last)]
    assert standing(entries) == [last]


def test_a_replacement_may_keep_the_id_of_what_it_replaces() -> None:
    better = a_visit(1, frames_of_bees=6)
    entries: list[AnyEntry] = [a_visit(1), corrected(3, 1, better)]
    assert standing(entries) == [better]


def test_striking_out_a_correction_restores_the_first_note() -> None:
    entries: list[AnyEntry] = [
        a_visit(1),
        corrected(3, 1, a_visit(11, frames_of_bees=6)),
        corrected(4, 3),
    ]
    assert standing(entries) == [a_visit(1)]


def test_a_correction_of_a_correction_replaces_its_replacement() -> None:
    better = a_visit(12, frames_of_bees=7)
    entries: list[AnyEntry] = [
        a_visit(1),
        corrected(3, 1, a_visit(11, frames_of_bees=6)),
        corrected(4, 3, better),
    ]
    assert standing(entries) == [better]


def test_days_are_put_in_order_and_a_day_stays_as_written() -> None:
    late, early, also_early = a_visit(1, on="2026-05-01"), a_visit(2), a_visit(3)
    assert standing([late, early, also_early]) == [early, also_early, late]


@given(histories())
def test_what_stands_is_in_order_and_never_more_than_was_noted(entries: list[AnyEntry]) -> None:
    found = standing(entries)
    assert [each.on for each in found] == sorted(each.on for each in found)
    assert len(found) <= sum(not isinstance(each, Correction) for each in entries)


@given(histories())
def test_what_stands_needs_no_further_correction(entries: list[AnyEntry]) -> None:
    found = standing(entries)
    assert standing(found) == found
