"""Food given, and honey taken."""

from collections.abc import Mapping
from typing import Annotated, ClassVar, Literal

from pydantic import Field

from combwright.terms.entries.about import About, Variant, done, more, taken
from combwright.terms.entries.entry import Entry, OfColony
from combwright.terms.sugar import FONDANT_SUGAR, SYRUP_SUGAR


class Feed(Entry):
    """Feed given: syrup of a sugar fraction by mass, or fondant."""

    VARIANTS: ClassVar[Mapping[str, Variant]] = {
        "syrup": Variant(
            {"feed": "syrup"},
            {
                "grams": "syrup fed g",
                "sugar_fraction": "sugar share %",
                "temperature_c": "syrup warmth c",
            },
        ),
        "fondant": Variant(
            {"feed": "fondant", "sugar_fraction": FONDANT_SUGAR.value}, {"grams": "fondant fed g"}
        ),
    }

    kind: Literal["feed"] = "feed"
    colony: OfColony
    feed: Annotated[Literal["syrup", "fondant"], taken("Feed", "what was given", said="")] = "syrup"
    grams: Annotated[
        float,
        done(
            "Feed given",
            "given, by weight",
            unit="g",
            said="",
            step=100,
            name="feed_g",
            nought_is_none=True,
        ),
        Field(gt=0, le=30000),
    ]
    sugar_fraction: Annotated[
        float,
        taken(
            "Sugar",
            "sugar in it, by weight; 60 % when not said",
            unit="%",
            times=0.01,
            name="feed_sugar",
        ),
        Field(ge=0.3, le=0.95),
    ] = SYRUP_SUGAR
    temperature_c: Annotated[
        float | None,
        About("Warmth", "how warm it was given", unit="°C"),
        Field(ge=0, le=60),
    ] = None


class Harvest(Entry):
    """Honey taken from a colony."""

    kind: Literal["harvest"] = "harvest"
    colony: OfColony
    honey_kg: Annotated[
        float,
        more("Honey taken", "honey taken off", "honey taken kg", "kg", step=1, start=10),
        Field(ge=0, le=200),
    ]
    supers: Annotated[
        int,
        more(
            "Supers taken",
            "supers taken off with it",
            "supers taken",
            step=1,
            start=1,
            name="harvest_supers",
        ),
        Field(ge=0, le=8),
    ] = 0
