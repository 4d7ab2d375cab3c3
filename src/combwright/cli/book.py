"""``combwright book``: add notes, look a colony up, take everything out again."""

from dataclasses import asdict
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any, Literal

import typer

from combwright.cli.options import BookOption, JsonOption, named_book, print_json
from combwright.terms.dated import dated

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping
    from uuid import UUID

    from combwright.records.problems import Problem
    from combwright.services.book.book import Page, Report
    from combwright.services.book.own import OwnPage
    from combwright.services.book.own_words import Owned
    from combwright.terms.entries import Noted

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
        print_json(report_json(report))
    else:
        show_report(report, book.place)


@commands.command(epilog="Example: `combwright book show Bramble`")
def show(
    name: Annotated[
        str, typer.Argument(help="The name of a colony, an order, a batch or a queen.")
    ],
    named: BookOption = None,
    as_json: JsonOption = False,
) -> None:
    """Show how a colony, an order, a batch or a queen stands, and all that the book says of it."""
    from combwright.services.book.book import show_colony
    from combwright.services.book.entry_words import stands
    from combwright.services.book.own import show_own
    from combwright.services.book.own_words import own_words
    from combwright.services.people.sharing import whose_notes

    book = named_book(named, must_exist=True)
    page: OwnPage | Page
    if own := show_own(book, name):
        word, page, standing = own.word, own, own_words(own.standing)
    else:
        word, page = "colony", show_colony(book, name)
        standing = stands(page.standing)
    whose = whose_notes(book, [each.id for each in page.entries])
    if as_json:
        entries = [each.model_dump(exclude_none=True) for each in page.entries]
        told = {word: name, "standing": page.standing, "entries": entries}
        print_json(told | ({"noted_by": whose} if whose else {}))
    else:
        _show_page(name, standing, page.entries, whose)


@commands.command("list", epilog="Example: `combwright book list orders --book yard.book`")
def list_own(
    what: Annotated[
        Literal["orders", "batches", "queens", "kit"],
        typer.Argument(help="What is to be listed."),
    ],
    named: BookOption = None,
    as_json: JsonOption = False,
) -> None:
    """List orders in their turn, batches of cells, queens with names, or kit, as they stand."""
    now = named_book(named, must_exist=True).now()
    known: Mapping[str, Owned] = getattr(now, {"kit": "shelf"}.get(what, what))
    if as_json:
        print_json(list(known.values()))
        return
    from combwright.services.book.own_words import own_words

    for name, each in known.items():
        typer.echo(f"{name}: {own_words(each)}")
    if not known:
        typer.echo(f"There {'is' if what == 'kit' else 'are'} no {what} in the book.")


@commands.command(epilog="Example: `combwright book export --format json --out all.json`")
def export(
    form: Annotated[
        Literal["csv", "json", "xlsx"],
        typer.Option("--format", help="A table, a list of objects, or a spreadsheet to look at."),
    ] = "csv",
    out: Annotated[Path | None, typer.Option("--out", help="Write to this file.")] = None,
    named: BookOption = None,
    as_json: Annotated[bool, typer.Option("--json", help="The same as --format json.")] = False,
) -> None:
    """Write out every entry; `combwright book add` makes the same book from it again."""
    from combwright.services.book.book import export as exported
    from combwright.services.book.book import export_sheet, save

    book = named_book(named, must_exist=True)
    wanted = "json" if as_json else form
    text = export_sheet(book) if wanted == "xlsx" else exported(book, wanted)
    if out is None:
        typer.echo(text, nl=False)
    else:
        save(out, text)


@commands.command(
    epilog='Example: `combwright book mend 3f2a91 --set stores_kg=4.5 --reason "read it wrong"`'
)
def mend(
    entry: Annotated[str, typer.Argument(help="The note’s id, or its first letters.")],
    reason: Annotated[str, typer.Option(help="What was wrong with it.")],
    setting: Annotated[
        list[str] | None, typer.Option("--set", help="A field: its name, =, and what is right.")
    ] = None,
    strike_out: Annotated[bool, typer.Option("--strike", help="Strike the note out.")] = False,
    named: BookOption = None,
    as_json: JsonOption = False,
) -> None:
    """Put a note right, or strike it out; the old one stays in the book beside the reason."""
    from uuid import uuid4

    from combwright.services.book.entry_words import said
    from combwright.services.book.mending import changed, entry_named
    from combwright.services.book.notes import NoteError
    from combwright.terms.errors import ClashError

    book = named_book(named, must_exist=True)
    found = entry_named(book, entry)
    today = date.today()  # noqa: DTZ011  (the keeper's own calendar)
    try:
        better = changed(
            book,
            found,
            setting or (),
            is_struck=strike_out,
            change=uuid4(),
            on=today,
            reason=reason,
        )
    except NoteError as error:
        raise ClashError(error.what, remedy="Nothing was changed.") from error
    if as_json:
        print_json({"was": found, "now": better})
    else:
        typer.echo(f"{found.kind} of {dated(found.on)}: “{said(found)}”")
        now = f"is now “{said(better)}”, with the id {str(better.id)[:8]}." if better else ""
        typer.echo(now or "is struck out.")


@commands.command(epilog="Example: `combwright book check --book yard.book`")
def check(
    code: Annotated[
        str, typer.Option(help="The code of a seal on a paper, to be looked up in the book.")
    ] = "",
    named: BookOption = None,
    as_json: JsonOption = False,
) -> None:
    """Go through every entry and its seal: does the book still say what was written into it."""
    from combwright.services.book.checking import check_book, code_words

    book = named_book(named, must_exist=True)
    found = check_book(book)
    if code:
        typer.echo(code_words(book, code), err=as_json)
    if as_json:
        print_json(found)
    else:
        typer.echo(found.wrong or f"{found.words}: every entry fits its seal.")
    if found.wrong:
        raise typer.Exit(1)


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


def report_json(report: "Report") -> dict[str, Any]:
    """Give what became of a file as plain data."""
    return asdict(report) | {"problems": _problems(report.problems)}


def show_report(report: "Report", place: str) -> None:
    """Say what became of a file."""
    from combwright.advice.words.wording import many

    new, corrected = (
        f"{count} {kind} {'entry' if count == 1 else 'entries'}"
        for count, kind in ((report.new, "new"), (report.corrected, "earlier"))
    )
    found = f"{new}, {report.known} known already"
    typer.echo(f"{many(report.lines, 'line')} read into {place}: {found}.")
    if report.corrected:
        typer.echo(f"{corrected} corrected.")
    left_out = [one for one in report.problems if one.blocks]
    for title, some in (
        ("Left out:", left_out),
        ("Worth a second look:", [one for one in report.problems if not one.blocks]),
    ):
        if some:
            typer.echo(title)
            for one in some:
                typer.echo(f"  {one}")


def _show_page(
    name: str, standing: str, entries: "Iterable[Noted]", whose: "Mapping[UUID, str]"
) -> None:
    from rich import box
    from rich.console import Console
    from rich.table import Table

    from combwright.services.book.entry_words import said

    console = Console(highlight=False, markup=False)
    console.print(name, style="bold")
    console.print(standing)
    table = Table(box=box.SIMPLE_HEAD)
    for heading in ("day", "entry", "what it says", "id"):
        table.add_column(heading, overflow="fold", no_wrap=heading == "day")
    for each in entries:
        by = f" ({whose[each.id]})" if each.id in whose else ""
        table.add_row(each.on.isoformat(), each.kind, said(each) + by, str(each.id)[:8])
    console.print(table)
