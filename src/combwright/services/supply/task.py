"""From the book to the task of the plan: donors, nucs that stand, orders, cells, kit, money."""

from dataclasses import dataclass, replace
from datetime import date, timedelta
from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.advice.decisions.nucs import PARAMETERS as NUCS
from combwright.advice.prices import Prices
from combwright.belief.following.replay import Followed
from combwright.planning.supply.courses import NucCourse, donor_course, nuc_course
from combwright.planning.supply.mating import MatingWeather, mating
from combwright.planning.supply.nuc_readiness import NucReady, nuc_readiness
from combwright.planning.supply.ready import A_WEEK, READY_WEEKS
from combwright.planning.supply.supply_numbers import number
from combwright.planning.supply.wanted import Donor, Money, Product, Shelf, SupplyTask, WantedOrder
from combwright.records.replay.known_orders import KnownOrder, known_orders
from combwright.records.replay.known_queens import KnownBatch, known_batches
from combwright.records.store.book_handle import Book
from combwright.science.queens.mating_success import ACCEPTED, SEALED_WELL, SHOCK
from combwright.services.beliefs.workers import follow_each, for_each
from combwright.services.progress import PLANNING, Progress
from combwright.services.rounds.price_list import prices_on, with_prices
from combwright.services.rounds.situations import AskedRound, Situations, situations_of
from combwright.services.supply.asked import AskedSupply
from combwright.services.supply.mating_weather import RIPE_AFTER, mating_weather, own_success
from combwright.terms.entries import Kit, Noted
from combwright.terms.errors import NotFoundError

PRODUCTS: Final[dict[str, Product]] = {
    "nuc": "nuc",
    "overwintered nuc": "nuc",
    "mated queen": "mated queen",
}
USUAL_SHARE: Final = (ACCEPTED.value, SEALED_WELL.value)
SWARM_CELLS_RIPE: Final = 2  # days; sealed cells that were found emerge within 0 to 8


@dataclass(frozen=True)
class Gathered:
    """The task three times, each under weather of its own, and what it was made from."""

    solved: SupplyTask
    fresh: SupplyTask
    last: SupplyTask
    nucs: list[NucReady]
    orders: dict[str, KnownOrder]
    batches: dict[str, KnownBatch]
    later: list[KnownOrder]
    colony_price: float
    own: float
    yard: str
    weather: str
    suspected: list[str]


def gather(book: Book, asked: AskedSupply, progress: Progress) -> Gathered:
    """Read the book, follow its colonies, and sample the weather ahead."""
    asked.check()
    until = asked.weeks + READY_WEEKS
    situations = situations_of(
        book, AskedRound(asked.on, days=A_WEEK, members=asked.members, seed=asked.seed)
    )
    entries = [each for each in situations.entries if each.on < asked.on]
    found = follow_each(situations.replay, situations.replay.colonies, asked.on, progress)
    standing = [each for each in found if each is not None and not each.has_ended]
    if not standing:
        raise NotFoundError("No colony stands in the book on that day.", remedy="Ask for another.")
    donors, nucs = _courses(situations, standing, asked, until, progress)
    batches = {
        name: each
        for name, each in known_batches(entries).items()
        if name not in asked.what_if.lost_batches
    }
    orders = {name: each for name, each in known_orders(entries).items() if each.open}
    yard = max({each.yard for each in standing}, key=[each.yard for each in standing].count)
    own = own_success(book, yard, batches, asked.on)
    prices = with_prices(prices_on(entries, asked.on), dict(asked.what_if.prices))
    first = min([asked.on, *(each.day_0 for each in batches.values())])
    sky = mating_weather(
        book,
        yard,
        (first, asked.week(asked.weeks)),
        versions=2 * asked.scenarios,
        seed=asked.seed,
        what_if=asked.what_if,
    )
    task = SupplyTask(
        weeks=asked.weeks,
        until=until,
        donors=donors,
        orders=[_wanted(each, asked, prices) for each in orders.values() if _in_plan(each, asked)],
        success=np.empty((0, asked.weeks)),
        waits=np.empty((0, asked.weeks)),
        in_hand=_in_hand(nucs, until),
        cells=_cells(batches, asked),
        shelf=_shelf(book, entries, asked),
        money=_money(prices),
        first_queen=max(0, _weeks_to(asked.on, NUCS["queens_from"].value)),
    )
    half = asked.scenarios + asked.scenarios // 2
    parts = (slice(0, asked.scenarios), slice(asked.scenarios, half), slice(half, None))
    solved, fresh, last = (_under(task, sky.some(part), asked, own) for part in parts)
    holds = {each.belief.colony: each.standing.hive.frames for each in standing}
    now = book.now()
    readiness = [
        nuc_readiness(
            each,
            holds[each.colony],
            [one for one in now.of(each.colony) if one.on < asked.on],
            asked.on,
        )
        for each in nucs
    ]
    return Gathered(
        solved, fresh, last, readiness, orders, batches,
        [e for e in orders.values() if e.what != "colony" and not _in_plan(e, asked)],
        prices.strong_colony_in_april,
        own, yard, situations.around.described(),
        [each.belief.colony for each in standing if situations.is_shut(each.yard)],
    )  # fmt: skip


