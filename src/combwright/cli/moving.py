"""``combwright book move``: the whole book to another place, such as from a file to a server."""

from typing import Annotated

import typer

from combwright.cli.options import BookOption, JsonOption, named_book, print_json

EXAMPLE = (
    "Example: `combwright book move --book yard.book --to postgresql+psycopg://bees@localhost/bees`"
)


def move(
    to: Annotated[
        str, typer.Option("--to", help="A new file, or postgresql+psycopg://USER@HOST/DATABASE.")
    ],
    named: BookOption = None,
    as_json: JsonOption = False,
) -> None:
    """Write the whole book into a new place, photos too, and compare; the old one stays as it is.

    The password of a server stands best in ~/.pgpass, where no list of programs shows it.
    """
    from combwright.services.backup.moving import move_book

    moved = move_book(named_book(named, must_exist=True), named_book(to))
    if as_json:
        print_json(moved)
        return
    for name, poured in moved.tables.items():
        words = name.replace("_", " ")
        typer.echo(f"{words}: {poured.rows}, the same in both (SHA-256 {poured.sha256[:12]})")
    files = f" with {moved.files} files beside it" if moved.files else ""
    typer.echo(f"The book is now in {moved.target}{files}.")
    typer.echo(f"{moved.source} is left as it was: put it away, so that nobody notes there.")
