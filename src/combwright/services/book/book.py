"""What a person can ask of the book: add to it, look a colony up, take it all out again."""

import errno
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path
from typing import Final, Literal

from combwright.records.notebook.entry_table import to_csv, to_json, to_xlsx
from combwright.records.notebook.from_lines import Line
from combwright.records.problems import Problem
from combwright.records.replay.additions import Addition, additions, settled
from combwright.records.replay.amending import amendments
from combwright.records.replay.colonies import KnownColony, standings
from combwright.records.replay.corrections import names
from combwright.records.store.book_handle import Book, Transaction
from combwright.records.store.kept_entries import (
    all_entries,
    entries_of,
    history,
    keep,
    written_about,
)
from combwright.services.whole_file import write_whole
from combwright.terms.entries import AnyEntry, BeesSold, Correction, HoneySource, Movement, Noted
from combwright.terms.errors import BookError, NotebookError, NotFoundError, PassingError

DISK_FULL: Final = (errno.ENOSPC, errno.EDQUOT)


@dataclass(frozen=True, slots=True)
class Report:
    """What became of a file: lines taken, entries new and known, and what was said about it."""

    lines: int
    new: int
    known: int
    corrected: int
    problems: tuple[Problem, ...]


@dataclass(frozen=True, slots=True)
class Page:
    """What the book says of one colony: how it stands, and its entries in order."""

    standing: KnownColony
    entries: tuple[Noted, ...]


class RefusedError(NotebookError):
    """A file was not taken; nothing of it is in the book."""

    def __init__(self, path: str, problems: Sequence[Problem], remedy: str) -> None:
        self.problems = tuple(problems)
        blocking = [str(one) for one in problems if one.blocks]
        count = f"{len(blocking)} problem" + "s" * (len(blocking) != 1)
        listed = "".join(f"\n  {sentence}" for sentence in blocking)
        super().__init__(
            f"{count}, so nothing was added.{listed}", where=path, remedy=f"\n{remedy}"
        )


def add_notebook(
    book: Book,
    csv_path: Path,
    *,
    keep_good: bool = False,
    correct: bool = False,
) -> Report:
    """Add a notebook, or entries that were exported, to the book: all of it, or nothing.

    Adding it twice changes nothing. ``keep_good`` takes the lines without problems and leaves out
    the others; ``correct`` strikes out what earlier files said of the colonies and days of this one
    and it does not: of a file without problems only, whatever ``keep_good`` says.
    """
    return add_data(book, contents(csv_path), str(csv_path), keep_good=keep_good, correct=correct)


def add_data(
    book: Book,
    data: bytes,
    place: str,
    *,
    keep_good: bool = False,
    correct: bool = False,
    today: date | None = None,
) -> Report:
    """Add what a file held, as `add_notebook` does; ``place`` names it in errors."""
    with book.writing() as db:
        whole = history(db)
        read = additions(data, whole)
        amended = amendments(whole, notes(read)) if correct and read.notebook else []
        added = settled(read, [*whole, *amended], book.kit, today or this_day())
        if added.hopeless or (added.blocked and (correct or not keep_good)):
            remedy = "Put them right and add the file again"
            good = (
                "."
                if added.hopeless or correct
                else ", or add the good lines alone with --keep-good."
            )
            if len([one for one in added.problems if "no heading" in one.what]) > 1:
                good += " A sheet of your own is read by “combwright book import”."
            raise RefusedError(place, added.problems, remedy + good)
        keep(db, amended)
        new = keep(db, added.entries)
    known = len(added.entries) - new
    return Report(len(added.lines), new, known, len(amended), added.problems)


def would_add(book: Book, data: bytes) -> tuple[Problem, ...]:
    """Say what the book would say to a file; nothing is written."""
    with book.reading() as db:
        whole = history(db)
    return settled(additions(data, whole), whole, book.kit, this_day()).problems


