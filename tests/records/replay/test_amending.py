from tests.records.samples import a_visit, notebook

from combwright.records.notebook.from_lines import read_notebook
from combwright.records.replay.amending import amendments
from combwright.records.replay.corrections import standing
from combwright.terms.entries import AnyEntry, Noted

OLD = "2026-04-06,,Alder,,,7,,,,500,"
NEW = "2026-04-06,,Alder,,,6,,,,500,"


def notes(*lines: str) -> list[Noted]:
    found = read_notebook(notebook(*lines))
    return [each for line in found.lines for each in line.entries if each.kind != "correction"]


def added(whole: list[AnyEntry], said: list[Noted]) -> list[AnyEntry]:
    """Add notes to a book and let them be right."""
    known = {each.id for each in whole}
    amended = amendments(whole, said)
    return [*whole, *amended, *(each for each in said if each.id not in known)]


def test_an_unchanged_notebook_corrects_nothing() -> None:
    assert amendments([*notes(OLD)], notes(OLD)) == []


def test_a_changed_line_replaces_only_what_changed() -> None:
    whole: list[AnyEntry] = [*notes(OLD)]
    book = added(whole, notes(NEW))
    assert {each.id for each in standing(book)} == {each.id for each in notes(NEW)}
    assert len(book) == len(whole) + 2  # one visit struck out, one written; the feed stays


def test_changing_a_line_there_and_back_again_ends_where_it_began() -> None:
    book: list[AnyEntry] = [*notes(OLD)]
    for line in (NEW, OLD, NEW, OLD):
        book = added(book, notes(line))
        assert {each.id for each in standing(book)} == {each.id for each in notes(line)}
    assert len({each.id for each in book}) == len(book)


def test_other_days_and_notes_from_elsewhere_are_left_alone() -> None:
    elsewhere = a_visit(3, on="2026-04-06", stores_kg=5)
    whole: list[AnyEntry] = [*notes(OLD, "2026-04-09,,Alder,,,8,,,,,"), elsewhere]
    stand = standing(added(whole, notes(NEW)))
    assert elsewhere in stand
    assert {each.on.day for each in stand} == {3, 6, 9}
