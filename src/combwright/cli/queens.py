"""``combwright queens``: the days that follow from a graft, a split or cells."""

from typing import TYPE_CHECKING, Annotated

import typer

from combwright.cli.options import JsonOption, day_of, print_json
from combwright.terms.percent import in_percent

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
    warmth: Annotated[
        float, typer.Option(help="Mean warmth of the sealed cells, 32 to 35 °C.")
    ] = 34.5,
    wanted: Annotated[
        int | None, typer.Option(help="Laying queens that you need, with nine in ten.")
    ] = None,
    cells: Annotated[
        int | None, typer.Option(help="Ripe cells that you give for them, all on one day.")
    ] = None,
    as_json: JsonOption = False,
) -> None:
    """Show when queens are sealed, emerge, mate, lay and are fit to sell, early and late."""
    from combwright.services.calculators.queen_calendar import queen_calendar

    told = queen_calendar(start, day_of(on), brood_c=warmth, wanted=wanted, cells=cells)
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
    first, last = told.emerges
    typer.echo(f"\nBegun at noon, they emerge {first:%a %d %b %H:%M} to {last:%a %d %b %H:%M}.")
    typer.echo(f"Drones for them come from eggs laid by {told.drone_eggs_by:%a %d %b}.")
    typer.echo(
        f"A ripe cell of that date becomes a laying queen with {in_percent(told.lays)}, as a rule."
    )
    if told.cells_for_wanted is not None:
        typer.echo(f"For so many laying queens give {told.cells_for_wanted} ripe cells.")
    if told.promise_for is not None:
        typer.echo(
            f"From those cells as many nucs can be promised for {told.promise_for:%a %d %b}."
        )
    for sentence in told.how_sure:
        typer.echo(sentence)
