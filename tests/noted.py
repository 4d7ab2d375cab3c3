"""Small books, made from the lines of a notebook."""

from pathlib import Path

from combwright.records.store.book_handle import Book
from combwright.services.book.book import add_notebook

HEADINGS = (
    "date,yard,colony,hive,queen year,climate,frames of bees,frames of brood,eggs,frames of stores"
)


def noted_in(book: Book, folder: Path, *lines: str, headings: str = HEADINGS) -> Book:
    """Write a notebook into a folder, and add it to a book."""
    (folder / "notes.csv").write_text("\n".join((headings, *lines)) + "\n", "utf-8")
    add_notebook(book, folder / "notes.csv")
    return book


def noted(folder: Path, *lines: str, headings: str = HEADINGS) -> Path:
    """Write a notebook into a folder, and a book from it."""
    noted_in(Book(folder / "a.book"), folder, *lines, headings=headings).close()
    return folder / "a.book"
