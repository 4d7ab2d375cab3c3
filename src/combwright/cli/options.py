"""Options that several commands share."""

from pathlib import Path
from typing import Annotated

import typer

BookOption = Annotated[
    Path | None,
    typer.Option("--book", help="The book's file; your own data folder without it."),
]
JsonOption = Annotated[bool, typer.Option("--json", help="Print JSON only.")]


def book_path(option: Path | None) -> Path:
    """Find the book: the one that was named, or the keeper's own."""
    if option is not None:
        return option
    from platformdirs import user_data_path

    return user_data_path("combwright", appauthor=False) / "keeper.book"
