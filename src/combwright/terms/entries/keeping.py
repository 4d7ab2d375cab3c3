"""What the keeper owns, and what risks the keeper takes."""

from typing import Annotated, ClassVar, Literal

from pydantic import Field

from combwright.terms.entries.about import About
from combwright.terms.entries.entry import Entry, Name

Harm = Literal["hunger", "no room", "chilled", "sour", "swarm"]


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
