"""The round of a day in the terminal, as JSON or on paper."""

from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Final

import typer

from combwright.cli.options import (
    BookOption,
    JsonOption,
    OnOption,
    day_meant,
    in_own_words,
    named_book,
)
from combwright.terms.percent import in_percent

if TYPE_CHECKING:
    from rich.console import Console

    from combwright.planning.at_every_colony import Everywhere
    from combwright.planning.sheet import Band, ColonySheet, RoundSheet, Stop


COUNTED_IN: Final = (
    "Two columns of the notebook say it once: “brood counted in” and “bees counted in”."
)
NO_TIME: Final = "  [bold](no time today)[/bold]"
NO_BROOD: Final = "0.0 (0.0 to 0.0)"


def plan_round(
    on: OnOption = "",
    yard: Annotated[str | None, typer.Option(help="One yard; all when left out.")] = None,
    days: Annotated[int, typer.Option(help="Days until the next visit.")] = 7,
    pdf: Annotated[Path | None, typer.Option(help="Write the sheet as PDF to this file.")] = None,
    seed: Annotated[int, typer.Option(help="Seed of the simulation.")] = 1,
    members: Annotated[int, typer.Option(help="Simulated colonies for each real one.")] = 200,
    minutes: Annotated[
        float | None, typer.Option(help="Minutes that you have, without the road.")
    ] = None,
    book: BookOption = None,
    json: JsonOption = False,
) -> None:
    """Plan the round of a day: what to do at each colony, how much, why, and what if not.

    Example: `combwright round --on 2027-04-24 --yard "Alder Bank" --pdf round.pdf`
    """
    from combwright.cli.progress import counted
    from combwright.services.rounds.from_book import round_sheet
    from combwright.terms.dated import dated
    from combwright.terms.entries import Visit

    opened = named_book(book, must_exist=True)
    with counted(shown=not json) as progress:
        sheet = round_sheet(
            opened,
            day_meant(on, opened),
            yard=yard,
            days=days,
            members=members,
            minutes=minutes,
            seed=seed,
            progress=progress,
        )
    if pdf is not None:
        from combwright.paper.round_sheet import round_pdf
        from combwright.services.book.book import save

        save(pdf, round_pdf(sheet, words=opened.now().place_word))
    if json:
        typer.echo(sheet.model_dump_json(indent=2))
        return
    show(sheet)
    if any(isinstance(each, Visit) for each in opened.now().on(sheet.on)):
        typer.echo(f"What was noted on {dated(sheet.on)} itself is not in it yet.")
    if pdf is not None:
        typer.echo(f"The sheet to print is {pdf}.")


def show(sheet: "RoundSheet") -> None:
    """Print a round in the terminal."""
    from rich.console import Console

    from combwright.paper.sheet_words import day_words
    from combwright.planning.at_every_colony import everywhere
    from combwright.terms.entries import HowCounted

    console = Console(highlight=False, soft_wrap=False)
    console.print(
        f"[bold]Round on {day_words(sheet.on)}[/bold]  (weather: {_plain(sheet.weather)})"
    )
    said = everywhere(sheet)
    console.rule(said.title)
    for job in said.jobs:
        _item(console, "[ ]", job)
    for branch in said.branches:
        _item(console, f"if you find {branch.found}:", " ".join(branch.do))
    yard = None
    for colony in sheet.colonies:
        if colony.yard != yard:
            yard = colony.yard
            console.rule(_plain(yard))
        waits = colony.colony in {left.colony for left in sheet.left_out}
        _colony(console, colony, said, sheet.on, NO_TIME if waits else "")
    _supplies(console, sheet)
    if sheet.left_out:
        console.rule("No time for today")
    for left in sheet.left_out:
        _item(console, "-", left.said)
    if any(HowCounted.TITLE in each for colony in sheet.colonies for each in colony.questions):
        console.rule(HowCounted.TITLE)
        _item(console, "-", COUNTED_IN)
    console.rule("Take care")
    for notice in sheet.notices:
        _item(console, "-", notice, style="dim")


def _plain(text: str) -> str:
    from rich.markup import escape

    return escape(text)


