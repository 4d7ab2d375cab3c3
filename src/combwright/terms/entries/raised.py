"""Queens as things of their own, and the batches of cells that they come from."""

from datetime import date
from typing import Annotated, ClassVar, Literal

from pydantic import Field

from combwright.terms.entries.about import About
from combwright.terms.entries.entry import YEARS, Entry, Name

Method = Literal["graft", "upper box", "cells of a swarming colony", "walk-away"]
MarkColour = Literal["white", "yellow", "red", "green", "blue", "none"]
Pattern = Literal["solid", "spotty", "drone brood only"]
OwnQueenEvent = Literal[
    "cell given", "emerged", "seen", "laying", "drone layer", "moved", "sold", "lost"
]
MOST_CELLS = 2000
CELLS = Field(ge=0, le=MOST_CELLS)
Count = Annotated[int | None, CELLS]


class Batch(Entry):
    """Cells begun together; what is counted of them later stands in notes of their own."""

    TITLE: ClassVar[str] = "A batch of cells"

    kind: Literal["batch"] = "batch"
    batch: Annotated[
        Name,
        About("Name of the batch", "the batch’s own name or number", "batch of cells", said=""),
    ]
    method: Annotated[
        Method,
        About(
            "How",
            "how the cells are raised: grafted with a starter and a finisher, in an upper box over "
            "an excluder, found in a colony that swarms, or left to a queenless part",
            "raised by",
            said="by",
        ),
    ] = "graft"
    day_0: Annotated[
        date,
        About(
            "Day 0",
            "the day of the graft, of the loss of the queen, or on which sealed cells were found",
            "day 0",
            hint="graft, queen taken away, or sealed cells found",
        ),
    ]
    begun: Annotated[
        Count, About("Larvae or cells begun", "larvae grafted, or cells found", "begun")
    ] = None
    mother: Annotated[
        Name | None,
        About("Mother", "the queen or colony whose larvae they are", "mother", said="of"),
    ] = None
    colony: Annotated[
        Name | None,
        About(
            "Raised in",
            "the colony that raises the cells",
            said="raised in",
            chosen_from="colony",
            nothing="not noted",
        ),
    ] = None
    brood_c: Annotated[
        float | None,
        About(
            "Warmth of the cells",
            "mean warmth while they are sealed, in an incubator or the nest",
            "cells at c",
            "°C",
            hint="34.5 when not said",
        ),
        Field(ge=32, le=35),
    ] = None


class BatchCounts(Entry):
    """How many of a batch there are, at each step that was counted."""

    TITLE: ClassVar[str] = "Counts of a batch"

    kind: Literal["batch counts"] = "batch counts"
    batch: Annotated[Name, About("Batch", "the batch it is about", said="", chosen_from="batch")]
    accepted: Annotated[Count, About("Accepted", "larvae accepted", "accepted")] = None
    sealed: Annotated[Count, About("Sealed", "cells sealed", "cells sealed")] = None
    given: Annotated[
        Count, About("Given to nucs", "cells or virgins given to nucs", "cells given")
    ] = None
    emerged: Annotated[Count, About("Emerged", "queens emerged", "emerged")] = None
    laying: Annotated[Count, About("Laying", "queens found laying", "laying")] = None


class OwnQueen(Entry):
    """A queen gets a name, and what is known of her."""

    TITLE: ClassVar[str] = "A queen with a name"

    kind: Literal["own queen"] = "own queen"
    queen: Annotated[Name, About("Name of the queen", "her own name or number", "queen", said="")]
    batch: Annotated[
        Name | None,
        About(
            "Batch",
            "the batch she comes from",
            "of batch",
            said="of batch",
            chosen_from="batch",
            nothing="none",
        ),
    ] = None
    mother: Annotated[
        Name | None, About("Mother", "the queen or colony that she comes from", "her mother")
    ] = None
    year: Annotated[
        int | None, About("Year", "the year in which she emerged", "her year", said="of"), YEARS
    ] = None
    mark: Annotated[
        MarkColour | None,
        About("Mark", "the colour of her mark", "mark", said="marked", nothing="not noted"),
    ] = None
    clipped: Annotated[
        bool | None, About("Clipped", "is her wing clipped", "clipped", nothing="not noted")
    ] = None
    colony: Annotated[
        Name | None,
        About("In", "the colony she is in", said="in", chosen_from="colony", nothing="none"),
    ] = None


class OwnQueenNews(Entry):
    """What became of a queen with a name."""

    TITLE: ClassVar[str] = "News of a queen with a name"

    kind: Literal["own queen news"] = "own queen news"
    queen: Annotated[
        Name, About("Queen", "the queen it is about", said="", chosen_from="own queen")
    ]
    event: Annotated[
        OwnQueenEvent, About("What happened", "what became of her", "her event", said="")
    ]
    colony: Annotated[
        Name | None,
        About(
            "In", "the colony she is in now", said="in", chosen_from="colony", nothing="as before"
        ),
    ] = None
    pattern: Annotated[
        Pattern | None,
        About("How she lays", "how her brood looks", "her brood", nothing="not noted"),
    ] = None
