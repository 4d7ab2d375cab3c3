"""Working on many colonies at once."""

import json
import logging
import os
from collections.abc import Callable, Sequence
from concurrent.futures import ThreadPoolExecutor
from datetime import date
from traceback import format_tb
from typing import Final, TypeVar

from combwright.belief.following.replay import Followed, Replay
from combwright.services.progress import READING, READY, Progress, Step, silent
from combwright.simulation.ahead.roll import make_ready
from combwright.terms.errors import CombwrightError

LOG: Final = logging.getLogger("combwright.round")
WORKERS: Final = min(8, os.cpu_count() or 2)  # the kernel runs outside the interpreter lock

Given = TypeVar("Given")
Made = TypeVar("Made")


def for_each(
    work: Callable[[Given], Made],
    colonies: Sequence[Given],
    *,
    doing: str,
    progress: Progress = silent,
    as_they_come: bool = False,
    at_hand: Callable[[Given], bool] = lambda _: False,
) -> list[Made]:
    """Do the same for many colonies, side by side; the answers are in the order given.

    ``doing`` is what it is called while it lasts; on demand each answer is told as it comes. What
    is ``at_hand`` is not worth a worker.
    """
    done: list[Made] = []
    progress(Step(doing, 0, len(colonies)))
    workers = ThreadPoolExecutor(WORKERS)
    try:
        coming = [None if at_hand(one) else workers.submit(work, one) for one in colonies]
        for one, later in zip(colonies, coming, strict=True):
            made = work(one) if later is None else later.result()
            done.append(made)
            part = made if as_they_come else None
            progress(Step(doing, len(done), len(colonies), part))
    finally:
        workers.shutdown(cancel_futures=True)
    return done


def follow_each(
    replay: Replay,
    colonies: Sequence[str],
    on: date,
    progress: Progress = silent,
) -> list[Followed | None]:
    """Follow colonies to a day; parents of splits are followed within their children."""
    progress(Step(READY))
    make_ready()

    def follow(name: str) -> Followed | None:
        return replay.follow(name, on)

    return for_each(follow, colonies, doing=READING, progress=progress)


def or_left_out(name: str, make: Callable[[], Made], left_out: dict[str, str]) -> Made | None:
    """Do something for one colony; whatever goes wrong with it does not stop the others.

    A fault of our own goes into the log, as the places that it came by: nothing of which bees.
    """
    try:
        return make()
    except CombwrightError as error:
        why = str(error)
    except Exception as error:  # noqa: BLE001
        kind = type(error).__name__
        told = json.dumps({"failed": kind, "at": format_tb(error.__traceback__)})
        LOG.error(told)  # noqa: TRY400
        why = (
            f"Combwright made a mistake in planning it ({kind}), and wrote into its log where. "
            "Look it over by your own judgement, and tell who looks after the program."
        )
    left_out[name] = f"“{name}” is left out of this round: {why}"
    return None
