"""Notes of orders, batches and queens with names that cannot be true."""

from collections.abc import Iterable, Iterator
from difflib import get_close_matches
from itertools import pairwise
from typing import Final

from combwright.kit.catalogue import Catalogue
from combwright.records.problems import Problem, odd, wrong
from combwright.records.replay.known_orders import KnownOrder, known_orders
from combwright.records.replay.known_queens import STEPS
from combwright.science.queens.mark_colour import mark_colour
from combwright.terms.dated import dated
from combwright.terms.entries import (
    Batch,
    BatchCounts,
    Noted,
    Order,
    OrderNews,
    OwnQueen,
    OwnQueenNews,
)

BEGINS: Final = (
    ("order", Order, OrderNews),
    ("batch", Batch, BatchCounts),
    ("queen", OwnQueen, OwnQueenNews),
)
CORRECT_ONE: Final = "Correct one of the two."


def promises(stand: Iterable[Noted], kit: Catalogue) -> Iterator[Problem]:
    """Go through what a book says of orders, batches and queens."""
    told = list(stand)
    for word, begins, follows in BEGINS:
        yield from names_of(told, word, begins, follows)
    for each in told:
        match each:
            case Order():
                yield from order(each, kit)
            case OrderNews():
                yield from news(each)
            case OwnQueen() if each.mark not in (None, "none") and each.year is not None:
                yield from mark(each)
    yield from too_many(told)
    yield from counts(told)


def names_of(told: list[Noted], word: str, begins: type, follows: type) -> Iterator[Problem]:
    """Find names that are taken, or that the book does not know on that day."""
    known: set[str] = set()
    for each in told:
        if not isinstance(each, begins | follows):
            continue
        name: str = getattr(each, word)
        if isinstance(each, begins) and name in known:
            what = f"There is {word} “{name}” already."
            yield wrong(each, word, what, "Give the new one another name.")
        elif isinstance(each, follows) and name not in known:
            near = get_close_matches(name, known, n=1)
            guess = f"Did you mean “{near[0]}”?" if near else f"Note the {word} first."
            yield wrong(each, word, f"There was no {word} “{name}” on {dated(each.on)}.", guess)
        known.add(name)


def order(each: Order, kit: Catalogue) -> Iterator[Problem]:
    """Find orders for a day gone by, and nucs of more frames than a box for them holds."""
    if each.wanted_by < each.on:
        wanted, ordered = dated(each.wanted_by), dated(each.on)
        what = f"It is wanted by {wanted}, which was over when it was ordered on {ordered}."
        yield wrong(each, "wanted_by", what, "Correct one of the two days.")
    if each.frames is None:
        return
    if each.what not in {"nuc", "overwintered nuc"}:
        what = f"A {each.what} is not sold by its frames."
        yield wrong(each, "frames", what, "Leave the frames open, or order a nuc.")
        return
    most = max((hive.frames for hive in kit.hives() if hive.kind == "nuc"), default=each.frames)
    if each.frames > most:
        what = f"{each.frames} frames are more than a nuc box holds: {most} at most."
        yield wrong(each, "frames", what, "Correct the number, or order a colony.")


def news(each: OrderNews) -> Iterator[Problem]:
    """Find promises without a week, or for one that was over when they were made."""
    if each.event == "promised" and each.week is None:
        yield wrong(each, "week", "A promise needs its week.", "Give a day of that week.")
    elif each.week is not None and each.week < each.on:
        what = f"The week of {dated(each.week)} was over on {dated(each.on)}."
        yield wrong(each, "week", what, "Correct one of the two days.")


def mark(each: OwnQueen) -> Iterator[Problem]:
    """Find a mark that is not of the colour of the year."""
    colour = mark_colour(each.year or 0)
    if each.mark != colour:
        what = f"Queens of {each.year} are marked {colour}, and she is {each.mark}."
        yield odd(each, what, "Nothing to do if it is so; otherwise correct one of the two.")


def too_many(told: list[Noted]) -> Iterator[Problem]:
    """Find orders of which more was delivered or cancelled than was ordered."""
    before: list[Noted] = []
    for each in told:
        if isinstance(each, OrderNews) and each.event in ("delivered", "cancelled"):
            now: KnownOrder | None = known_orders(before).get(each.order)
            if now is not None and (each.count or 1) > now.open:
                what = f"Of “{each.order}” only {now.open} were still to be delivered."
                yield wrong(each, "count", what, "Correct the number, or the order.")
        if isinstance(each, Order | OrderNews):
            before.append(each)


def counts(told: list[Noted]) -> Iterator[Problem]:
    """Find counts of a batch that contradict each other, or its day 0."""
    batches = {each.batch: each for each in told if isinstance(each, Batch)}
    most: dict[str, dict[str, int]] = {}
    for each in told:
        batch = batches.get(each.batch) if isinstance(each, BatchCounts) else None
        if batch is None or not isinstance(each, BatchCounts):
            continue
        if each.on < batch.day_0:
            what = f"Counted on {dated(each.on)}, before the batch began on {dated(batch.day_0)}."
            yield wrong(each, "on", what, "Correct one of the two days.")
        now = most.setdefault(each.batch, {"begun": batch.begun} if batch.begun is not None else {})
        now |= {
            step: n for step in (*STEPS, "given") if (n := getattr(each, step, None)) is not None
        }
        yield from steps(each, now)


def steps(each: BatchCounts, now: dict[str, int]) -> Iterator[Problem]:
    """Find a step at which there are more than at the one before."""
    for order_of in (STEPS, ("sealed", "given", "laying")):
        counted = [step for step in order_of if step in now]
        for before, after in pairwise(counted):
            if now[after] > now[before]:
                field = after if getattr(each, after, None) is not None else before
                what = f"{now[after]} {after}, but only {now[before]} {before} before it."
                yield wrong(each, field, what, CORRECT_ONE)
