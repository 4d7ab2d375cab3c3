from datetime import date
from pathlib import Path
from typing import Literal
from uuid import UUID

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tests.postgres import Places
from tests.records.samples import a_visit, notebook, noted_as

from combwright.records.store.book_handle import Book
from combwright.records.store.kept_entries import history, keep
from combwright.services.book.book import (
    RefusedError,
    add_entries,
    add_notebook,
    export,
    save,
    show_colony,
)
from combwright.terms.entries import AnyEntry, Correction
from combwright.terms.errors import BookError, ClashError, NotebookError, NotFoundError

SECOND = "2026-04-06,,Alder,,,7,,,,500,"


class Desk:
    """A folder with a book and notebooks."""

    def __init__(self, folder: Path, book: Book) -> None:
        self.folder, self.book = folder, book

    def file(self, *lines: str) -> Path:
        path = self.folder / "notes.csv"
        path.write_bytes(notebook(*lines))
        return path

    def history(self) -> list[AnyEntry]:
        with self.book.reading() as db:
            return history(db)


@pytest.fixture
def desk(tmp_path: Path, places: Places) -> Desk:
    return Desk(tmp_path, Book(places("a.book")))


def test_a_notebook_is_added_once_however_often_it_is_read(desk: Desk) -> None:
    first = add_notebook(desk.book, desk.file(SECOND))
    assert (first.lines, first.new, first.known) == (2, 7, 0)
    before = desk.history()
    again = add_notebook(desk.book, desk.file(SECOND))
    assert (again.lines, again.new) == (2, 0)
    assert desk.history() == before


def test_a_notebook_that_has_grown_adds_only_its_new_lines(desk: Desk) -> None:
    add_notebook(desk.book, desk.file(SECOND))
    report = add_notebook(desk.book, desk.file(SECOND, "2026-04-09,Mill Lane,Alder,,,8,,,,,"))
    assert (report.lines, report.new) == (3, 1)


def test_one_bad_line_keeps_all_lines_out(desk: Desk) -> None:
    with pytest.raises(RefusedError) as caught:
        add_notebook(desk.book, desk.file(SECOND, "3/4/2026,,Alder,,,8,,,,,"))
    assert desk.history() == []
    assert caught.value.where == str(desk.folder / "notes.csv")
    assert "1 problem, so nothing was added" in str(caught.value)
    assert "line 4, column 1 “date”" in str(caught.value)
    assert "--keep-good" in str(caught.value)


def test_the_good_lines_can_be_kept(desk: Desk) -> None:
    file = desk.file("3/4/2026,,Alder,,,8,,,,,", SECOND)
    report = add_notebook(desk.book, file, keep_good=True)
    assert (report.lines, report.new) == (2, 7)
    assert [one.place for one in report.problems] == ["line 3, column 1 “date”"]


def test_of_clashing_lines_the_later_is_left_out_and_all_that_hangs_on_it(desk: Desk) -> None:
    file = desk.file(
        "2026-04-05,,Alder,,,,,,13,,",  # 13 frames in an 11-frame box
        "2026-04-06,Mill Lane,Birch,no such hive,,4,,,,,",
        "2026-04-07,,Birch,,,5,,,,,",  # stands on the line before
        "2026-04-08,,Alder,,,7,,,,,",
    )
    report = add_notebook(desk.book, file, keep_good=True)
    assert {one.line for one in report.problems if one.blocks} == {3, 4, 5}
    assert {each.on.day for each in desk.book.now().entries} == {3, 8}


def test_a_clash_with_the_book_names_the_line_in_the_file(desk: Desk) -> None:
    add_notebook(desk.book, desk.file("2026-04-06,,Alder,,,7,,,,,"))
    with pytest.raises(RefusedError) as caught:
        add_notebook(desk.book, desk.file("2026-04-06,,Alder,,,6,,,,,"))
    (problem,) = caught.value.problems
    assert problem.line == 3
    assert "is 6 here and 7 in another note" in problem.what
    assert "--correct" in problem.what_to_do


def test_a_changed_line_can_put_the_book_right(desk: Desk) -> None:
    add_notebook(desk.book, desk.file("2026-04-06,,Alder,,,7,,,,500,"))
    report = add_notebook(desk.book, desk.file("2026-04-06,,Alder,,,6,,,,500,"), correct=True)
    assert (report.new, report.corrected) == (1, 1)
    visits = [each for each in desk.book.now().entries if each.kind == "visit"]
    assert [getattr(each, "frames_of_bees", None) for each in visits] == [6.5, 6.0]
    assert sum(each.kind == "feed" for each in desk.book.now().entries) == 2


