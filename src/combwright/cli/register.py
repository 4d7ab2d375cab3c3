"""The register of medicines, in the terminal, as JSON, for a spreadsheet or on paper."""

from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from combwright.cli.options import BookOption, JsonOption, named_book, print_json
from combwright.terms.dated import in_days

if TYPE_CHECKING:
    from combwright.services.register.record import Record

MOST_COLUMNS = 7  # that can be read side by side in a terminal


def register(
    country: Annotated[str, typer.Option(help="Whose law: IE (and EU), GB or NI.")],
    year: Annotated[
        list[int] | None, typer.Option(help="A year; give it again for more. This year without it.")
    ] = None,
    pdf: Annotated[Path | None, typer.Option(help="Write it as PDF/A to this file.")] = None,
    csv: Annotated[Path | None, typer.Option(help="Write it for a spreadsheet.")] = None,
    book: BookOption = None,
    json: JsonOption = False,
) -> None:
    """Write the register of medicines that an inspector may ask for, and what is missing in it.

    Example: `combwright register --country IE --year 2027 --pdf register.pdf`
    """
    from combwright.services.book.book import save
    from combwright.services.register import medicines
    from combwright.services.register.tables import as_record

    # the keeper's own calendar
    years = sorted(set(year or [date.today().year]))  # noqa: DTZ011
    opened = named_book(book, must_exist=True)
    found = medicines.register(opened, country.upper(), years)
    if pdf is not None:
        from combwright.paper.record_paper import record_pdf

        save(pdf, record_pdf(as_record(found), words=opened.now().place_word))
    if csv is not None:
        from combwright.services.register.record import as_csv

        save(csv, as_csv(as_record(found)))
    if json:
        print_json(found)
    else:
        show_record(as_record(found))


def show_record(record: "Record") -> None:
    """Print a record: what is missing first."""
    from rich.console import Console
    from rich.table import Table

    console = Console(highlight=False, markup=False)
    console.print(in_days(record.title))
    console.print("Missing:" if record.missing else record.complete)
    for one in record.missing:
        console.print(f"  {in_days(one)}")
    for each in record.tables:
        if not each.rows:
            console.print(f"{in_days(each.title)}: none.")
        elif len(each.headings) > MOST_COLUMNS:
            console.print(in_days(each.title))
            for row in each.rows:
                told = zip(each.headings, row, strict=True)
                said = (f"{word} {in_days(cell)}" for word, cell in told if cell)
                console.print("  " + "; ".join(said))
        else:
            shown = Table(*each.headings, title=in_days(each.title), title_justify="left", box=None)
            for row in each.rows:
                shown.add_row(*map(in_days, row))
            console.print(shown)
    console.print(record.law)
    console.print(record.seal)
