"""``combwright season``: how a colony fares from a start on, or two under the same luck."""

import json
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

from combwright.cli.options import JsonOption
from combwright.terms.percent import in_percent

if TYPE_CHECKING:
    from datetime import date

    from rich.table import Table

    from combwright.services.season import Season, Start

EXAMPLE = (
    'Example: `combwright season --feeding portions --against "feeding=none" '
    "--show frames_of_bees --svg season.svg`, or "
    "`combwright season --start 2026-08-01 --years 3 --frames-of-bees 11 --stores-kg 14 "
    "--show adults --svg years.svg`"
)
SHOWN = ("frames_of_bees", "frames_of_brood", "stores_kg", "mites", "honey_taken_kg")


def season(
    *,
    start: Annotated[str, typer.Option(help="First day.")] = "2026-03-20",
    until: Annotated[str, typer.Option(help="Last day; the end of October unless given.")] = "",
    years: Annotated[
        int, typer.Option(help="Years from the first day on, 1 to 4, instead of a last day.")
    ] = 0,
    frames_of_bees: Annotated[float, typer.Option(help="Frames of bees on the first day.")] = 6.0,
    frames_of_brood: Annotated[
        float | None, typer.Option(help="Frames of brood; as usual for the day unless given.")
    ] = None,
    stores_kg: Annotated[float, typer.Option(help="Stores on the first day.")] = 8.0,
    mites: Annotated[float, typer.Option(help="Mites on the first day.")] = 40.0,
    queen_year: Annotated[int | None, typer.Option(help="Year in which the queen hatched.")] = None,
    hive: Annotated[str, typer.Option(help="Hive or nuc box.")] = "national timber",
    brood_boxes: Annotated[int, typer.Option(help="Brood boxes, 1 to 3.")] = 1,
    frames: Annotated[int, typer.Option(help="Frames in them.")] = 11,
    foundation: Annotated[int, typer.Option(help="Of them still to be drawn.")] = 0,
    dummy_boards: Annotated[int, typer.Option(help="Dummy boards, 0 to 2.")] = 0,
    supers: Annotated[int, typer.Option(help="Supers on the first day.")] = 0,
    cover: Annotated[str, typer.Option(help="crown board, cushion or vented.")] = "crown board",
    feeding: Annotated[str, typer.Option(help="portions, full feeder or none.")] = "portions",
    treating: Annotated[
        str, typer.Option(help="Against mites: usual (August and midwinter) or none.")
    ] = "usual",
    more_supers: Annotated[bool, typer.Option(help="Add supers as they fill.")] = True,
    swarm_control: Annotated[bool, typer.Option(help="Look for queen cells every week.")] = True,
    climate: Annotated[str, typer.Option(help="A built-in climate.")] = "Dublin Airport",
    district: Annotated[str | None, typer.Option(help="What grows there.")] = None,
    warmer: Annotated[float, typer.Option(help="Degrees warmer than the climate.")] = 0.0,
    against: Annotated[
        str, typer.Option(help="Second variant: options to change, as 'feeding=none, frames=7'.")
    ] = "",
    members: Annotated[int, typer.Option(help="Simulated colonies, each in its own year.")] = 200,
    seed: Annotated[int, typer.Option(help="Seed of weather and luck.")] = 1,
    show: Annotated[str, typer.Option(help="What --svg draws.")] = "frames_of_bees",
    svg: Annotated[Path | None, typer.Option(help="Write the chart to this file.")] = None,
    as_json: JsonOption = False,
) -> None:
    """Show how a colony fares from a start on, with bands; or two variants under the same luck."""
    from datetime import date

    from combwright.cli.options import day_of, kit_named
    from combwright.services import season as service

    said = {
        "frames_of_bees": frames_of_bees,
        "frames_of_brood": frames_of_brood,
        "stores_kg": stores_kg,
        "mites": mites,
        "queen_year": queen_year,
        "hive": hive,
        "brood_boxes": brood_boxes,
        "frames": frames,
        "foundation": foundation,
        "dummy_boards": dummy_boards,
        "supers": supers,
        "cover": cover,
        "feeding": feeding,
        "treating": treating,
        "more_supers": more_supers,
        "swarm_control": swarm_control,
        "climate": climate,
        "district": district,
        "warmer": warmer,
    }
    first = day_of(start)
    if years:
        last = date(first.year + years, first.month, min(first.day, 28))
    elif until:
        last = day_of(until)
    else:
        last = date(first.year + (first.month > 9), 10, 31)  # noqa: PLR2004
    variants = {"this way": said}
    if against:
        variants[against] = {**said, **_changes(against, said)}
    kit = kit_named()
    seasons = {
        name: service.season(_start(values), first, last, kit=kit, members=members, seed=seed)
        for name, values in variants.items()
    }
    if svg is not None:
        from combwright.services.book.book import save

        save(svg, service.chart(seasons, show).encode())
    if as_json:
        typer.echo(json.dumps(_plain(seasons), ensure_ascii=False))
        return
    for name, one in seasons.items():
        _table(name if against else "", one, first)
    if svg is not None:
        typer.echo(f"The chart is {svg}.")


