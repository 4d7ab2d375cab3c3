"""Following many colonies at once."""

from collections.abc import Callable, Sequence
from concurrent.futures import ThreadPoolExecutor
from datetime import date
from typing import Final

from combwright.belief.replay import Followed, Replay

WORKERS: Final = 2


def follow_each(
    replay: Replay,
    colonies: Sequence[str],
    on: date,
    progress: Callable[[int, int], None] | None = None,
) -> list[Followed | None]:
    """Follow colonies to a day, in the order given; the simulation itself runs side by side.

    Parameters
    ----------
    replay
        The book's replay.
    colonies
        Their names.
    on
        The day.
    progress
        Told how many of how many are done.

    """
    done: list[Followed | None] = []
    with ThreadPoolExecutor(WORKERS) as workers:
        for followed in workers.map(lambda name: replay.follow(name, on), colonies):
            done.append(followed)
            if progress is not None:
                progress(len(done), len(colonies))
    return done