def _courses(
    situations: Situations,
    standing: list[Followed],
    asked: AskedSupply,
    until: int,
    progress: Progress,
) -> tuple[list[Donor], list[NucCourse]]:
    """Let donors and nucs live on; nothing leaves a yard with signs of disease."""
    healthy = [each for each in standing if not situations.is_shut(each.yard)]
    hives = [each for each in healthy if each.standing.hive.kind == "hive"]
    boxes = [each for each in healthy if each.standing.hive.kind == "nuc"]
    donors = for_each(
        lambda each: donor_course(situations.of(each), each.yard, asked.weeks),
        hives, doing=PLANNING, progress=progress,
    )  # fmt: skip
    nucs = for_each(
        lambda each: nuc_course(situations.of(each), each.yard, until),
        boxes, doing=PLANNING, progress=progress,
    )  # fmt: skip
    return donors, nucs


def _in_hand(nucs: list[NucCourse], until: int) -> NDArray[np.float64]:
    if not nucs:
        return np.zeros((1, until + 1))
    return np.asarray(sum(each.ready.astype(np.float64) for each in nucs))


def _under(task: SupplyTask, sky: MatingWeather, asked: AskedSupply, own: float) -> SupplyTask:
    """Put the task under some versions of the weather."""
    given = [mating(sky, asked.week(t), own) for t in range(task.weeks)]
    return replace(
        task,
        success=np.column_stack([each.success for each in given]),
        waits=np.column_stack([each.waits for each in given]),
    )


def _in_plan(order: KnownOrder, asked: AskedSupply) -> bool:
    """Tell whether an order is for this season's nucs and queens."""
    last = asked.week(asked.weeks + READY_WEEKS)
    return order.what in PRODUCTS and order.wanted_by <= last


def _wanted(order: KnownOrder, asked: AskedSupply, prices: Prices) -> WantedOrder:
    product = PRODUCTS[order.what]
    usual = prices.nuc(order.wanted_by) if product == "nuc" else prices.mated_queen
    week = order.week
    return WantedOrder(
        order.order,
        order.customer,
        product,
        order.open,
        order.price or usual,
        max(0, (order.wanted_by - asked.on).days // A_WEEK),
        None if week is None else max(0, ((week - asked.on).days + A_WEEK - 1) // A_WEEK),
    )


def _cells(batches: dict[str, KnownBatch], asked: AskedSupply) -> list[float]:
    """Count the ripe cells that batches already begun will bring, by week, at the careful end."""
    found = [0.0] * asked.weeks
    for batch in batches.values():
        if batch.method == "walk-away":
            continue
        after = SWARM_CELLS_RIPE if batch.method == "cells of a swarming colony" else RIPE_AFTER
        week = (batch.day_0 + timedelta(days=after) - asked.on).days // A_WEEK
        if 0 <= week < asked.weeks:
            found[week] += float(int(batch.left(USUAL_SHARE) * (1.0 - SHOCK.value)))
    return found


def _shelf(book: Book, entries: list[Noted], asked: AskedSupply) -> Shelf:
    """Count the kit: boxes and combs as last noted."""
    counted = {each.item: each.count for each in entries if isinstance(each, Kit)}
    nucs = {hive.key for hive in book.kit.hives() if hive.kind == "nuc"}
    boxes = [count for item, count in counted.items() if item in nucs]
    combs = [counted[item] for item in ("drawn frame", "foundation frame") if item in counted]
    return Shelf(
        nuc_boxes=sum(boxes) if boxes else None,
        mating_boxes=counted.get("mating nuc"),
        frames=sum(combs) if combs else None,
        hours=asked.hours,
        queens_a_week=asked.queens_a_week,
    )


def _money(prices: Prices) -> Money:
    frames = NUCS["box_frames"].value * prices.frame_of_foundation
    nuc = frames + NUCS["sugar_kg"].value * prices.sugar + prices.work(number("looks_per_nuc"))
    kept = number("winters") * prices.weak_colony_in_april - number("winter_cost")
    return Money(
        nuc=nuc,
        queen=prices.mated_queen,
        mating_nuc=prices.work(number("minutes_mating_nuc")),
        graft=prices.work(1.0),
        hour=prices.hour,
        left=max(0.0, kept),
    )


def _weeks_to(on: date, day_of_year: float) -> int:
    return -(-(int(day_of_year) - on.timetuple().tm_yday) // A_WEEK)
