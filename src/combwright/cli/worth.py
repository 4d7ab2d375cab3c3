"""``combwright worth``: what bees, stores, mites, a super and a young queen are worth by week."""

from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from combwright.cli.options import BookOption, JsonOption, named_book, print_json

if TYPE_CHECKING:
    from combwright.services.worth import Worth

EXAMPLE = "Example: `combwright worth --climate Oxford --svg worth.svg`"


def worth(
    climate: Annotated[str, typer.Option(help="Climate of the year.")] = "Dublin Airport",
    svg: Annotated[Path | None, typer.Option(help="Draw the curves into this file.")] = None,
    book: BookOption = None,
    json: JsonOption = False,
) -> None:
    """Tell what things at a colony are worth, week by week, at your prices."""
    from dataclasses import asdict

    from combwright.services.book.book import save
    from combwright.services.worth import worth_on

    # the keeper's own calendar
    today = date.today()  # noqa: DTZ011
    told = worth_on(named_book(book).now().entries if book else (), today, climate)
    if svg is not None:
        save(svg, told.chart())
    if json:
        print_json(asdict(told))
        return
    show(told)


def show(told: "Worth") -> None:
    """Print a line for each week."""
    from rich.console import Console
    from rich.table import Table

    table = Table(box=None, pad_edge=False)
    table.add_column("week of")
    for name in told.curves:
        table.add_column(name, justify="right")
    for place, week in enumerate(told.weeks):
        values = (f"{curve[place]:.1f}" for curve in told.curves.values())
        table.add_row(f"{week.day} {week:%b}", *values)
    Console(highlight=False).print(table)
