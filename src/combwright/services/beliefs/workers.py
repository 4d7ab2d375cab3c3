"""Working on many colonies at once."""

import os
from collections.abc import Callable, Sequence
from concurrent.futures import ThreadPoolExecutor
from datetime import date
from typing import Final, TypeVar

from combwright.belief.following.replay import Followed, Replay
from combwright.services.progress import READING, READY, Progress, Step, silent
from combwright.simulation.ahead.roll import make_ready

WORKERS: Final = min(8, os.cpu_count() or 2)  # the kernel runs outside the interpreter lock

Given = TypeVar("Given")
Made = TypeVar("Made")


def for_each(
    work: Callable[[Given], Made],
    colonies: Sequence[Given],
    *,
    doing: str,
    progress: Progress = silent,
) -> list[Made]:
    """Do the same for many colonies, side by side; the answers are in the order given.

    ``doing`` is what it is called while it lasts.
    """
    done: list[Made] = []
    progress(Step(doing, 0, len(colonies)))
    with ThreadPoolExecutor(WORKERS) as workers:
        for made in workers.map(work, colonies):
            done.append(made)
            progress(Step(doing, len(done), len(colonies)))
    return done


def follow_each(
    replay: Replay, colonies: Sequence[str], on: date, progress: Progress = silent
) -> list[Followed | None]:
    """Follow colonies to a day; parents of splits are followed within their children."""
    progress(Step(READY))
    make_ready()
    return for_each(
        lambda name: replay.follow(name, on), colonies, doing=READING, progress=progress
    )
