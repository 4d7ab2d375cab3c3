"""Why: the chain of decisions for one colony, in plain words with the numbers."""

from typing import TYPE_CHECKING, Annotated

import typer

from combwright.cli.options import (
    BookOption,
    JsonOption,
    OnOption,
    day_meant,
    named_book,
    print_json,
)

if TYPE_CHECKING:
    from combwright.services.rounds.why import Told


def tell_why(
    colony: Annotated[str, typer.Argument(help="Name of the colony.")],
    on: OnOption = "",
    days: Annotated[int, typer.Option(help="Days until the next visit.")] = 7,
    short: Annotated[bool, typer.Option("--short", help="Numbers only, for the expert.")] = False,
    seed: Annotated[int, typer.Option(help="Seed of the simulation.")] = 1,
    book: BookOption = None,
    json: JsonOption = False,
) -> None:
    """Tell why a colony is given what it is given, decision by decision.

    Example: `combwright why Bramble --on 2027-04-24`
    """
    from combwright.services.rounds.why import why

    opened = named_book(book, must_exist=True)
    day = day_meant(on, opened)
    told = why(opened, colony, day, days=days, seed=seed)
    if json:
        shown = {"colony": told.sheet.colony, "on": day}
        print_json(shown | {"decisions": told.sheet.decisions, "notes": told.notes})
        return
    show(told, short=short)


def show(told: "Told", *, short: bool) -> None:
    """Print the chain of decisions; a topic without a lesson is told without one."""
    from rich.console import Console
    from rich.markup import escape

    from combwright.services.rounds.why import LESSONS

    console = Console(highlight=False)
    console.print(f"[bold]{escape(told.sheet.colony)}[/bold], {escape(told.sheet.hive)}")
    if not short:
        for name, values in told.notes.items():
            seen = ", ".join(
                f"{round(value, 1):g} on {day.day} {day:%b}" for day, value in values[-5:]
            )
            console.print(f"  noted {name.replace('_', ' ')}: {seen}")
    for each in told.sheet.decisions:
        console.print(f"\n[bold]{each.topic}[/bold]")
        if not short and each.topic in LESSONS:
            console.print(f"  {LESSONS[each.topic]}", style="italic")
        for reason in each.because:
            console.print(f"  {escape(reason)}")
        for job in each.jobs:
            console.print(f"  so: {escape(job)}")
        if each.runner_up and not short:
            console.print(f"  second choice: {escape(each.runner_up)}", style="dim")
