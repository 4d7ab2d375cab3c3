"""Programs that follow colonies beside this one, where many are to be followed for the first time.

Following is work of the interpreter, which in one program does one thing at a time. A second reader
opens the same book, and keeps what it comes to believe where this program then finds it: nothing is
handed over. One that does not answer costs time, and never an answer.
"""

import json
import os
import pickle
import sys
from collections.abc import Iterator
from contextlib import closing, suppress
from queue import Empty, SimpleQueue
from subprocess import DEVNULL, PIPE, Popen, TimeoutExpired
from types import TracebackType
from typing import IO, Final, Self

from combwright.records.store.book_handle import Book
from combwright.services.beliefs.neighbours import Lessons
from combwright.services.beliefs.workers import WORKERS
from combwright.services.rounds.situations import AskedRound, Situations, situations_of
from combwright.simulation.ahead.roll import make_ready
from combwright.simulation.run import BrokenBalanceError
from combwright.terms.errors import CombwrightError

MOST: Final = 2  # of them: each takes some 150 MB of its own
MANY: Final = 60  # colonies, for fewer of which a program is not worth its start; judgement
PATIENCE_S: Final = 10.0  # to the end of the colony that it is at
DONE: Final = b"\n"


class SecondReaders:
    """The second readers of one round: none until there is much to follow, none after it."""

    def __init__(self, book: Book, asked: AskedRound, *, many: int = MANY) -> None:
        self._book, self._asked, self._many = book, asked, many
        self._programs: list[Popen[bytes]] = []
        self._free: SimpleQueue[Popen[bytes]] = SimpleQueue()

    def __len__(self) -> int:
        return len(self._programs)

    def __iter__(self) -> Iterator[Popen[bytes]]:
        return iter(self._programs)

    def __enter__(self) -> Self:
        """Begin without any."""
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        """Let them end after the colony that each is at."""
        for each in self._programs:
            with suppress(OSError, TimeoutExpired):
                each.communicate(timeout=PATIENCE_S)
        for each in self._programs:
            each.kill()
            each.wait()

    def come(self, colonies: int) -> None:
        """Start them if so many colonies are worth it."""
        if self._programs or colonies < self._many or self._book.file is None:
            return
        told = pickle.dumps((self._book.file, self._book.kit, self._asked))
        command = [sys.executable, "-P", "-m", __name__]
        with suppress(OSError):
            for _ in range(min(MOST, WORKERS - 1)):
                each = Popen(command, stdin=PIPE, stdout=PIPE, stderr=DEVNULL)  # noqa: S603
                self._programs.append(each)
                if _told(each, told):
                    self._free.put(each)

    def read(self, colony: str, *, alone: bool = False) -> None:
        """Let one that is free follow a colony, by its own notes alone or with its neighbours."""
        try:
            each = self._free.get_nowait()
        except Empty:
            return
        if _told(each, json.dumps([colony, alone]).encode() + DONE) and _answered(each):
            self._free.put(each)


def _told(program: Popen[bytes], words: bytes) -> bool:
    """Tell a program something, if it still listens."""
    if program.stdin is None:
        return False
    try:
        program.stdin.write(words)
        program.stdin.flush()
    except OSError:
        return False
    return True


def _answered(program: Popen[bytes]) -> bool:
    """Wait until a program has done what it was told; it has not if it ended."""
    return program.stdout is not None and program.stdout.readline() == DONE


def follow(situations: Situations, colony: str, *, alone: bool) -> None:
    """Follow a colony, so that what is believed of it is kept; what is wrong is said elsewhere."""
    lessons = situations.replay.pooled
    with suppress(CombwrightError, BrokenBalanceError):
        if not alone:
            situations.replay.follow(colony, situations.asked.on)
        elif isinstance(lessons, Lessons):
            lessons.moments(colony)


def answer(asked: IO[bytes], answers: IO[bytes]) -> None:
    """Follow what is asked for, a colony a line, and answer each when it is done."""
    place, kit, of_round = pickle.load(asked)  # noqa: S301 (from this same program)
    with closing(Book(place, must_exist=True, kit=kit)) as book:
        situations = situations_of(book, of_round)
        for line in asked:
            colony, alone = json.loads(line)
            follow(situations, colony, alone=alone)
            answers.write(DONE)
            answers.flush()


def main() -> None:
    """Answer by standard output, where nothing else may speak."""
    answers = os.fdopen(os.dup(sys.stdout.fileno()), "wb")
    os.dup2(sys.stderr.fileno(), sys.stdout.fileno())
    make_ready()
    answer(sys.stdin.buffer, answers)


if __name__ == "__main__":
    main()
