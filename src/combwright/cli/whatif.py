"""What if: the plan beside the keeper's own idea."""

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
    from combwright.services.rounds.whatif import Compared


def what_if(
    colony: Annotated[str, typer.Argument(help="Name of the colony.")],
    on: OnOption = "",
    feed_g: Annotated[int | None, typer.Option(help="Grams of feed given at once.")] = None,
    sugar_percent: Annotated[float | None, typer.Option(help="Sugar in the feed, %.")] = None,
    frames: Annotated[int | None, typer.Option(help="Frames in the brood box.")] = None,
    foundation: Annotated[int | None, typer.Option(help="Of these, still to be drawn.")] = None,
    dummy_boards: Annotated[int | None, typer.Option(help="Dummy boards.")] = None,
    supers: Annotated[int | None, typer.Option(help="Supers.")] = None,
    days: Annotated[int, typer.Option(help="Days until the next visit.")] = 7,
    seed: Annotated[int, typer.Option(help="Seed of the simulation.")] = 1,
    book: BookOption = None,
    json: JsonOption = False,
) -> None:
    """Set your own idea beside the plan, under the same weather and luck.

    Example: `combwright whatif Bramble --on 2027-04-24 --feed-g 3000`
    """
    from combwright.services.rounds.whatif import Idea, whatif

    idea = Idea(
        _within(feed_g, 0, 20000, "--feed-g", "grams of feed"),
        _share(sugar_percent),
        _within(frames, 0, 36, "--frames", "frames"),
        _within(foundation, 0, 36, "--foundation", "frames"),
        _within(dummy_boards, 0, 2, "--dummy-boards", "boards"),
        _within(supers, 0, 8, "--supers", "supers"),
    )
    opened = named_book(book, must_exist=True)
    compared = whatif(opened, colony, day_meant(on, opened), idea, days=days, seed=seed)
    if json:
        outcomes = [each.as_json() for each in compared.outcomes]
        print_json({"colony": colony, "until": compared.until, "ways": outcomes})
        return
    _show(compared)


def _within(value: int | None, low: int, high: int, option: str, what: str) -> int | None:
    from combwright.terms.errors import OutOfRangeError

    if value is not None and not low <= value <= high:
        raise OutOfRangeError(
            f"{value} cannot be meant.", where=option, remedy=f"Give {low} to {high} {what}."
        )
    return value


def _share(percent: float | None) -> float | None:
    from combwright.terms.errors import OutOfRangeError

    if percent is None:
        return None
    if not 30.0 <= percent <= 95.0:  # noqa: PLR2004  (said in the sentence)
        raise OutOfRangeError(
            f"{percent:g} % sugar cannot be fed.",
            where="--sugar-percent",
            remedy="Give 30 to 95: 60 is 1.5 kg of sugar to 1 kg of water.",
        )
    return percent / 100.0


def _show(compared: "Compared") -> None:
    from rich.console import Console
    from rich.table import Table

    from combwright.advice.words.wording import chance_words

    until = f"{compared.until.day} {compared.until:%B}"
    table = Table(title=f"{compared.colony} by {until} and three days more")
    table.add_column("")
    for outcome in compared.outcomes:
        table.add_column(outcome.name, justify="right")

    def row(name: str, cells: list[str]) -> None:
        table.add_row(name, *cells)

    row("frames", [str(each.set_up.frames) for each in compared.outcomes])
    row("dummy boards", [str(each.set_up.dummy_boards) for each in compared.outcomes])
    row("supers", [str(each.set_up.supers) for each in compared.outcomes])
    row("feed", [f"{each.feed_g:,} g" for each in compared.outcomes])
    for what in compared.outcomes[0].expected:
        row(what, [_span(each.expected[what]) for each in compared.outcomes])
    for harm in compared.outcomes[0].chances:
        row(f"chance: {harm}", [chance_words(each.chances[harm]) for each in compared.outcomes])
    Console().print(table)


def _span(values: tuple[float, float, float]) -> str:
    low, mid, high = values
    return f"{mid:,g} ({low:,g} to {high:,g})"
