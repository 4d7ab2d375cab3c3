"""Small invented seasons of nucs, whose answers can be told by hand or tried in a moment."""

import numpy as np

from combwright.planning.supply.wanted import Donor, Money, Shelf, SupplyTask, WantedOrder
from combwright.terms.streams import stream

WEEKS, UNTIL, MEMBERS = 6, 13, 10


def order(name: str, count: int, wanted: int, promised: int | None = None) -> WantedOrder:
    return WantedOrder(name, f"Customer {name}", "nuc", count, 200.0, wanted, promised)


def season(
    orders: list[WantedOrder],
    *,
    seed: int = 1,
    donors: int = 4,
    price: float | None = None,
    boxes: int | None = None,
    success: float = 0.7,
    scenarios: int = 150,
) -> SupplyTask:
    """Make a season whose weather moves the success of all cells alike."""
    rng = stream(seed, "small season")
    shift = rng.normal(0.0, 0.08, (scenarios, 1))
    if price is not None:
        orders = [
            WantedOrder(each.order, each.customer, each.product, each.count, price, each.wanted)
            for each in orders
        ]
    return SupplyTask(
        weeks=WEEKS,
        until=UNTIL,
        donors=[
            Donor(
                f"D{n}",
                "Yard",
                np.full((MEMBERS, WEEKS), 7.0),
                np.full((MEMBERS, WEEKS), 12.0),
                np.full(WEEKS, 20.0 + n),
            )
            for n in range(donors)
        ],
        orders=orders,
        success=np.clip(success + shift + np.zeros((1, WEEKS)), 0.0, 0.95),
        waits=np.zeros((scenarios, WEEKS)),
        in_hand=np.zeros((1, UNTIL + 1)),
        cells=[0.0, 20.0, 0.0, 20.0, 0.0, 0.0],
        shelf=Shelf(nuc_boxes=boxes, hours=20.0),
        money=Money(nuc=30.0, queen=45.0, mating_nuc=5.0, graft=0.3, hour=15.0, left=40.0),
    )
