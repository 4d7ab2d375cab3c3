"""One colony's past and the weeks ahead, in the terminal, as JSON or as charts."""

from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from combwright.cli.options import BookOption, JsonOption, day_meant, named_book, print_json

if TYPE_CHECKING:
    from rich.console import Console

    from combwright.services.beliefs.branching import Series
    from combwright.services.beliefs.colony_history import ColonyHistory

WIDTH, NARROWEST = 48, 12
BESIDE = 40  # what stands beside the drawing: the day, the band, what was noted
IN_THE_TERMINAL = ("frames_of_bees", "frames_of_brood", "stores_kg")


def colony(
    name: Annotated[str, typer.Argument(help="The colony's name in the book.")],
    on: Annotated[
        str,
        typer.Option("--on", help="Day from which to look ahead, 2027-04-24; as a rule today."),
    ] = "",
    weeks: Annotated[int, typer.Option(help="Weeks to look ahead, 1 to 12.")] = 4,
    svg: Annotated[
        Path | None, typer.Option(help="Write a chart of each quantity into this folder.")
    ] = None,
    seed: Annotated[int, typer.Option(help="Seed of the simulation.")] = 1,
    members: Annotated[int, typer.Option(help="Simulated colonies for the real one.")] = 200,
    book: BookOption = None,
    json: JsonOption = False,
) -> None:
    """Show a colony: what you noted, what was believed, and the weeks ahead if nothing is done.

    Example: `combwright colony Bramble --on 2027-04-24 --svg charts`
    """
    from combwright.services.beliefs.colony_history import colony_history

    opened = named_book(book, must_exist=True)
    day = day_meant(on, opened)
    told = colony_history(opened, name, day, weeks_ahead=weeks, members=members, seed=seed)
    written = _charts(told, svg) if svg is not None else []
    if json:
        print_json(told)
        return
    from rich.console import Console

    show(Console(highlight=False, soft_wrap=True), told)
    for path in written:
        typer.echo(f"Written: {path}")


def show(console: "Console", told: "ColonyHistory") -> None:
    """Print a colony's past and future in the terminal."""
    from rich.markup import escape

    from combwright.advice.words.wording import chance_words
    from combwright.services.beliefs.colony_history import TITLES

    console.print(f"[bold]{escape(told.colony)}[/bold] in {escape(told.yard)}, {told.on:%d %B %Y}")
    for question in told.questions:
        console.print(f"[bold]?[/bold] {escape(question)}")
    for notice in told.notices:
        console.print(f"! {escape(notice)}")
    for quantity in IN_THE_TERMINAL:
        title, unit = TITLES[quantity]
        console.print(f"\n[bold]{title}[/bold]" + ("" if unit == "frames" else f", {unit}"))
        for line in lines(told, quantity, max(NARROWEST, min(WIDTH, console.width - BESIDE))):
            console.print(escape(line))
    for fork in told.forks:
        console.print(
            f"\nIt {fork.what} with a chance of {chance_words(fork.chance)} by "
            f"{told.days[-1].day} {told.days[-1]:%B}; then "
            f"{fork.series['frames_of_bees'].mid[-1]:.1f} frames of bees are left."
        )
    console.print(
        "\n│──┼──│ is where nine in ten simulated colonies lie, ┼ their middle, o what you noted; "
        "below the rule the weeks ahead, if nothing is done.",
        style="dim",
    )


def lines(told: "ColonyHistory", quantity: str, width: int = WIDTH) -> list[str]:
    """Draw one quantity as lines of text: past days with notes, then each week ahead.

    ``width`` is that of the drawing, in letters.
    """
    series, noted = told.series[quantity], dict(told.notes.get(quantity, ()))
    most = max([*series.high, *noted.values(), 1e-9])
    drawn, ruled = [], False
    for place, day in enumerate(told.days):
        ahead = (day - told.on).days
        if ahead >= 0 and not ruled:
            drawn.append("-" * (width + BESIDE - 1))
            ruled = True
        if ahead % 7 == 0 if ahead >= 0 else day in noted:
            drawn.append(_line(day, series, place, noted.get(day), most, width))
    return drawn


def _line(
    day: date, series: "Series", place: int, seen: float | None, most: float, width: int
) -> str:
    low, mid, high = series.low[place], series.mid[place], series.high[place]

    def column(value: float) -> int:
        return round(value / most * (width - 1))

    cells = [" "] * width
    for at in range(column(low), column(high) + 1):
        cells[at] = "─"
    cells[column(low)] = cells[column(high)] = "│"
    cells[column(mid)] = "┼"
    if seen is not None:
        cells[column(seen)] = "o"
    said = "" if seen is None else f"  noted {seen:.1f}"
    return f"{day:%d %b} {''.join(cells)} {mid:5.1f} ({low:.1f} to {high:.1f}){said}"


def _charts(told: "ColonyHistory", folder: Path) -> list[Path]:
    from combwright.services.beliefs.history_chart import history_chart
    from combwright.services.book.book import save

    folder.mkdir(parents=True, exist_ok=True)
    written = []
    for quantity in told.series:
        path = folder / f"{quantity.replace('_', '-')}.svg"
        save(path, history_chart(told, quantity))
        written.append(path)
    return written
