"""Progress of long work, on the error stream so that output can be piped."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager


@contextmanager
def counted(what: str, *, shown: bool) -> Iterator[Callable[[int, int], None]]:
    """Show how many of how many are done, while it works."""
    if not shown:
        yield lambda _done, _total: None
        return
    from rich.console import Console
    from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn

    columns = (TextColumn("{task.description}"), BarColumn(), MofNCompleteColumn())
    with Progress(*columns, console=Console(stderr=True), transient=True) as bar:
        task = bar.add_task(what, total=None)

        def step(done: int, total: int) -> None:
            bar.update(task, completed=done, total=total)

        yield step
