"""How each order stands, replayed from the entries: promised for when, delivered, cancelled."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date

from combwright.terms.entries import Noted, Order, Ordered, OrderNews

FRAMES_OF_A_NUC = 5  # when the order does not say; the box that most are sold in, judgement


@dataclass(frozen=True, slots=True)
class KnownOrder:
    """One order as the book knows it; ``first_promised`` is the day on which it got its turn."""

    order: str
    customer: str
    what: Ordered
    count: int
    frames: int | None
    wanted_by: date
    price: float | None
    deposit: float | None
    ordered: date
    remark: str = ""
    first_promised: date | None = None
    week: date | None = None
    percent: float | None = None
    delays: int = 0
    delivered: int = 0
    cancelled: int = 0

    @property
    def open(self) -> int:
        """How many are still to be delivered."""
        return max(0, self.count - self.delivered - self.cancelled)

    @property
    def turn(self) -> tuple[date, date, str]:
        """First promised, first served; of those without a promise, first ordered."""
        return self.first_promised or date.max, self.ordered, self.order


def known_orders(entries: Iterable[Noted]) -> dict[str, KnownOrder]:
    """Replay entries: every order, in the order of its turn."""
    found: dict[str, KnownOrder] = {}
    for each in entries:
        if isinstance(each, Order) and each.order not in found:
            found[each.order] = _begun(each)
        elif isinstance(each, OrderNews) and each.order in found:
            found[each.order] = _after(found[each.order], each)
    return {each.order: each for each in sorted(found.values(), key=lambda one: one.turn)}


def _begun(each: Order) -> KnownOrder:
    told = each.model_dump(exclude={"id", "kind", "on"})
    if each.what == "nuc" and each.frames is None:
        told["frames"] = FRAMES_OF_A_NUC
    return KnownOrder(**told, ordered=each.on)


def _after(now: KnownOrder, news: OrderNews) -> KnownOrder:
    many = news.count or now.open
    match news.event:
        case "promised":
            first = now.first_promised or news.on
            return replace(now, first_promised=first, week=news.week, percent=news.percent)
        case "delayed":
            week, percent = news.week or now.week, news.percent
            return replace(now, week=week, percent=percent, delays=now.delays + 1)
        case "delivered":
            return replace(now, delivered=now.delivered + many)
        case "cancelled":
            return replace(now, cancelled=now.cancelled + many)