def _changes(text: str, said: dict[str, Any]) -> dict[str, Any]:
    """Read the second variant: names of options with their values."""
    from combwright.terms.errors import OutOfRangeError

    changed: dict[str, Any] = {}
    for part in text.split(","):
        name, equals, value = (piece.strip() for piece in part.partition("="))
        key = name.removeprefix("--").replace("-", "_")
        if not equals or key not in said:
            raise OutOfRangeError(
                f"“{part.strip()}” is not an option that a second variant can change.",
                where="--against",
                remedy=f"Write name=value with: {', '.join(said)}.",
            )
        changed[key] = _value(key, value)
    return changed


def _value(key: str, text: str) -> Any:  # noqa: ANN401 - a number, yes/no or word
    from combwright.terms.errors import OutOfRangeError

    if key in {"hive", "cover", "feeding", "treating", "climate", "district"}:
        return text
    if key in {"more_supers", "swarm_control"}:
        return text.casefold() in {"yes", "true", "1"}
    try:
        number = float(text)
    except ValueError as error:
        raise OutOfRangeError(
            f"“{text}” is not a number.", where=f"--against, {key}", remedy="Write it in digits."
        ) from error
    whole = key in {"brood_boxes", "frames", "foundation", "dummy_boards", "supers", "queen_year"}
    return int(number) if whole else number


def _start(said: dict[str, Any]) -> "Start":
    from combwright.services.season import Start
    from combwright.simulation.hands.keeper import Keeping
    from combwright.terms.errors import OutOfRangeError
    from combwright.terms.set_up import set_up_of

    for key, known in (
        ("feeding", ("portions", "full feeder", "none")),
        ("treating", ("usual", "none")),
    ):
        if said[key] not in known:
            raise OutOfRangeError(
                f"{key} cannot be “{said[key]}”.", remedy=f"Choose from: {', '.join(known)}."
            )
    box = ("hive", "brood_boxes", "frames", "foundation", "dummy_boards", "supers", "cover")
    return Start(
        set_up=set_up_of(**{key: said[key] for key in box}),
        frames_of_bees=said["frames_of_bees"],
        frames_of_brood=said["frames_of_brood"],
        stores_kg=said["stores_kg"],
        mites=said["mites"],
        queen_year=said["queen_year"],
        climate=said["climate"],
        district=said["district"],
        warmer_k=said["warmer"],
        keeping=Keeping(
            feeding=said["feeding"],
            treating=said["treating"],
            supers=said["more_supers"],
            swarm_control=said["swarm_control"],
        ),
    )


def _plain(seasons: "dict[str, Season]") -> dict[str, Any]:
    first, *others = seasons.items()
    days = [day.isoformat() for day in first[1].courses["adults"].days]
    told: dict[str, Any] = {"dates": days, **first[1].as_json()}
    if others:
        name, other = others[0]
        told["against"] = {"changes": name, **other.as_json()}
    return told


def _table(name: str, one: "Season", first: "date") -> None:
    from rich.console import Console
    from rich.table import Table

    from combwright.services.season import TITLES

    table = Table(title=name or f"From {first:%-d %B %Y}, middle (5 to 95 %)", title_justify="left")
    table.add_column("day")
    for quantity in SHOWN:
        title, unit = TITLES[quantity]
        table.add_column(f"{title}, {unit}" if unit else title, justify="right")
    days = one.courses["adults"].days
    long = days[-1].year > days[0].year
    for place, day in enumerate(days):
        if place not in {0, len(days) - 1} and day.day != 1:
            continue
        cells = [_cell(one.courses[quantity], place) for quantity in SHOWN]
        table.add_row(f"{day:%-d %b %Y}" if long else f"{day:%-d %b}", *cells)
    console = Console(highlight=False)
    console.print(table)
    if one.years:
        console.print(_years(one))
    console.print(
        f"Colonies lost {in_percent(one.lost)}, swarms for each colony {one.swarmed:.2f}."
    )


def _years(one: "Season") -> "Table":
    """Make a table of whole years from the first day on."""
    from rich.table import Table

    table = Table(title="Whole years, middle (5 to 95 %)", title_justify="left")
    table.add_column("year to")
    titles = ("most bees", "fewest bees", "honey taken, kg", "sugar fed, kg", "lost by its end")
    for title in titles:
        table.add_column(title, justify="right")
    for year in one.years:
        cells = [_band(*band) for band in year.bands.values()]
        table.add_row(f"{year.until:%-d %b %Y}", *cells, in_percent(year.lost))
    return table


def _cell(course: Any, place: int) -> str:  # noqa: ANN401 - a figures.bands.Course
    return _band(course.low[place], course.mid[place], course.high[place])


def _band(low: float, mid: float, high: float) -> str:
    style = ",.0f" if high >= 100 else ".1f"  # noqa: PLR2004 - three figures are enough
    return f"{mid:{style}} ({low:{style}} to {high:{style}})"
