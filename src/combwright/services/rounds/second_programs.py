"""Programs that follow and plan beside this one, where much of a large book is new.

It is mostly work of the interpreter, which in one program does one thing at a time. A second one
opens the same book. What it comes to believe it keeps where this one then finds it; a plan it hands
over with the fingerprint of what that rests on. One that does not answer costs no answer.
"""

import json
import os
import pickle
import sys
from collections.abc import Iterator
from contextlib import closing, suppress
from queue import Empty, SimpleQueue
from subprocess import DEVNULL, PIPE, Popen, TimeoutExpired
from threading import Thread
from types import TracebackType
from typing import IO, Final, Literal, Self

from combwright.planning.round import colony_sheet
from combwright.planning.sheet import ColonySheet
from combwright.records.store.book_handle import Book
from combwright.services.beliefs.neighbours import Lessons
from combwright.services.beliefs.workers import WORKERS
from combwright.services.rounds.kept_plans import rests_on
from combwright.services.rounds.situations import AskedRound, Situations, situations_of
from combwright.simulation.ahead.roll import make_ready
from combwright.simulation.run import BrokenBalanceError
from combwright.terms.errors import CombwrightError

MOST: Final = 2  # of them: each takes some 150 MB of its own
MANY: Final = 60  # colonies to follow, for fewer of which none is worth its start; judgement
PATIENCE_S: Final = 10.0  # to the end of the colony that it is at
END: Final = b"\n"
What = Literal["lesson", "belief", "plan"]
LESSON: Final = "lesson"
BELIEF: Final = "belief"
PLAN: Final = "plan"


class SecondPrograms:
    """The second programs of one round: none until there is much to do, none after it."""

    def __init__(self, book: Book, asked: AskedRound, *, many: int = MANY) -> None:
        self._book, self._asked, self._many = book, asked, many
        self._programs: list[Popen[bytes]] = []
        self._coming: list[Thread] = []
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
        """Let them end after the colony that each is at; one that is still coming is too late."""
        for each, coming in zip(self._programs, self._coming, strict=True):
            if coming.is_alive():
                each.kill()
                coming.join()
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
                self._coming.append(Thread(target=self._welcome, args=(each, told), daemon=True))
                self._coming[-1].start()

    def _welcome(self, program: Popen[bytes], told: bytes) -> None:
        """Tell a program of the round; it is free once it has read the book."""
        if _told(program, told) and _answer(program) == END:
            self._free.put(program)

    def read(self, colony: str, what: What = BELIEF) -> None:
        """Let one that is free follow a colony."""
        self._asked_for(colony, what)

    def plan(self, colony: str, key: str) -> ColonySheet | None:
        """Let one that is free plan for a colony; ``key`` is of all that its plan rests on."""
        rests_upon, _, sheet = self._asked_for(colony, PLAN).partition(b" ")
        return ColonySheet.model_validate_json(sheet) if rests_upon == key.encode() else None

    def _asked_for(self, colony: str, what: What) -> bytes:
        try:
            each = self._free.get_nowait()
        except Empty:
            return b""
        said = _answer(each) if _told(each, json.dumps([colony, what]).encode() + END) else b""
        if said.endswith(END):
            self._free.put(each)
        return said


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


def _answer(program: Popen[bytes]) -> bytes:
    """Wait for what a program answers; it is nothing if it ended."""
    return b"" if program.stdout is None else program.stdout.readline()


def done(situations: Situations, colony: str, what: What) -> bytes:
    """Follow a colony, so that what is believed of it is kept, and give its plan if asked for.

    What is wrong with it is said in the program that asks.
    """
    lessons, on = situations.replay.pooled, situations.asked.on
    with suppress(CombwrightError, BrokenBalanceError):
        if what == LESSON and isinstance(lessons, Lessons):
            lessons.moments(colony)
            return b""
        followed = situations.replay.follow(colony, on)
        if what == PLAN and followed is not None and not followed.has_ended:
            sheet = colony_sheet(followed, situations.of(followed), 1)
            return f"{rests_on(colony, situations)} {sheet.model_dump_json()}".encode()
    return b""


def answer(asked: IO[bytes], answers: IO[bytes]) -> None:
    """Do what is asked for, a colony a line; answer with a line when the book is read, and each."""
    place, kit, of_round = pickle.load(asked)  # noqa: S301 (from this same program)
    with closing(Book(place, must_exist=True, kit=kit)) as book:
        situations = situations_of(book, of_round)
        _write(answers, b"")
        for line in asked:
            colony, what = json.loads(line)
            _write(answers, done(situations, colony, what))


def _write(answers: IO[bytes], answer: bytes) -> None:
    answers.write(answer + END)
    answers.flush()


def main() -> None:
    """Answer by standard output, where nothing else may speak."""
    answers = os.fdopen(os.dup(sys.stdout.fileno()), "wb")
    os.dup2(sys.stderr.fileno(), sys.stdout.fileno())
    make_ready()
    answer(sys.stdin.buffer, answers)
    os._exit(0)  # all is written: to take the interpreter down would hold the round up


if __name__ == "__main__":
    main()
