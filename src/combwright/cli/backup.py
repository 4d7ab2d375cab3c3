"""``combwright backup``, ``restore`` and ``check``: so that no disk takes the book with it."""

from pathlib import Path
from typing import Annotated

import typer

from combwright.cli.options import (
    BookOption,
    JsonOption,
    book_place,
    named_book,
    print_json,
    words_in,
)
from combwright.terms.errors import BookError

SealedOption = Annotated[bool, typer.Option("--sealed", help="Ask for the passphrase of a seal.")]
FileOption = Annotated[
    Path | None,
    typer.Option("--passphrase-file", help="Read the passphrase of a seal from a file."),
]
EXAMPLE = "Example: `combwright backup --to /media/stick --keep 14`"
EXAMPLE_RESTORE = (
    "Example: `combwright restore keeper.book-2027-04-24-090000.backup.zip --book new.book`"
)
EXAMPLE_CHECK = "Example: `combwright check keeper.book-2027-04-24-090000.backup.zip`"


def backup(
    to: Annotated[
        Path | None, typer.Option("--to", help="The folder; beside the book without it.")
    ] = None,
    keep: Annotated[
        int, typer.Option(help="How many to keep there, the oldest go; 0 keeps all.")
    ] = 0,
    sealed: SealedOption = False,
    passphrase_file: FileOption = None,
    book: BookOption = None,
    as_json: JsonOption = False,
) -> None:
    """Make a backup of the book with its weather, photos and settings, also while it is in use."""
    from datetime import datetime

    from combwright.services.backup.backups import make_backup

    words = _passphrase(passphrase_file, asked=sealed, twice=True)
    opened = named_book(book, must_exist=True)
    made = make_backup(opened, to, datetime.now().astimezone(), keep=keep, passphrase=words)
    if as_json:
        print_json(made)
        return
    typer.echo(
        f"{made.path}: {made.entries} entries and {made.photos} photos, "
        f"{made.bytes / 1e6:.1f} MB{', sealed' if made.sealed else ''}."
    )
    if made.gone:
        typer.echo(f"{len(made.gone)} older ones are gone.")


def restore(
    file: Annotated[Path, typer.Argument(help="A backup.")],
    passphrase_file: FileOption = None,
    sealed: SealedOption = False,
    book: BookOption = None,
    as_json: JsonOption = False,
) -> None:
    """Make a book again from a backup, where there is none yet."""
    from combwright.records.store.book_handle import Book
    from combwright.services.backup.restoring import restore as restored

    target = book_place(book)
    told = restored(file, target, _passphrase(passphrase_file, asked=sealed))
    place = Book(target).place  # without a password
    if as_json:
        print_json({"book": place, "made": told.made, "entries": told.entries})
    else:
        typer.echo(f"{place}: {told.entries} entries, as they were at {told.made:%H:%M, %d %B %Y}.")


def check(
    file: Annotated[Path, typer.Argument(help="A backup.")],
    passphrase_file: FileOption = None,
    sealed: SealedOption = False,
    as_json: JsonOption = False,
) -> None:
    """Look through a backup: every checksum, and the whole book in it."""
    from combwright.services.backup.restoring import check_backup

    found = check_backup(file, _passphrase(passphrase_file, asked=sealed))
    if as_json:
        print_json(found)
    elif not found.wrong:
        typer.echo(f"{found.place}: {found.entries} entries, all of them whole.")
    if found.wrong:
        raise BookError(
            f"The book in it is damaged. {' '.join(found.wrong)}",
            where=found.place,
            remedy="Take an older backup.",
        )


def _passphrase(file: Path | None, *, asked: bool, twice: bool = False) -> str:
    """Take the passphrase of a seal from a file or the keyboard; none where it is not asked for."""
    if file is not None:
        return words_in(file)
    if not asked:
        return ""
    again = "Once more" if twice else False
    words: str = typer.prompt("Passphrase", hide_input=True, confirmation_prompt=again)
    return words
