"""The demo, written once in a run of the tests, and copies of it with what is believed of it."""

import fcntl
from pathlib import Path
from shutil import copyfile, copytree

from combwright.records.store.book_handle import Book
from combwright.services.beliefs.kept_beliefs import folder_for
from combwright.services.demo import ON, Paths, write_demo
from combwright.services.rounds.from_book import round_sheet

FEW = 40  # members: enough for a sheet, and quick


def written_once(folder: Path) -> Paths:
    """Write the demo into a folder, unless another worker has; its colonies are followed too."""
    folder.mkdir(exist_ok=True)
    with (folder / "lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if not (folder / "beliefs").exists():
            book = Book(write_demo(folder).book)
            round_sheet(book, ON, members=FEW)
            copytree(folder_for(book), folder / "beliefs")
            book.close()
    return Paths(folder / "demo.book", folder / "demo.notebook.csv", folder / "weather.csv", ON)


def copied(demo: Paths, folder: Path) -> Path:
    """Copy the demo's book, which nobody writes to, with its beliefs."""
    target = folder / "test.book"
    copyfile(demo.book, target)
    copytree(demo.book.with_name("beliefs"), folder_for(Book(target)))
    return target