def add_entries(book: Book, entries: Sequence[AnyEntry], today: date | None = None) -> Report:
    """Add entries that have their ids already, such as those of a phone: all, or nothing."""
    lines = tuple(Line(at, entries=(each,)) for at, each in enumerate(entries, 1))
    with book.writing() as db:
        near = bearing_on(db, entries)
        added = settled(Addition(lines), near, book.kit, today or this_day())
        if added.blocked:
            remedy = "Put them right and send them again."
            raise RefusedError("entries", [without_line(one) for one in added.problems], remedy)
        new = keep(db, entries)
    return Report(len(lines), new, len(lines) - new, 0, added.problems)


def this_day() -> date:
    """Give the day by the keeper's own calendar."""
    return date.today()  # noqa: DTZ011


def show_colony(book: Book, colony: str) -> Page:
    """Look one colony up."""
    with book.reading() as db:
        about = entries_of(db, colony)
        found = standings(about, book.kit)
        if colony not in found:
            # a colony made by a split stands where its mother stood: that takes the whole book
            found = standings(all_entries(db), book.kit)
    if colony not in found:
        raise NotFoundError(
            f"There is no colony “{colony}” in the book.",
            where=book.place,
            remedy=near(colony, list(found)),
        )
    return Page(found[colony], tuple(about))


def export(book: Book, form: Literal["csv", "json"] = "csv") -> str:
    """Write out every entry, corrections included, so that the book can be made again from it."""
    with book.reading() as db:
        entries = history(db)
    return to_csv(entries) if form == "csv" else to_json(entries)


def export_sheet(book: Book) -> bytes:
    """Write out every entry as a spreadsheet (XLSX), to be looked at."""
    with book.reading() as db:
        return to_xlsx(history(db))


def notes(read: Addition) -> list[Noted]:
    """Give the notes of a notebook, which holds no corrections."""
    return [each for each in read.entries if each.kind != "correction"]


def bearing_on(db: Transaction, entries: Sequence[AnyEntry]) -> list[AnyEntry]:
    """Read what the entries could clash with: a note at one hive need not read the whole book."""
    colonies: set[str] = set()
    for each in entries:
        if isinstance(each, BeesSold | Correction | Movement) or (
            isinstance(each, HoneySource) and each.yard
        ):
            return history(db)  # it may be about any colony, or about many
        colonies |= set(names(each))
    return written_about(db, colonies)


def without_line(problem: Problem) -> Problem:
    """Name the place of a problem by its entry where there is no file with lines."""
    return replace(problem, line=None, column=f"entry {problem.entry}")


def contents(path: Path) -> bytes:
    """Read a file that a person named."""
    try:
        return path.read_bytes()
    except FileNotFoundError as error:
        raise NotFoundError(
            "There is no such file.", where=str(path), remedy="Check its name and folder."
        ) from error
    except OSError as error:
        raise NotebookError(
            f"The file cannot be read: {error.strerror}.",
            where=str(path),
            remedy="Check that it is a file that you may read.",
        ) from error


def near(name: str, known: Sequence[str]) -> str:
    """Name those that are known under a similar name."""
    from difflib import get_close_matches  # only when something is wrong

    close = get_close_matches(name, known, n=3)
    if close:
        return f"Did you mean {' or '.join(f'“{one}”' for one in close)}?"
    return f"It knows: {', '.join(sorted(known)[:12])}." if known else "It is still empty."


def save(path: Path, content: str | bytes, *, mode: int = 0o666) -> None:
    """Write a file that a person named; what was there before stays whole until it is replaced."""
    data = content.encode("utf-8") if isinstance(content, str) else content
    try:
        if path.exists() and not path.is_file():
            path.write_bytes(data)  # a device or pipe cannot be replaced
        else:
            write_whole(path, data, mode=mode)
    except OSError as error:
        trouble = PassingError if error.errno in DISK_FULL else BookError
        raise trouble(
            f"The file cannot be written: {error.strerror}.",
            where=str(path),
            remedy="Name a file in a folder that you may write to.",
        ) from error
