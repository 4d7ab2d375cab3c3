"""Orders, batches, queens with names and kit in words, as terminal and page show them."""

from combwright.records.replay.known_orders import KnownOrder
from combwright.records.replay.known_queens import COUNTED, KnownBatch, KnownQueen
from combwright.records.replay.on_shelf import OnShelf
from combwright.terms.dated import dated

Owned = KnownOrder | KnownBatch | KnownQueen | OnShelf


def own_words(now: Owned) -> str:
    """Say in one line how an order, a batch or a queen stands."""
    match now:
        case KnownOrder():
            return order_words(now)
        case KnownBatch():
            return batch_words(now)
        case KnownQueen():
            return queen_words(now)
        case OnShelf():
            return shelf_words(now)


def shelf_words(now: OnShelf) -> str:
    """Say how much of an item should be left.

    Examples
    --------
    >>> from datetime import date
    >>> shelf_words(OnShelf("super", 18, date(2027, 3, 6), taken=4))
    '14 left of 18 counted on 6 March 2027'

    """
    return f"{now.left:g} left of {now.counted} counted on {dated(now.on)}"


def order_words(now: KnownOrder) -> str:
    """Say how an order stands.

    Examples
    --------
    >>> from datetime import date
    >>> day = date(2027, 6, 14)
    >>> order_words(KnownOrder("7", "Byrne", "nuc", 2, 5, day, 210.0, None, day, week=day))
    '2 nucs of 5 frames for Byrne, wanted by 14 June 2027, at 210 each; promised for the week of 14 June 2027'

    """  # noqa: E501  (the sentence is one line)
    what = {1: now.what}.get(now.count, "colonies" if now.what == "colony" else f"{now.what}s")
    frames = f" of {now.frames} frames" if now.frames else ""
    price = f", at {now.price:g} each" if now.price else ""
    told = [
        f"{now.count} {what}{frames} for {now.customer}, wanted by {dated(now.wanted_by)}{price}"
    ]
    if now.week:
        chance = f" ({now.percent:g} %)" if now.percent else ""
        told.append(f"promised for the week of {dated(now.week)}{chance}")
    counted = {"put off": now.delays, "delivered": now.delivered, "cancelled": now.cancelled}
    told += [f"{word} {number}" for word, number in counted.items() if number]
    return "; ".join(told)


def batch_words(now: KnownBatch) -> str:
    """Say how a batch stands."""
    mother = f" of {now.mother}" if now.mother else ""
    begun = f", {now.begun} begun" if now.begun is not None else ""
    counted = [f"{n} {step}" for step in COUNTED if (n := getattr(now, step)) is not None]
    return "; ".join([f"{now.method}{mother}, day 0 {dated(now.day_0)}{begun}", *counted])


def queen_words(now: KnownQueen) -> str:
    """Say what is known of a queen, and where she is."""
    marked = f"marked {now.mark}" if now.mark and now.mark != "none" else ""
    told = (
        f"queen of {now.year}" if now.year else "queen",
        marked,
        "clipped" if now.clipped else "",
        f"of batch {now.batch}" if now.batch else "",
        f"daughter of {now.mother}" if now.mother else "",
        f"in {now.colony}" if now.colony else "",
        f"{now.state} since {dated(now.since)}" if now.since else "",
        f"brood {now.pattern}" if now.pattern else "",
    )
    return ", ".join(part for part in told if part)