def test_a_note_that_makes_an_older_one_impossible_is_refused_even_with_keep_good(
    desk: Desk,
) -> None:
    add_notebook(desk.book, desk.file(SECOND))
    head = "date,colony,ended\n"
    ended = desk.folder / "ended.csv"
    ended.write_text(f"{head}2026-04-05,Alder,dead\n")
    with pytest.raises(RefusedError) as caught:
        add_notebook(desk.book, ended, keep_good=True)
    assert "in the book, visit “Alder” of 6 April 2026" in str(caught.value)
    assert "left the book on 5 April 2026" in str(caught.value)


def test_the_book_is_put_right_by_a_whole_file_only(desk: Desk) -> None:
    add_notebook(desk.book, desk.file("2026-04-06,,Alder,,,7,,,,500,"))
    before = desk.history()
    file = desk.file("2026-04-06,,Alder,,,6,,,,500,", "3/4/2026,,Alder,,,8,,,,,")
    with pytest.raises(RefusedError, match="line 4, column 1"):
        add_notebook(desk.book, file, keep_good=True, correct=True)
    assert desk.history() == before


def test_an_export_that_was_changed_by_hand_is_refused(desk: Desk) -> None:
    add_notebook(desk.book, desk.file())
    changed = desk.folder / "all.csv"
    save(changed, export(desk.book).replace(",6.5,", ",7.5,"))
    with pytest.raises(ClashError, match="already used for an entry with other content"):
        add_notebook(desk.book, changed)
    assert "6.5" in export(desk.book)


def test_another_yard_than_the_books_is_refused(desk: Desk) -> None:
    with pytest.raises(RefusedError, match="stands at “Mill Lane”, not at “Hill Top”"):
        add_notebook(desk.book, desk.file("2026-04-06,Hill Top,Alder,,,7,,,,,"))


@pytest.mark.parametrize(
    ("data", "what"),
    [
        (b"", "The file is empty"),
        ("date,colony".encode("utf-16"), "UTF-16"),
        (b"date,colony,frames of beez\n", "frames of bees"),
    ],
)
def test_a_file_that_cannot_be_read_at_all_is_refused_whole(
    desk: Desk, data: bytes, what: str
) -> None:
    path = desk.folder / "bad.csv"
    path.write_bytes(data)
    with pytest.raises(RefusedError, match=what) as caught:
        add_notebook(desk.book, path, keep_good=True)
    assert "--keep-good" not in str(caught.value)


def test_a_missing_file_and_a_folder_are_named(desk: Desk) -> None:
    with pytest.raises(NotFoundError, match="no such file"):
        add_notebook(desk.book, desk.folder / "none.csv")
    with pytest.raises(NotebookError, match="cannot be read"):
        add_notebook(desk.book, desk.folder)


def test_entries_of_a_phone_are_added_together_or_not_at_all(desk: Desk) -> None:
    add_notebook(desk.book, desk.file())
    entries = [a_visit(1, on="2026-04-20"), a_visit(2, on="2026-04-21", colony="Nobody")]
    with pytest.raises(
        RefusedError, match="entry 00000000-0000-0000-0000-000000000002: There is no"
    ):
        add_entries(desk.book, entries)
    assert add_entries(desk.book, entries[:1]).new == 1
    assert add_entries(desk.book, entries[:1]).known == 1


def test_a_note_is_held_against_all_that_bears_on_it(desk: Desk) -> None:
    add_notebook(desk.book, desk.file("2026-04-07,Mill Lane,Birch,nuc 6 timber,,3,,,,,"))
    taken = noted_as("split", 1, "2026-05-01", colony="Alder", new_colony="Birch",
                     hive="nuc 6 timber", frames_of_bees=3)  # fmt: skip
    with pytest.raises(RefusedError, match="a colony “Birch” already"):
        add_entries(desk.book, [taken])
    united = noted_as("unite", 2, "2026-05-01", colony="Birch", into="Alder")
    add_entries(desk.book, [united])
    with pytest.raises(RefusedError, match="“Birch” left the book on 1 May 2026"):
        add_entries(desk.book, [a_visit(3, on="2026-05-02", colony="Birch")])
    undone = Correction(id=UUID(int=4), on=united.on, corrects=united.id)
    add_entries(desk.book, [undone])
    assert add_entries(desk.book, [a_visit(3, on="2026-05-02", colony="Birch")]).new == 1


