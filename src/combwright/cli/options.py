"""Options that several commands share."""

from contextvars import ContextVar
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

if TYPE_CHECKING:
    from datetime import date

    from combwright.kit.catalogue import Catalogue
    from combwright.records.store.book_handle import Book

# what stands before the command: set once by the callback, read where the kit is needed
KIT_FOLDER: ContextVar[Path | None] = ContextVar("kit", default=None)
# the book that a command takes up: what is said of it is said in its keeper's words
TAKEN_UP: ContextVar["Book | None"] = ContextVar("book", default=None)
BookOption = Annotated[
    str | None,
    typer.Option(
        "--book",
        help="The book's file, or postgresql+psycopg://USER@HOST/DATABASE; your own without it.",
    ),
]
OnOption = Annotated[
    str,
    typer.Option(
        "--on", help="Day of the round, 2027-04-24; else today, or the day after the last note."
    ),
]
PdfOption = Annotated[Path | None, typer.Option(help="Write it as PDF/A to this file.")]
CsvOption = Annotated[Path | None, typer.Option(help="Write it for a spreadsheet.")]
JsonOption = Annotated[bool, typer.Option("--json", help="Print JSON only.")]


def day_of(option: str) -> "date":
    """Read a day that was given as an option; what could mean two days is refused."""
    from combwright.records.notebook.day_cells import day

    return day(option.strip())


def day_meant(option: str, book: "Book") -> "date":
    """Read the day of an option; none is today, or the day after the last note of a later book."""
    if option:
        return day_of(option)
    from datetime import date

    from combwright.services.rounds.situations import usual_day

    return usual_day(book, date.today())  # noqa: DTZ011  (the keeper's own day)


def book_place(option: str | None) -> str:
    """Find the book: the one that was named, or the keeper's own."""
    if option is not None:
        return option
    from platformdirs import user_data_path

    return str(user_data_path("combwright", appauthor=False) / "keeper.book")


def named_book(option: str | None, *, must_exist: bool = False) -> "Book":
    """Take up the book; it is opened when it is first needed."""
    from combwright.records.store.book_handle import Book

    book = Book(book_place(option), must_exist=must_exist, kit=kit_named(), warn=warned)
    TAKEN_UP.set(book)
    return book


def in_own_words(text: str) -> str:
    """Say “apiary” where the keeper of the book does; what the keeper wrote stays."""
    book = TAKEN_UP.get()
    if book is None:
        return text
    from combwright.services.book.place_words import place_word

    return place_word(book).into(text)


def warned(sentence: str) -> None:
    """Say on the side what has to be known, and leave the answer as it is."""
    typer.echo(f"combwright: {sentence}", err=True)


def kit_named() -> "Catalogue":
    """Read the kit in use, with the folder of the keeper's own that ``--kit`` names."""
    from combwright.services.own_kit import kit_in_use

    return kit_in_use(KIT_FOLDER.get())


def print_json(shown: object) -> None:
    """Print an answer for other programs: plain data, dataclasses and models alike."""
    from pydantic_core import to_json

    typer.echo(to_json(shown, indent=2).decode())


def words_in(file: Path) -> str:
    """Read a secret from a file, so that it stands in no list of commands."""
    from combwright.terms.errors import BookError

    try:
        return file.read_text("utf-8").rstrip("\r\n")
    except (OSError, UnicodeDecodeError) as error:
        raise BookError(
            "The file of the secret words cannot be read.",
            where=str(file),
            remedy="Check its name, and that it is text.",
        ) from error
