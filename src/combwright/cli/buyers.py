"""``combwright buyers``: whom the book names, for how long, and deleting it."""

from datetime import date
from typing import Annotated

import typer

from combwright.cli.options import BookOption, JsonOption, named_book, print_json
from combwright.terms.dated import dated

commands = typer.Typer(no_args_is_help=True, help="What the book says of buyers, and deleting it.")


@commands.command("list", epilog="Example: `combwright buyers list --book yard.book`")
def list_buyers(named: BookOption = None, as_json: JsonOption = False) -> None:
    """List who is named as a buyer or customer, in which notes, and how long it is kept."""
    from combwright.services.book.buyers import buyers

    found = buyers(named_book(named, must_exist=True))
    if as_json:
        print_json(found)
        return
    for each in found:
        told = "; ".join(f"{one.about} of {dated(one.on)}, kept {one.kept}" for one in each.notes)
        typer.echo(f"{each.name}: {told}")
    if not found:
        typer.echo("No buyer is named in the book.")


@commands.command(epilog="Example: `combwright buyers delete Byrne --sure`")
def delete(
    name: Annotated[str, typer.Argument(help="The name as it stands in the book.")] = "",
    due: Annotated[
        bool, typer.Option("--due", help="All names that need not be kept any longer.")
    ] = False,
    sure: Annotated[bool, typer.Option("--sure", help="Delete; it cannot be undone.")] = False,
    named: BookOption = None,
    as_json: JsonOption = False,
) -> None:
    """Delete what the book says of a buyer; the notes stay, without a name."""
    from combwright.services.book.buyers import WARNING, buyer, delete_buyer, delete_due

    book = named_book(named, must_exist=True)
    today = date.today()  # noqa: DTZ011  (the keeper's own calendar)
    if bool(name) == due:
        raise typer.BadParameter("Give a name, or --due for all that are due.")
    if not sure:
        notes = buyer(book, name).notes if name else ()
        told = [f"  {one.about} of {dated(one.on)}, kept {one.kept}" for one in notes]
        typer.echo("\n".join([*told, WARNING, "Nothing was deleted. Say --sure to delete it."]))
        raise typer.Exit(1)
    done = delete_due(book, today) if due else delete_buyer(book, name, today)
    if as_json:
        print_json(done)
        return
    typer.echo(f"Deleted in {done.deleted} notes. Make a new backup, and throw old ones away.")
    for one in done.kept:
        typer.echo(f"Kept {one.kept}: {one.about} of {dated(one.on)}.")
