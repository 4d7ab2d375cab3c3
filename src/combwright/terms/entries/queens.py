"""What was done to a queen, or learnt of one."""

from typing import Annotated, ClassVar, Final, Literal

from combwright.terms.entries.about import more
from combwright.terms.entries.entry import YEARS, Entry, OfColony

QueenEvent = Literal[
    "introduced",
    "removed",
    "caged",
    "released",
    "lost",
    "virgin",
    "marked",
    "clipped",
    "marked and clipped",
    "cells knocked down",
    "one cell left",
]
HANDLED: Final = ("marked", "clipped", "marked and clipped")  # she was there, in hand


class Queen(Entry):
    """Something done to, or learnt of, a queen.

    “Cells knocked down” means all of them; after “one cell left” the colony goes on with that one.
    """

    TITLE: ClassVar[str] = "A queen"

    kind: Literal["queen"] = "queen"
    colony: OfColony
    event: Annotated[
        QueenEvent,
        more(
            "What happened to the queen",
            "what happened to the queen, or to the queen cells",
            "queen event",
            hint="cells knocked down: all of them; one cell left: all but one",
            said="",
            nothing="nothing to say",
            name="queen_event",
        ),
    ]
    queen_year: Annotated[
        int | None,
        more("Year of the queen", "the year in which the queen emerged", said="queen of"),
        YEARS,
    ] = None
