"""How colonies enter and leave the book."""

from typing import Annotated, ClassVar, Literal

from pydantic import Field

from combwright.terms.entries.about import About
from combwright.terms.entries.entry import YEARS, Entry, Name, OfColony

EndReason = Literal["dead", "sold", "swarmed out", "united", "stolen", "other"]


class Colony(Entry):
    """A colony enters the book, in a hive of the catalogue."""

    TITLE: ClassVar[str] = "A colony"

    kind: Literal["colony"] = "colony"
    yard: Annotated[
        Name,
        About(
            "Yard",
            "where the colony stands; needed once a colony",
            "yard",
            said="at",
            chosen_from="yard",
        ),
    ]
    colony: Annotated[
        Name, About("Name of the colony", "the colony's own name or number", "colony")
    ]
    hive: Annotated[
        Name,
        About("Hive", "its hive in the catalogue of kit; needed once", "hive", chosen_from="hive"),
    ]
    queen_year: Annotated[
        int | None,
        About(
            "Year of the queen",
            "the year in which the queen emerged",
            "queen year",
            said="queen of",
        ),
        YEARS,
    ] = None


class Split(Entry):
    """Bees and brood taken from a colony to start another."""

    TITLE: ClassVar[str] = "A split"

    kind: Literal["split"] = "split"
    colony: OfColony
    new_colony: Annotated[
        Name,
        About("Name of the new colony", "the name of the new colony", "split to", said="to"),
    ]
    hive: Annotated[
        Name,
        About(
            "Hive of the new colony",
            "the hive of the new colony, of the catalogue",
            "split hive",
            said="in",
            chosen_from="hive",
        ),
    ]
    frames_of_bees: Annotated[
        float,
        About("Frames of bees given", "bees that went with it", "split frames of bees"),
        Field(gt=0, le=30),
    ]
    frames_of_brood: Annotated[
        float,
        About("Frames of brood given", "brood that went with it", "split frames of brood"),
        Field(ge=0, le=30),
    ] = 0
    frames_of_stores: Annotated[
        float,
        About("Frames of stores given", "food that went with it", "split frames of stores"),
        Field(ge=0, le=30),
    ] = 0
    goes_with: Annotated[
        Literal["queen", "cell", "nothing", "mated queen"],
        About("With", "what the new colony has for a queen", "split with"),
    ] = "cell"


class Unite(Entry):
    """A colony joined to another, whose queen is kept."""

    TITLE: ClassVar[str] = "Two colonies united"

    kind: Literal["unite"] = "unite"
    colony: OfColony
    into: Annotated[
        Name,
        About(
            "Into, whose queen is kept",
            "the colony whose queen is kept",
            "united into",
            said="into",
            chosen_from="colony",
        ),
    ]


class End(Entry):
    """A colony leaves the book."""

    TITLE: ClassVar[str] = "A colony that is gone"

    kind: Literal["end"] = "end"
    colony: OfColony
    reason: Annotated[EndReason, About("Why", "why the colony leaves the book", "ended", said="")]
