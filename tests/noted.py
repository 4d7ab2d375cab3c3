"""Small books, made from the lines of a notebook."""

from pathlib import Path

from combwright.records.store.book_handle import Book
from combwright.services.book.book import add_notebook

HEADINGS = (
    "date,yard,colony,hive,queen year,climate,frames of bees,frames of brood,eggs,frames of stores"
)


def noted(folder: Path, *lines: str, headings: str = HEADINGS) -> Path:
    """Write a notebook into a folder, and a book from it."""
    (folder / "notes.csv").write_text("\n".join((headings, *lines)) + "\n", "utf-8")
    with_them = Book(folder / "a.book")
    add_notebook(with_them, folder / "notes.csv")
    with_them.close()
    return folder / "a.book"
