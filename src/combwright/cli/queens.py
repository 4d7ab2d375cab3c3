"""``combwright queens``: the days that follow from a graft, a split or cells."""

from typing import TYPE_CHECKING, Annotated

import typer

from combwright.cli.options import JsonOption, day_of, print_json

if TYPE_CHECKING:
    from combwright.services.calculators.queen_calendar import QueenCalendar

EXAMPLE = "Example: `combwright queens --from graft --on 2027-05-20`"


def queens(
    *,
    start: Annotated[
        str,
        typer.Option(
            "--from",
            help="graft, walk-away (queen taken), egg (laid that day); or seen in a swarming "
            "colony: egg in a cup, charged cell, sealed cell, virgin.",
        ),
    ],
    on: Annotated[str, typer.Option("--on", help="Day of it, 2027-05-20.")],
    as_json: JsonOption = False,
) -> None:
    """Show when queens are sealed, emerge, mate, lay and are fit to sell, early and late."""
    from combwright.services.calculators.queen_calendar import queen_calendar

    told = queen_calendar(start, day_of(on))
    if as_json:
        print_json(told)
    else:
        _show(told)


def _show(told: "QueenCalendar") -> None:
    typer.echo(f"{told.start} on {told.day_0:%a %d %b %Y}\n")
    typer.echo(f"{'':>15}{'usual':<14}{'early':<10}late")
    for each in told.stages:
        days = f"{each.usual:%a %d %b}    {each.early:%d %b}    {each.late:%d %b}"
        typer.echo(f"{each.stage:>13}  {days}  {each.to_do}")
    typer.echo("")
    for sentence in told.how_sure:
        typer.echo(sentence)
