"""Where colonies stand."""

from typing import Annotated, ClassVar, Literal

from pydantic import Field

from combwright.terms.entries.about import About
from combwright.terms.entries.entry import Entry, Name, OfColony


class Yard(Entry):
    """A place with colonies.

    ``climate`` is the built-in one used when no weather is known, ``district`` the forage calendar.
    """

    TITLE: ClassVar[str] = "A yard"

    kind: Literal["yard"] = "yard"
    yard: Annotated[Name, About("Name of the yard", "the keeper's own name for it", said="")]
    climate: Annotated[
        Name,
        About(
            "Climate",
            "built-in climate of a new yard",
            "climate",
            hint="used where no weather is known",
            chosen_from="climate",
        ),
    ] = "Dublin Airport"
    district: Annotated[
        Name,
        About("Forage around it", "what flowers when", said="forage", chosen_from="district"),
    ] = "lowland mixed farmland"
    latitude: Annotated[
        float | None,
        About("Latitude", "degrees north", unit="°", hint="degrees north, for forecasts"),
        Field(ge=-90, le=90),
    ] = None
    longitude: Annotated[
        float | None,
        About(
            "Longitude",
            "degrees east; west is negative",
            unit="°",
            hint="degrees east, west is negative",
        ),
        Field(ge=-180, le=180),
    ] = None
    stop: Annotated[
        int | None,
        About(
            "Stop on the round",
            "where it comes in the keeper's own order of driving",
            hint="1 is first; those left open come after, by name",
        ),
        Field(ge=1, le=999),
    ] = None


class Move(Entry):
    """A colony taken to another yard."""

    TITLE: ClassVar[str] = "A move"

    kind: Literal["move"] = "move"
    colony: OfColony
    yard: Annotated[
        Name,
        About("To the yard", "the yard it was taken to", "moved to", said="to", chosen_from="yard"),
    ]
