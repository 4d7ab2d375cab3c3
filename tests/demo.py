"""The demo, written once in a run of the tests, and copies of it with what is believed of it."""

import csv
import fcntl
from pathlib import Path
from shutil import copyfile, copytree

from combwright.records.store.book_handle import Book
from combwright.records.store.weather_days import keep_weather
from combwright.services.beliefs.kept_beliefs import folder_for
from combwright.services.book.book import add_notebook
from combwright.services.demo import ON, Paths, known_weather, write_demo
from combwright.services.demo_colonies import CLIMATE
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


def many_colonies(folder: Path, colonies: int) -> Book:
    """Write a book of so many colonies, the demo's over and over in yards of about sixteen."""
    demo = write_demo(folder / "demo")
    with demo.notebook.open(encoding="utf-8") as file:
        lines = list(csv.DictReader(file))
    names = list(dict.fromkeys(line["colony"] for line in lines))
    notebook = folder / f"{colonies}.csv"
    with notebook.open("w", encoding="utf-8", newline="") as file:
        writer = csv.DictWriter(file, list(lines[0]))
        writer.writeheader()
        for copy in range(-(-colonies // len(names))):
            kept = names[: colonies - copy * len(names)]
            writer.writerows(
                {**line, "colony": f"{line['colony']} {copy}", "yard": f"{line['yard']} {copy}"}
                for line in lines
                if line["colony"] in kept
            )
    book = Book(folder / f"{colonies}.book")
    add_notebook(book, notebook)
    with book.writing() as db:
        keep_weather(db, CLIMATE, known_weather(), "sampled")
    return book
