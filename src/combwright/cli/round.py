"""The round of a day in the terminal, as JSON or on paper."""

from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from combwright.cli.options import BookOption, book_path

if TYPE_CHECKING:
    from rich.console import Console

    from combwright.planning.sheet import Band, ColonySheet, RoundSheet


def register(app: typer.Typer) -> None:
    """Put the command into the command line."""
    app.command("round")(plan_round)


def plan_round(
    on: Annotated[
        datetime, typer.Option("--on", formats=["%Y-%m-%d"], help="Day of the round, 2027-04-24.")
    ],
    yard: Annotated[str | None, typer.Option(help="One yard; all when left out.")] = None,
    days: Annotated[int, typer.Option(help="Days until the next visit.")] = 7,
    pdf: Annotated[Path | None, typer.Option(help="Write the sheet as PDF to this file.")] = None,
    seed: Annotated[int, typer.Option(help="Seed of the simulation.")] = 1,
    members: Annotated[int, typer.Option(help="Simulated colonies for each real one.")] = 200,
    book: BookOption = None,
    json: Annotated[bool, typer.Option("--json", help="Print JSON only.")] = False,
) -> None:
    """Plan the round of a day: what to do at each colony, how much, why, and what if not.

    Example: `combwright round --on 2027-04-24 --yard "Alder Bank" --pdf round.pdf`
    """
    from combwright.cli.progress import counted
    from combwright.services.round import round_sheet

    with counted("colonies planned", shown=not json) as progress:
        sheet = round_sheet(
            book_path(book),
            on.date(),
            yard=yard,
            days=days,
            members=members,
            seed=seed,
            progress=progress,
        )
    if pdf is not None:
        from combwright.paper.round_sheet import round_pdf
        from combwright.services.book import save

        save(pdf, round_pdf(sheet))
    if json:
        typer.echo(sheet.model_dump_json(indent=2))
        return
    show(sheet)
    if pdf is not None:
        typer.echo(f"The sheet to print is {pdf}.")


def show(sheet: "RoundSheet") -> None:
    """Print a round in the terminal."""
    from rich.console import Console

    console = Console(highlight=False, soft_wrap=False)
    console.print(f"[bold]Round on {sheet.on:%A %d %B %Y}[/bold]  ({sheet.weather})")
    yard = None
    for colony in sheet.colonies:
        if colony.yard != yard:
            yard = colony.yard
            console.rule(_plain(yard))
        _colony(console, colony)
    _supplies(console, sheet)
    console.print("\n" + "\n".join(sheet.notices), style="dim")


def _plain(text: str) -> str:
    from rich.markup import escape

    return escape(text)


def _span(band: "Band", digits: int = 1) -> str:
    return f"{band.mid:.{digits}f} ({band.low:.{digits}f} to {band.high:.{digits}f})"


def _colony(console: "Console", colony: "ColonySheet") -> None:
    expected = colony.expected
    console.print(f"\n[bold]{colony.order}. {_plain(colony.colony)}[/bold]  {colony.hive}")
    console.print(
        f"   expect {_span(expected.frames_of_bees)} frames of bees, "
        f"{_span(expected.frames_of_brood)} of brood, {_span(expected.stores_kg)} kg of stores, "
        f"room for {_span(expected.room_cells, 0)} eggs"
    )
    for question in colony.questions:
        console.print(f"   [bold]?[/bold] {_plain(question)}")
    for job in colony.jobs:
        console.print(f"   \\[ ] {_plain(job)}")
    for reason in colony.because:
        console.print(f"   why: {_plain(reason)}", style="dim")
    for branch in colony.branches:
        console.print(f"   if you find {_plain(branch.found)}: {_plain(' '.join(branch.do))}")


def _supplies(console: "Console", sheet: "RoundSheet") -> None:
    bench = sheet.bench
    console.rule("Bench")
    console.print(
        f"{bench.syrup_l:g} L of syrup: {bench.sugar_kg:g} kg sugar, {bench.water_kg:g} kg water "
        f"({bench.sugar_fraction:.0%}); {bench.frames_drawn} drawn frames, "
        f"{bench.frames_foundation} with foundation, {bench.dummy_boards} dummy boards, "
        f"{bench.supers} supers"
    )
    console.rule("Load")
    for stop in sheet.load:
        console.print(
            f"[bold]{_plain(stop.yard)}[/bold] ({stop.colonies} colonies): "
            f"{stop.syrup_l:g} L syrup, {stop.fondant_kg:g} kg fondant, "
            f"{stop.frames_drawn} drawn frames, "
            f"{stop.frames_foundation} with foundation, {stop.dummy_boards} boards, "
            f"{stop.supers} supers, {stop.excluders} excluders"
        )
    if sheet.load:
        console.print(f"always: {', '.join(sheet.load[0].items)}", style="dim")
