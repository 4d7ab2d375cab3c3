"""Progress of long work, on the error stream so that output can be piped."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from combwright.services.progress import Progress, Step


@contextmanager
def counted(*, shown: bool) -> "Iterator[Progress]":
    """Show what is being done, and for how many of how many colonies, while it works."""
    from combwright.services.progress import OPENING, silent

    if not shown:
        yield silent
        return
    from rich.console import Console
    from rich.progress import BarColumn, Progress, TextColumn

    console = Console(stderr=True)
    if not console.is_terminal:
        yield _at_the_end
        return
    columns = (TextColumn("{task.description}"), BarColumn(), TextColumn("{task.fields[counted]}"))
    with Progress(*columns, console=console, transient=True) as bar:
        task = bar.add_task(OPENING, total=None, counted="")

        def tell(step: "Step") -> None:
            bar.update(
                task,
                description=step.doing,
                completed=step.done,
                total=step.total or None,
                counted=step.counted,
            )

        yield tell


def _at_the_end(step: "Step") -> None:
    """Leave one line in a log instead of a bar."""
    if step.total and step.done == step.total:
        sys.stderr.write(f"{step.doing}: {step.counted}\n")
