"""What customers want, and what became of it."""

from datetime import date
from typing import Annotated, ClassVar, Literal

from pydantic import Field

from combwright.terms.entries.about import About
from combwright.terms.entries.entry import Entry, Name

Ordered = Literal["nuc", "overwintered nuc", "mated queen", "colony"]
OrderEvent = Literal["promised", "delayed", "delivered", "cancelled"]
MOST_ORDERED = 1000
OfOrder = Annotated[Name, About("Order", "the order it is about", said="", chosen_from="order")]


class Order(Entry):
    """A customer wants bees."""

    TITLE: ClassVar[str] = "An order"

    kind: Literal["order"] = "order"
    order: Annotated[
        Name,
        About(
            "Name of the order",
            "the order’s own number; a name in it cannot be deleted later",
            "order",
            said="",
        ),
    ]
    customer: Annotated[
        Name,
        About(
            "Customer",
            "who ordered; as little as you need to find them again",
            "customer",
            said="for",
            personal=True,
        ),
    ]
    what: Annotated[Ordered, About("What", "what was ordered", "ordered", said="")] = "nuc"
    count: Annotated[
        int,
        About("How many", "how many were ordered", "how many", said="how many"),
        Field(ge=1, le=MOST_ORDERED),
    ] = 1
    frames: Annotated[
        int | None,
        About(
            "Frames",
            "frames that each nuc must have",
            "nuc frames",
            hint="of a nuc; five when not said",
            said="frames",
        ),
        Field(ge=2, le=24),
    ] = None
    wanted_by: Annotated[
        date,
        About("Wanted by", "the last day that the customer waits for", "wanted by"),
    ]
    price: Annotated[
        float | None,
        About(
            "Price of each",
            "what each brings, in your own money",
            "price each",
            hint="your usual price of that month when not said",
            said="at",
        ),
        Field(gt=0, le=100000),
    ] = None
    deposit: Annotated[
        float | None,
        About("Deposit", "what was paid already", "deposit"),
        Field(ge=0, le=100000),
    ] = None


class OrderNews(Entry):
    """What became of an order."""

    TITLE: ClassVar[str] = "News of an order"

    kind: Literal["order news"] = "order news"
    order: OfOrder
    event: Annotated[
        OrderEvent,
        About("What happened", "what became of the order", "order event", said=""),
    ]
    week: Annotated[
        date | None,
        About(
            "For the week of",
            "a day of the week that it was promised or put off to",
            "promised for",
            hint="when promised or delayed",
            said="for the week of",
        ),
    ] = None
    percent: Annotated[
        float | None,
        About(
            "Chance told",
            "the chance that was told with the promise",
            "promised at %",
            "%",
            said="at",
        ),
        Field(ge=1, le=100),
    ] = None
    count: Annotated[
        int | None,
        About(
            "How many",
            "how many were delivered or cancelled; all when not said",
            "delivered",
            hint="when not all",
            said="",
        ),
        Field(ge=1, le=MOST_ORDERED),
    ] = None
