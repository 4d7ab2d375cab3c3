"""``combwright book``: add notes, look a colony up, take everything out again."""

from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any, Literal

import typer

from combwright.cli.options import BookOption, JsonOption, named_book, print_json

if TYPE_CHECKING:
    from collections.abc import Iterable

    from combwright.records.problems import Problem
    from combwright.services.book.book import Page, Report

commands = typer.Typer(no_args_is_help=True, help="The record of what was seen and done.")


@commands.command(epilog="Example: `combwright book add spring.csv --book yard.book`")
def add(
    file: Annotated[Path, typer.Argument(help="A notebook (CSV), or entries that were exported.")],
    keep_good: Annotated[
        bool, typer.Option("--keep-good", help="Take the good lines and leave out the others.")
    ] = False,
    correct: Annotated[
        bool,
        typer.Option(
            "--correct", help="For the colonies and days of this file, let this file be right."
        ),
    ] = False,
    named: BookOption = None,
    as_json: JsonOption = False,
) -> None:
    """Add a notebook to the book: all of it, or nothing. Adding it twice changes nothing."""
    from combwright.services.book.book import RefusedError, add_notebook

    book = named_book(named)
    try:
        report = add_notebook(book, file, keep_good=keep_good, correct=correct)
    except RefusedError as error:
        if not as_json:
            raise
        print_json({"new": 0, "problems": _problems(error.problems)})
        raise typer.Exit(2) from error
    if as_json:
        print_json(_report(report))
    else:
        _show_report(report, book.place)


@commands.command(epilog="Example: `combwright book show Alder`")
def show(
    colony: Annotated[str, typer.Argument(help="The colony's name.")],
    named: BookOption = None,
    as_json: JsonOption = False,
) -> None:
    """Show how a colony stands and all that the book says of it."""
    from combwright.services.book.book import show_colony

    page = show_colony(named_book(named, must_exist=True), colony)
    if as_json:
        print_json(_page(page))
    else:
        _show_page(page)


@commands.command(epilog="Example: `combwright book export --format json --out all.json`")
def export(
    form: Annotated[
        Literal["csv", "json"], typer.Option("--format", help="A table, or a list of objects.")
    ] = "csv",
    out: Annotated[Path | None, typer.Option("--out", help="Write to this file.")] = None,
    named: BookOption = None,
    as_json: Annotated[bool, typer.Option("--json", help="The same as --format json.")] = False,
) -> None:
    """Write out every entry; `combwright book add` makes the same book from it again."""
    from combwright.services.book.book import export as exported
    from combwright.services.book.book import save

    text = exported(named_book(named, must_exist=True), "json" if as_json else form)
    if out is None:
        typer.echo(text, nl=False)
    else:
        save(out, text)


def _problems(problems: "Iterable[Problem]") -> list[dict[str, Any]]:
    return [
        {
            "line": one.line,
            "column": one.column,
            "what": one.what,
            "remedy": one.what_to_do,
            "blocks": one.blocks,
        }
        for one in problems
    ]


def _report(report: "Report") -> dict[str, Any]:
    return asdict(report) | {"problems": _problems(report.problems)}


def _show_report(report: "Report", place: str) -> None:
    found = f"{report.new} new entries, {report.known} known already"
    typer.echo(f"{report.lines} lines read into {place}: {found}.")
    if report.corrected:
        typer.echo(f"{report.corrected} earlier entries corrected.")
    left_out = [one for one in report.problems if one.blocks]
    for title, some in (
        ("Left out:", left_out),
        ("Worth a second look:", [one for one in report.problems if not one.blocks]),
    ):
        if some:
            typer.echo(title)
            for one in some:
                typer.echo(f"  {one}")


def _page(page: "Page") -> dict[str, Any]:
    entries = [each.model_dump(exclude_none=True) for each in page.entries]
    return {"colony": page.standing.colony, "standing": page.standing, "entries": entries}


def _show_page(page: "Page") -> None:
    from rich import box
    from rich.console import Console
    from rich.table import Table

    from combwright.services.book.entry_words import said, stands

    console = Console(highlight=False, markup=False)
    console.print(page.standing.colony, style="bold")
    console.print(stands(page.standing))
    table = Table(box=box.SIMPLE_HEAD)
    for heading in ("day", "entry", "what it says"):
        table.add_column(heading, overflow="fold", no_wrap=heading == "day")
    for each in page.entries:
        table.add_row(each.on.isoformat(), each.kind, said(each))
    console.print(table)
