"""What the keeper owns, what risks the keeper takes, and what things are worth to the keeper."""

from typing import Annotated, ClassVar, Literal

from pydantic import Field

from combwright.terms.entries.about import About
from combwright.terms.entries.entry import Entry, Name

Harm = Literal["hunger", "no room", "chilled", "sour", "swarm"]
Priced = Literal[
    "honey",
    "nuc in April",
    "nuc in May",
    "nuc in June",
    "nuc in July",
    "nuc in August",
    "nuc in September",
    "mated queen",
    "weak colony in April",
    "strong colony in April",
    "sugar",
    "frame of foundation",
    "super",
    "treatment",
    "road to a hive",
    "minutes at a hive",
    "hour",
]
PlaceCalled = Literal["yard", "apiary"]
AimedAt = Literal["as priced", "honey first", "nucs first", "few visits"]


class Kit(Entry):
    """How many of one item of the catalogue the keeper owns, free for use, from this day on."""

    TITLE: ClassVar[str] = "Kit"

    kind: Literal["kit"] = "kit"
    item: Annotated[Name, About("What", "the item", said="", chosen_from="item")]
    count: Annotated[
        int,
        About("How many, free for use", "how many there are, free for use", said=""),
        Field(ge=0, le=100000),
    ]


class Limit(Entry):
    """The greatest chance of a harm that plans may carry, from this day on."""

    TITLE: ClassVar[str] = "A limit on harm"

    kind: Literal["limit"] = "limit"
    harm: Annotated[Harm, About("Harm", "what must not happen", said="")]
    percent: Annotated[
        float,
        About(
            "Greatest chance",
            "the greatest chance of it",
            unit="%",
            hint="per cent, 0 to 50",
            said="at most",
        ),
        Field(ge=0, le=50),
    ]


class Price(Entry):
    """What a thing brings or costs, from this day on, in the keeper's own money."""

    TITLE: ClassVar[str] = "A price"

    kind: Literal["price"] = "price"
    of: Annotated[Priced, About("Of", "what it is the price of", said="")]
    amount: Annotated[
        float,
        About(
            "Amount",
            "what it brings or costs, in your own money",
            hint="honey and sugar by the kilogram; a hive’s share of the road; minutes in minutes",
            said="at",
        ),
        Field(ge=0, le=10000),
    ]


class Aim(Entry):
    """What comes first for the keeper, from this day on: it counts for more than its price."""

    TITLE: ClassVar[str] = "An aim"

    kind: Literal["aim"] = "aim"
    aim: Annotated[AimedAt, About("Aim", "what comes first", said="")]


class Wording(Entry):
    """The keeper's word for a place with colonies, on every page and paper."""

    TITLE: ClassVar[str] = "What you call a place with colonies"

    kind: Literal["wording"] = "wording"
    place: Annotated[
        PlaceCalled,
        About(
            "A place with colonies is",
            "the keeper's word for a place with colonies",
            said="a place with colonies is",
            words={"yard": "“yard”", "apiary": "“apiary”"},
        ),
    ]
