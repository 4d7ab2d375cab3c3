"""``combwright book import``: a spreadsheet of one's own, shown, put right, taken."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Literal

import typer

from combwright.cli.book import report_json, show_report
from combwright.cli.options import BookOption, JsonOption, named_book, print_json

if TYPE_CHECKING:
    from combwright.services.book.importing import Proposal


EXAMPLE = 'Example: `combwright book import diary.xlsx --match "Food=stores kg" --same yard=Home`'


def import_sheet(
    file: Annotated[Path, typer.Argument(help="Your own spreadsheet, CSV or XLSX.")],
    match: Annotated[
        list[str] | None,
        typer.Option(help="Your heading = ours; nothing behind = leaves the column out."),
    ] = None,
    same: Annotated[
        list[str] | None, typer.Option(help="What is the same in every line: yard=Home.")
    ] = None,
    days: Annotated[
        Literal["day first", "month first", "year first"] | None,
        typer.Option(help="How its days are written, where that is not plain."),
    ] = None,
    take: Annotated[
        bool, typer.Option("--take", help="Take it; without it is only shown.")
    ] = False,
    named: BookOption = None,
    as_json: JsonOption = False,
) -> None:
    """Read a sheet of your own: see how it would be read, put that right, then take it."""
    from combwright.services.book.book import contents
    from combwright.services.book.importing import propose, take_sheet

    book, data = named_book(named), contents(file)
    changed, fixed = (dict(one.partition("=")[::2] for one in some or ()) for some in (match, same))
    found = propose(book, data, changed, fixed, days)
    report = take_sheet(book, data, str(file), found) if take else None
    if as_json:
        print_json({"proposal": found, "taken": report and report_json(report)})
    elif report:
        show_report(report, book.place)
    else:
        _show_proposal(found)


def _show_proposal(found: "Proposal") -> None:
    from rich.console import Console
    from rich.table import Table

    console = Console(highlight=False, markup=False)
    for one in found.reading.matches:
        if one.theirs:
            unit = f", in {one.unit}" if one.unit else ""
            console.print(f"{one.theirs} -> {one.ours or 'left out'}{unit}")
    console.print(f"Days are read {found.reading.days}.")
    table = Table(box=None)
    for heading in found.headings:
        table.add_column(heading, overflow="fold", no_wrap=heading == "date")
    for line in found.lines:
        table.add_row(*line)
    console.print(table)
    for problem in found.problems:
        console.print(f"  {problem}")
    for lacking in found.lacking:
        console.print(f"No column is taken for {lacking}: name it with --match.")
    ready = "Add --take to take them." if found.is_ready else "Put that right first."
    lines = "1 line" if found.visits == 1 else f"{found.visits} lines"
    console.print(f"{lines}. Nothing was written. {ready}")
