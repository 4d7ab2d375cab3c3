"""``combwright supply``: what can be promised, from which hive, by when."""

from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING, Annotated

import typer

from combwright.cli.options import (
    BookOption,
    JsonOption,
    OnOption,
    day_meant,
    day_of,
    named_book,
    print_json,
)
from combwright.cli.progress import counted
from combwright.terms.percent import in_percent

if TYPE_CHECKING:
    from combwright.services.supply.asked import WhatIf
    from combwright.services.supply.supply_sheet import SupplySheet

EXAMPLE = 'Example: `combwright supply --on 2027-04-24 --what-if "cold 2027-05-20"`'


def supply(
    on: OnOption = "",
    weeks: Annotated[int, typer.Option(help="Weeks of work ahead.")] = 12,
    hours: Annotated[float, typer.Option(help="Your hours a week for nucs.")] = 12.0,
    queens: Annotated[int, typer.Option(help="Mated queens you can buy a week.")] = 0,
    what_if: Annotated[
        list[str] | None,
        typer.Option(
            "--what-if",
            help="“nuc in June=180”, “lost B1” (a batch), or “cold 2027-05-20”: a cold fortnight.",
        ),
    ] = None,
    scenarios: Annotated[int, typer.Option(help="Seasons that the plan must stand.")] = 1000,
    seed: Annotated[int, typer.Option(help="Seed of the simulation.")] = 1,
    book: BookOption = None,
    json: JsonOption = False,
) -> None:
    """Plan the season's nucs and queens: who gives, what is begun when, what can be promised."""
    from combwright.services.supply.asked import AskedSupply
    from combwright.services.supply.season_plan import supply_plan

    opened = named_book(book, must_exist=True)
    asked = AskedSupply(
        day_meant(on, opened), weeks=weeks, scenarios=scenarios, seed=seed, hours=hours,
        queens_a_week=queens, what_if=otherwise(what_if or ()),
    )  # fmt: skip
    with counted(shown=not json) as progress:
        sheet = supply_plan(opened, asked, progress)
    if json:
        print_json(sheet)
    else:
        show(sheet)


def otherwise(told: "list[str] | tuple[str, ...]") -> "WhatIf":
    """Read what may be otherwise."""
    from combwright.cli.prices import priced
    from combwright.services.supply.asked import WhatIf
    from combwright.terms.errors import OutOfRangeError

    prices: dict[str, float] = {}
    lost: set[str] = set()
    cold = None
    for one in told:
        word, _, rest = one.strip().partition(" ")
        if "=" in one:
            prices |= [priced(one)]
        elif word == "lost" and rest:
            lost.add(rest.strip())
        elif word == "cold" and rest:
            cold = day_of(rest)
        else:
            raise OutOfRangeError(
                f"“{one}” is not understood.",
                where="--what-if",
                remedy="Write “nuc in June=180”, “lost B1” or “cold 2027-05-20”.",
            )
    return WhatIf(tuple(prices.items()), frozenset(lost), cold)


def show(sheet: "SupplySheet") -> None:
    """Say the plan: whom to ring, orders, weeks, nucs, donors, money."""
    from combwright.advice.words.wording import chance_words, day_words, many

    for line in sheet.to_ring:
        typer.echo(f"Ring {line.customer} ({line.order}): {line.ring}")
    _section("Orders", [*_orders(sheet), *(colony.said for colony in sheet.colonies)])
    weeks = []
    for week in sheet.weeks:
        done = [
            (week.by_cell, "nuc with a cell"), (week.by_bought_queen, "nuc with a bought queen"),
            (week.mating_nucs, "mating nuc"), (week.grafts, "graft"),
        ]  # fmt: skip
        said = ", ".join(many(count, what) for count, what in done if count)
        lays = chance_words(week.lays)
        weeks.append(f"{day_words(week.week)}: {said or 'nothing'} (a cell lays with {lays})")
    _section("Week by week", weeks)
    _section("Nucs that stand", [f"{nuc.colony} ({nuc.yard}): {nuc.said}" for nuc in sheet.nucs])
    gives = [
        f"{day_words(give.week)}: {give.donor} ({give.yard}) gives {give.frames_of_brood:g} "
        f"frames of brood and {give.frames_of_bees:g} of bees, at a loss of {give.lost:.0f}"
        for give in sheet.gives
    ]
    _section("Donors", gives)
    money = sheet.money
    typer.echo(
        f"Brings {money.income:.0f} on average, plain rules {money.plain_income:.0f} (promises "
        f"kept {in_percent(money.plain_kept)}); {sheet.kept_for_winter:g} nucs are left for winter."
    )
    for sentence in (*sheet.next_spring, *sheet.notices):
        typer.echo(sentence)


def _orders(sheet: "SupplySheet") -> Iterator[str]:
    from combwright.advice.words.wording import chance_words, day_words, many

    for line in sheet.orders:
        promise = ""
        if line.week is not None and line.chance is not None:
            promise = f"by {day_words(line.week)}, {chance_words(line.chance)}; "
        wanted = many(line.count, line.what)
        yield f"{line.order}, {wanted} for {line.customer}: {promise}{line.rests_on}"
        for way in line.possible_with:
            yield f"  possible with {way}"


def _section(title: str, lines: Iterable[str]) -> None:
    typer.echo(title)
    for line in list(lines) or ["none"]:
        typer.echo(f"  {line}")