def _item(console: "Console", lead: str, text: str, *, style: str = "") -> None:
    """Print a line with its continuation indented under it."""
    from rich.padding import Padding
    from rich.text import Text

    words = Text(in_own_words(f"{lead} {text}"), style=style)
    console.print(Padding(words, (0, 0, 0, 3)), highlight=False)


def _span(band: "Band", digits: int = 1) -> str:
    low, mid, high = (f"{value:,.{digits}f}" for value in (band.low, band.mid, band.high))
    return f"{mid} ({low} to {high})"


def _colony(
    console: "Console", colony: "ColonySheet", said: "Everywhere", on: date, waits: str
) -> None:
    from combwright.paper.sheet_words import seen_words

    expected = colony.expected
    brood = _span(expected.frames_of_brood)
    console.print(
        f"\n[bold]{colony.order}. {_plain(colony.colony)}[/bold]  {_plain(colony.hive)}, "
        f"{seen_words(colony.last_visit, on)}, {_stands(colony)}{waits}"
    )
    _item(
        console,
        "expect",
        f"{_span(expected.frames_of_bees)} frames of bees, "
        f"{'no brood' if brood == NO_BROOD else f'{brood} of brood'}, "
        f"{_span(expected.stores_kg)} kg of stores, "
        f"room for {_span(expected.room_cells, 0)} eggs",
    )
    for question in colony.questions:
        _item(console, "?", question, style="bold")
    for job in said.jobs_of(colony):
        _item(console, "[ ]", job)
    if colony.after_the_feed:
        _item(console, "fed:", colony.after_the_feed)
    for reason in colony.because:
        _item(console, "why:", reason, style="dim")
    for branch in said.branches_of(colony):
        _item(console, f"if you find {branch.found}:", " ".join(branch.do))


def _stands(colony: "ColonySheet") -> str:
    """Say how the stack should stand after the visit."""
    stack = colony.set_up
    boxes = f" in {stack.brood_boxes} brood boxes" if stack.brood_boxes > 1 else ""
    parts = [f"leave it on {_count(stack.frames, 'frame')}{boxes}"]
    if stack.dummy_boards:
        parts.append(_count(stack.dummy_boards, "dummy board"))
    if stack.supers:
        parts.append(_count(stack.supers, "super"))
    return " + ".join(parts)


def _count(number: int, what: str) -> str:
    return f"{number} {what}{'' if number == 1 else 's'}"


def _supplies(console: "Console", sheet: "RoundSheet") -> None:
    from combwright.planning.supplies import ALWAYS

    bench = sheet.bench
    console.rule("Bench")
    for step in bench.steps or ["Nothing to prepare."]:
        _item(console, "[ ]", step)
    if bench.syrup_l:
        _item(
            console,
            "makes",
            f"{bench.syrup_l:g} L of syrup, {in_percent(bench.sugar_fraction)} sugar",
            style="dim",
        )
    console.rule("Load")
    for stop in sheet.load:
        wanted = ", ".join(_loaded(stop)) or "nothing beside the usual"
        console.print(f"   [bold]{_plain(stop.yard)}[/bold] ({_count_of_colonies(stop)}): {wanted}")
    if sheet.load:
        usual = [item for item in ALWAYS if all(item in stop.items for stop in sheet.load)]
        _item(console, "always:", "; ".join(usual), style="dim")
        for stop in sheet.load:
            for item in stop.items:
                if item not in usual:
                    _item(console, f"{stop.yard}:", item)


def _count_of_colonies(stop: "Stop") -> str:
    return "1 colony" if stop.colonies == 1 else f"{stop.colonies} colonies"


def _loaded(stop: "Stop") -> list[str]:
    """Name what goes into the van for a yard, without what is not needed."""
    feed = [f"{stop.syrup_l:g} L of syrup"] if stop.syrup_l else []
    feed += [f"{stop.fondant_kg:g} kg of fondant"] if stop.fondant_kg else []
    counted = (
        (stop.frames_drawn, "drawn frame"),
        (stop.frames_foundation, "frame with foundation"),
        (stop.dummy_boards, "dummy board"),
        (stop.supers, "super"),
        (stop.excluders, "queen excluder"),
    )
    return feed + [_many(number, what) for number, what in counted if number]


def _many(number: int, what: str) -> str:
    first, *rest = what.split(" with ")
    return " with ".join([_count(number, first), *rest])
