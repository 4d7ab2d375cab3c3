"""Notes written one by one in a process that may be killed, and those that it acknowledged."""

import os
import signal
import sys
from collections.abc import Callable, Iterable
from contextlib import closing
from pathlib import Path
from select import select
from time import monotonic

from tests.records.samples import a_visit

from combwright.records.store.book_handle import Book
from combwright.records.store.kept_entries import keep
from combwright.terms.errors import BookError

OPEN = 0  # no note: said when the book is open
OPENED_S = 60


def kill_writer(child: int) -> None:
    os.kill(child, signal.SIGKILL)


def written(
    place: Path | str,
    numbers: Iterable[int],
    after_s: float = 60,
    kill: Callable[[int], None] = kill_writer,
    *,
    once_open: bool = False,
) -> set[int]:
    """Write notes in a process until it, or what it needs, is killed; say what it acknowledged.

    ``once_open`` counts the time from when the book is open, not from the beginning.
    """
    receive, send = os.pipe()
    child = os.fork()
    if child == 0:
        write(place, numbers, send)
    os.close(send)
    told, until = b"", monotonic() + (OPENED_S if once_open else after_s)
    while select([receive], [], [], max(0.0, until - monotonic()))[0]:
        if not (some := os.read(receive, 4096)):
            break
        if once_open and not told:
            until = monotonic() + after_s
        told += some
    else:
        kill(child)
        while some := os.read(receive, 4096):
            told += some
    os.close(receive)
    os.waitpid(child, 0)
    return {int(line) for line in told.split(b"\n")[:-1]} - {OPEN}


def write(place: Path | str, numbers: Iterable[int], send: int) -> None:
    """Write the notes, each acknowledged on a pipe, and end this process."""
    try:
        with closing(Book(place).open()) as book:
            os.write(send, b"%d\n" % OPEN)
            for number in numbers:
                with book.writing() as db:
                    keep(db, [a_visit(number)])
                os.write(send, b"%d\n" % number)
    except BookError:
        os._exit(2)  # the server was killed, or the disk is full
    finally:
        os._exit(0)


def answer() -> None:
    """Do so whenever a line asks for it: first number, count, seconds, place."""
    for line in sys.stdin:
        first, count, after_s, place = line.rstrip("\n").split(" ", 3)
        numbers = range(int(first), int(first) + int(count))
        told = written(Path(place), numbers, float(after_s), once_open=True)
        print(*sorted(told), flush=True)  # noqa: T201


if __name__ == "__main__":
    answer()
