"""The keeper's prices and aim, in the terminal or as JSON."""

from datetime import date
from typing import TYPE_CHECKING, Annotated

import typer

from combwright.cli.options import BookOption, JsonOption, day_of, named_book, print_json

if TYPE_CHECKING:
    from combwright.services.rounds.price_list import PriceList

EXAMPLE = 'Example: `combwright prices --set honey=9.5 --aim "nucs first"`'


def prices(
    setting: Annotated[
        list[str] | None, typer.Option("--set", help="A price: its name, =, and the amount.")
    ] = None,
    aim: Annotated[
        str | None,
        typer.Option(help="What comes first: as priced, honey first, nucs first, few visits."),
    ] = None,
    on: Annotated[str | None, typer.Option("--on", help="From this day on; today.")] = None,
    book: BookOption = None,
    json: JsonOption = False,
) -> None:
    """Show, or set in the book, what things bring and cost you: all advice is weighed in it."""
    from dataclasses import asdict

    from combwright.services.rounds.price_list import price_list, set_prices

    # the keeper's own calendar
    day = day_of(on) if on else date.today()  # noqa: DTZ011
    asked = dict(priced(one) for one in setting or ())
    opened = named_book(book, must_exist=not (asked or aim))
    if asked or aim:
        set_prices(opened, day, asked, aim)
    told = price_list(opened.now().entries, day)
    if json:
        print_json(asdict(told))
        return
    show(told)


def priced(said: str) -> tuple[str, float]:
    """Read a price as it is given: name=amount."""
    name, sign, amount = said.partition("=")
    try:
        return name.strip(), float(amount)
    except ValueError:
        raise typer.BadParameter(
            f"“{said}” is no price: write it as honey=9.5{'' if sign else ', with ='}."
        ) from None


def show(told: "PriceList") -> None:
    """Print the prices."""
    from rich.console import Console
    from rich.table import Table

    console = Console(highlight=False)
    table = Table(box=None, pad_edge=False)
    for heading in ("price of", "as set", "usual", "unit", "source"):
        table.add_column(heading, justify="right" if heading in {"as set", "usual"} else "left")
    for each in told.prices:
        source = f"{each.source} ({each.verified})"
        table.add_row(each.of, f"{each.amount:g}", f"{each.usual:g}", each.unit, source)
    console.print(table)
    console.print(f"Aim: {told.aim}.")
