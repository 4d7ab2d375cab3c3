"""Honey on its way from the hives to the tank, into jars, and to who bought them."""

from datetime import date
from typing import Annotated, ClassVar, Literal

from pydantic import Field

from combwright.terms.entries.about import About
from combwright.terms.entries.entry import Entry, Name, Text

HoneySort = Literal["general", "heather", "baker", "baker-heather"]
WaterScale = Literal["refractive index", "Brix", "water %"]
DateShows = Literal["day", "month", "year"]
MOST_JARS = 100000
LONGEST_LOT = 20
SOME_KG = Field(gt=0, le=20000)
OfHoney = Annotated[
    Name, About("Honey", "the batch of honey it is about", said="", chosen_from="honey")
]
OfLot = Annotated[Name, About("Lot", "the lot on the jars", said="lot", chosen_from="lot")]


class HoneyBatch(Entry):
    """Honey that was extracted together and stands in one tank, or in buckets of one filling."""

    TITLE: ClassVar[str] = "A batch of honey"

    kind: Literal["honey batch"] = "honey batch"
    honey: Annotated[Name, About("Name of the batch", "the batch’s own name or number", said="")]
    kg: Annotated[
        float,
        About("Honey in the tank", "weighed when all had run in", unit="kg", said="in the tank"),
        SOME_KG,
    ]
    sort: Annotated[
        HoneySort,
        About(
            "Sort",
            "what it may hold of water depends on it",
            said="",
            words={
                "general": "honey",
                "heather": "heather (ling)",
                "baker": "baker’s",
                "baker-heather": "baker’s, from heather",
            },
        ),
    ] = "general"
    reading: Annotated[
        float | None,
        About("Refractometer reads", "as read, before any correction", said="reads"),
        Field(ge=1, le=95),
    ] = None
    scale: Annotated[WaterScale, About("Its scale", "what the refractometer shows", said="")] = (
        "water %"
    )
    reading_c: Annotated[
        float | None,
        About(
            "Read at",
            "warmth of prism and honey",
            unit="°C",
            hint="leave it open when the instrument corrects by itself",
        ),
        Field(ge=10, le=40),
    ] = None
    tank: Annotated[
        Text, About("Tank or buckets", "where it stands", said="in"), Field(max_length=200)
    ] = ""


class HoneySource(Entry):
    """Where honey of a batch comes from: a colony, a yard, another batch, or somebody else."""

    TITLE: ClassVar[str] = "Where honey of a batch comes from"

    kind: Literal["honey source"] = "honey source"
    honey: OfHoney
    colony: Annotated[
        Name | None,
        About(
            "From the colony",
            "the colony it was taken from",
            said="from",
            chosen_from="colony",
            nothing="not one colony",
        ),
    ] = None
    yard: Annotated[
        Name | None,
        About(
            "From the yard",
            "all colonies of a yard of which honey was taken in those days",
            said="from",
            chosen_from="yard",
            nothing="not a whole yard",
        ),
    ] = None
    from_honey: Annotated[
        Name | None,
        About(
            "From another batch",
            "run over from its tank",
            said="from",
            chosen_from="honey",
            nothing="none",
        ),
    ] = None
    supplier: Annotated[
        Text,
        About("Bought from", "name and address of who sold it", said="from"),
        Field(max_length=300),
    ] = ""
    country: Annotated[
        Text,
        About(
            "Its country",
            "country of origin of honey that was bought",
            said="of",
            hint="only for bought honey",
        ),
        Field(max_length=60),
    ] = ""
    first_day: Annotated[
        date | None,
        About("Taken since", "the first day it was taken off, if on several", said="since"),
    ] = None
    supers: Annotated[
        int | None, About("Supers", "supers taken", said="supers"), Field(ge=0, le=2000)
    ] = None
    kg: Annotated[
        float | None,
        About(
            "Weight in",
            "honey in them: full weight less that of the empty boxes",
            unit="kg",
            said="",
        ),
        SOME_KG,
    ] = None


class JarRun(Entry):
    """Jars filled in one go from one batch: a lot."""

    TITLE: ClassVar[str] = "A lot of jars"

    kind: Literal["jar run"] = "jar run"
    lot: Annotated[
        Name,
        About("Lot", "the code on every jar of it", said="lot", hint="at most 20 letters"),
        Field(max_length=LONGEST_LOT),
    ]
    honey: OfHoney
    jars: Annotated[
        int, About("Jars", "how many were filled", said="jars"), Field(ge=1, le=MOST_JARS)
    ]
    jar_g: Annotated[
        float,
        About("Net weight of one", "as on the label", unit="g", said="of"),
        Field(ge=5, le=10000),
    ]
    best_before: Annotated[
        date,
        About(
            "Best before",
            "the last day, or any day of the last month or year",
            hint="you choose how long; two years is usual",
        ),
    ]
    shows: Annotated[
        DateShows, About("The label shows", "how exactly the label says it", said="to the")
    ] = "day"
    lost_kg: Annotated[
        float,
        About("Lost", "spilt, left in tank or sieve, tasted", unit="kg"),
        Field(ge=0, le=20000),
    ] = 0.0


class JarWeights(Entry):
    """Net weights of jars of a lot, weighed to check them."""

    TITLE: ClassVar[str] = "Jars weighed"

    kind: Literal["jar weights"] = "jar weights"
    lot: OfLot
    weights: Annotated[
        Text,
        About(
            "Net weights", "in grams, one behind the other", unit="g", said="", hint="341 339.5 342"
        ),
        Field(min_length=1, max_length=2000, pattern=r"^\s*\d+(\.\d)?([\s;]+\d+(\.\d)?)*\s*$"),
    ]
    every_jar: Annotated[
        bool | None,
        About(
            "Every jar at least the label",
            "kept to without the tolerance of the average",
            nothing="no: by the average",
        ),
    ] = None
    scales: Annotated[
        Text, About("Scales", "which scales, and their check", said="on"), Field(max_length=200)
    ] = ""


class HoneySale(Entry):
    """Jars of a lot that went to somebody; of buyers at the door nothing is kept."""

    TITLE: ClassVar[str] = "Jars sold"

    kind: Literal["honey sale"] = "honey sale"
    lot: OfLot
    jars: Annotated[int, About("Jars", "how many", said="jars"), Field(ge=1, le=MOST_JARS)]
    buyer: Annotated[
        Text,
        About(
            "Business",
            "name of the shop or business",
            said="to",
            hint="blank: sold at the door; keep no names of those",
            personal=True,
        ),
        Field(max_length=120),
    ] = ""
    address: Annotated[
        Text,
        About("Its address", "so that it can be found again", said="of", personal=True),
        Field(max_length=300),
    ] = ""