def test_an_old_fault_of_the_book_does_not_stand_in_the_way(desk: Desk) -> None:
    add_notebook(desk.book, desk.file())
    with desk.book.writing() as db:
        keep(db, [noted_as("stack", 1, "2026-04-04", colony="Alder", frames=30)])
    assert add_notebook(desk.book, desk.file(SECOND)).new == 2


def test_a_colony_is_shown_with_its_entries_and_how_it_stands(desk: Desk) -> None:
    add_notebook(desk.book, desk.file(SECOND))
    page = show_colony(desk.book, "Alder")
    assert (page.standing.yard, page.standing.frames) == ("Mill Lane", 8)
    assert [each.kind for each in page.entries] == [
        "colony", "visit", "feed", "stack", "visit", "feed",
    ]  # fmt: skip
    with pytest.raises(NotFoundError, match="Did you mean “Alder”"):
        show_colony(desk.book, "Aldre")


def test_a_colony_made_by_a_split_is_shown_too(desk: Desk) -> None:
    split = noted_as("split", 1, "2026-05-01", colony="Alder", new_colony="Elm",
                     hive="nuc 6 timber", frames_of_bees=3)  # fmt: skip
    add_notebook(desk.book, desk.file())
    add_entries(desk.book, [split])
    page = show_colony(desk.book, "Elm")
    assert (page.standing.yard, page.standing.split_from) == ("Mill Lane", "Alder")
    assert page.entries == (split,)


def test_reading_what_is_not_there_makes_no_book(tmp_path: Path) -> None:
    absent = Book(tmp_path / "none.book", must_exist=True)
    for ask in (Book.now, export, lambda book: show_colony(book, "Alder")):
        with pytest.raises(BookError, match="no book here yet"):
            ask(absent)
    assert list(tmp_path.iterdir()) == []


seen = st.builds(
    a_visit,
    at=st.integers(1, 9999),
    on=st.dates(date(2026, 4, 4), date(2026, 12, 31)).map(str),
    frames_of_bees=st.none() | st.floats(0.5, 11),
    remark=st.text(st.characters(codec="utf-8", exclude_categories=["Cc", "Cs"]), max_size=20),
)


@settings(max_examples=25, deadline=None, suppress_health_check=[*HealthCheck])
@given(
    visits=st.lists(seen, max_size=6, unique_by=(lambda one: one.id, lambda one: one.on)),
    strike=st.booleans(),
    form=st.sampled_from(["csv", "json"]),
)
def test_a_book_made_from_an_export_is_the_same_book(
    tmp_path_factory: pytest.TempPathFactory,
    places: Places,
    visits: list[AnyEntry],
    strike: bool,
    form: Literal["csv", "json"],
) -> None:
    folder = tmp_path_factory.mktemp("desk")
    desk = Desk(folder, Book(places(f"{folder.name}.book")))
    add_notebook(desk.book, desk.file())
    add_entries(desk.book, visits)
    if strike and visits:
        struck = Correction(id=UUID(int=10**6), on=date(2026, 12, 31), corrects=visits[0].id)
        add_entries(desk.book, [struck])
    file, copy = desk.folder / f"all.{form}", Book(places(f"{folder.name}.copy"))
    save(file, export(desk.book, form))
    add_notebook(copy, file)
    assert copy.now().entries == desk.book.now().entries
    assert export(copy, form) == export(desk.book, form)
    assert add_notebook(copy, file).new == 0


def test_a_file_that_cannot_be_written_leaves_the_old_one(tmp_path: Path) -> None:
    with pytest.raises(BookError, match="No space left") as caught:
        save(Path("/dev/full"), "text" * 5000)
    assert caught.value.where == "/dev/full"
    assert Path("/dev/full").is_char_device()
    with pytest.raises(BookError, match="cannot be written"):
        save(tmp_path / "none" / "all.csv", "text")
    save(tmp_path / "all.csv", "text")
    assert (tmp_path / "all.csv").read_text() == "text"
    assert len(list(tmp_path.iterdir())) == 1
