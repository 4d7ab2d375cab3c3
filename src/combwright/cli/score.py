"""How good past forecasts were, in the terminal or as JSON."""

from typing import TYPE_CHECKING, Annotated

import typer

from combwright.cli.options import BookOption, JsonOption, day_meant, named_book
from combwright.terms.percent import in_percent

if TYPE_CHECKING:
    from combwright.services.beliefs.score import ScoreLine, ScoreReport


def score(
    colony: Annotated[str | None, typer.Argument(help="One colony; all when left out.")] = None,
    on: Annotated[
        str,
        typer.Option("--on", help="Visits before this day, 2027-04-24; as a rule today."),
    ] = "",
    seed: Annotated[int, typer.Option(help="Seed of the simulation.")] = 1,
    members: Annotated[int, typer.Option(help="Simulated colonies for each real one.")] = 200,
    book: BookOption = None,
    json: JsonOption = False,
) -> None:
    """Score past forecasts: each visit against what was expected before it, and two rules of thumb.

    Example: `combwright score --on 2027-04-24`
    """
    from combwright.cli.progress import counted
    from combwright.services.beliefs.score import score_book

    opened = named_book(book, must_exist=True)
    day = day_meant(on, opened)
    with counted(shown=not json) as progress:
        report = score_book(
            opened, day, colony=colony, members=members, seed=seed, progress=progress
        )
    if json:
        from pydantic import TypeAdapter

        from combwright.services.beliefs.score import ScoreReport

        typer.echo(TypeAdapter(ScoreReport).dump_json(report, indent=2).decode())
        return
    show(report)


def show(report: "ScoreReport") -> None:
    """Print the scores of a book in the terminal."""
    from rich.console import Console
    from rich.table import Table

    console = Console(highlight=False)
    for line in report.together:
        console.print(line.in_words)
    table = Table(box=None, pad_edge=False, title="By colony", title_justify="left")
    for heading in (
        "colony",
        "quantity",
        "notes",
        "in 50 %",
        "in 90 %",
        "error",
        "last time",
        "trend",
    ):
        table.add_column(heading, justify="left" if heading in {"colony", "quantity"} else "right")
    for line in report.by_colony:
        table.add_row(*_cells(line))
    console.print(table)
    console.print(
        "The error is how far off the forecast was, its spread counted in (CRPS), beside the "
        "errors of “same as last time” and of a straight line through the last two notes.",
        style="dim",
    )


def _cells(line: "ScoreLine") -> tuple[str, ...]:
    from rich.markup import escape

    rules = [
        "" if rule is None else f"{rule:.2f}" for rule in (line.error_last_time, line.error_trend)
    ]
    return (
        escape(line.colony or ""),
        line.quantity.replace("_", " ").replace(" kg", ", kg"),
        str(line.forecasts),
        in_percent(line.within_50),
        in_percent(line.within_90),
        f"{line.error:.2f}",
        *rules,
    )
