"""``combwright warm``: what a set-up loses, and what changes it."""

from typing import TYPE_CHECKING, Annotated

import typer

from combwright.cli.options import JsonOption

if TYPE_CHECKING:
    from combwright.services.calculators.set_up_warmth import Spread, Warmth


LARGE = 10.0  # shown without a decimal
LEAST_SHOWN = 0.05

EXAMPLE = "Example: `combwright warm --frames-of-bees 7 --outside-c 5`"


def warm(
    *,
    hive: Annotated[str, typer.Option(help="Hive or nuc box, such as 'national timber'.")] = (
        "national timber"
    ),
    frames_of_bees: Annotated[
        float, typer.Option(help="Frames that bees cover on both sides; halves allowed.")
    ] = 7.0,
    frames: Annotated[
        int | None, typer.Option(help="Frames in the box; those covered unless given.")
    ] = None,
    brood_boxes: Annotated[int, typer.Option(help="Brood boxes, 1 to 3.")] = 1,
    dummy_boards: Annotated[int, typer.Option(help="Dummy boards, 0 to 2.")] = 0,
    cover: Annotated[str, typer.Option(help="crown board, cushion or vented.")] = "crown board",
    supers: Annotated[int, typer.Option(help="Supers over the brood box.")] = 0,
    tray_open_mm: Annotated[int, typer.Option(help="How far the tray is drawn out.")] = 0,
    entrance_mm: Annotated[int, typer.Option(help="Width of the entrance.")] = 100,
    nest_c: Annotated[
        float, typer.Option(help="Edge of the nest: 32 with brood, 10 to 14 in a winter cluster.")
    ] = 32.0,
    outside_c: Annotated[float, typer.Option(help="Outside temperature.")] = 5.0,
    wind_m_s: Annotated[float, typer.Option(help="Wind at the hive, metres a second.")] = 0.0,
    as_json: JsonOption = False,
) -> None:
    """Show what a set-up loses, and what a board, a cushion or an open top changes."""
    from combwright.cli.options import kit_named, print_json
    from combwright.services.calculators.set_up_warmth import warmth

    told = warmth(
        hive,
        frames_of_bees,
        kit=kit_named(),
        brood_boxes=brood_boxes,
        nest_c=nest_c,
        outside_c=outside_c,
        wind_m_s=wind_m_s,
        dummy_boards=dummy_boards,
        cover=cover,
        supers=supers,
        tray_open_mm=tray_open_mm,
        entrance_mm=entrance_mm,
        **({} if frames is None else {"frames": frames}),
    )
    if as_json:
        print_json(told.as_json())
        return
    _show(told)


def _show(told: "Warmth") -> None:
    stand = told.set_up
    boards = ("no dummy board", "one dummy board", "two dummy boards")[stand.dummy_boards]
    typer.echo(
        f"{told.hive}: {told.frames_of_bees:g} frames of bees on {stand.frames}, {boards}, "
        f"{stand.cover}"
    )
    typer.echo(f"nest {told.nest_c:g} °C, outside {told.outside_c:g} °C\n")
    typer.echo(f"  loses  {_range(told.loss_w_per_k)} W/K")
    typer.echo(f"         {_range(told.heat_w)} W, each day {_range(told.sugar_g_per_day)} g sugar")
    typer.echo(f"         or {_range(told.syrup_g_per_day)} g of 60 % syrup")
    parts = [f"{name} {value:.2f}" for name, value in told.parts_w_per_k.items() if value]
    typer.echo(f"  of it  {', '.join(parts)} W/K\n")
    typer.echo(f"{'With instead':<34}{'W':>22}{'g 60 % syrup a day':>28}")
    for change in told.changes:
        watts, syrup = _signed(change.saves_w), _signed(change.saves_syrup_g_per_day)
        typer.echo(f"  {change.instead:<32}{watts:>22}{syrup:>28}")
    typer.echo("")
    for sentence in told.how_sure:
        typer.echo(sentence)


def _range(spread: "Spread") -> str:
    low, middle, high = (f"{value:.2g}" for value in (spread.low, spread.middle, spread.high))
    if spread.high >= LARGE:
        low, middle, high = (_whole(v) for v in (spread.low, spread.middle, spread.high))
    return f"{middle} ({low} to {high})"


def _signed(saves: "Spread") -> str:
    """Give what a change does to the need: a saving is less, a waste more."""
    middle, low, high = (_change(-value) for value in (saves.middle, saves.high, saves.low))
    return f"{middle} ({low} to {high})"


def _change(value: float) -> str:
    if abs(value) >= LARGE:
        return f"{float(f'{value:.2g}'):+.0f}"
    return f"{value:+.1f}" if abs(value) >= LEAST_SHOWN else "0"


def _whole(value: float) -> str:
    return f"{float(f'{value:.2g}'):.0f}"
