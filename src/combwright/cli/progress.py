"""Progress of long work, on the error stream so that output can be piped."""

import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import partial


@contextmanager
def counted(what: str, *, shown: bool) -> Iterator[Callable[[int, int], None]]:
    """Show how many of how many are done, while it works."""
    if not shown:
        yield lambda _done, _total: None
        return
    from rich.console import Console
    from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn

    console = Console(stderr=True)
    if not console.is_terminal:
        yield partial(_at_the_end, what)
        return
    columns = (TextColumn("{task.description}"), BarColumn(), MofNCompleteColumn())
    with Progress(*columns, console=console, transient=True) as bar:
        task = bar.add_task(what, total=None)

        def step(done: int, total: int) -> None:
            bar.update(task, completed=done, total=total)

        yield step


def _at_the_end(what: str, done: int, total: int) -> None:
    """Leave one line in a log instead of a bar."""
    if done == total:
        sys.stderr.write(f"{total} {what}\n")
