"""Bees that leave the keeper, things that are moved between yards, and signs that are reported."""

from datetime import date
from typing import Annotated, ClassVar, Literal

from pydantic import Field

from combwright.terms.entries.about import About
from combwright.terms.entries.entry import Entry, Name, Text
from combwright.terms.entries.raised import MarkColour

SoldBees = Literal["nuc", "colony", "queen", "swarm", "queen cell"]
QueenOrigin = Literal["own", "bought", "imported"]
NucStandard = Literal["NBU", "BBKA", "FIBKA", "as agreed"]
Notifiable = Literal[
    "American foulbrood",
    "European foulbrood",
    "small hive beetle",
    "Tropilaelaps",
    "varroa",
    "yellow-legged hornet",
]
SuspicionState = Literal["suspected", "reported", "confirmed", "cleared"]
STANDARDS = {
    "NBU": "guidance of the National Bee Unit",
    "BBKA": "note of the British Beekeepers’ Association",
    "FIBKA": "criteria of the Federation of Irish Beekeepers’ Associations",
    "as agreed": "as agreed between us",
}
COMBS = Field(ge=0, le=40)
LINE = Field(max_length=300)


class BeesSold(Entry):
    """Bees handed over: to whom, and all that the hand-over sheet says of them."""

    TITLE: ClassVar[str] = "Bees handed over"

    kind: Literal["bees sold"] = "bees sold"
    sale: Annotated[Name, About("Number of the sale", "its own name or number", said="")]
    what: Annotated[SoldBees, About("What", "what was handed over", said="")] = "nuc"
    count: Annotated[
        int, About("How many", "how many alike", said="how many"), Field(ge=1, le=500)
    ] = 1
    buyer: Annotated[Name, About("Buyer", "to whom", said="to", personal=True)]
    address: Annotated[
        Text,
        About("Buyer’s address", "so that they can be found", said="of", personal=True),
        LINE,
    ]
    contact: Annotated[
        Text,
        About("Phone or e-mail", "one way to reach the buyer", said="", personal=True),
        LINE,
    ] = ""
    order: Annotated[
        Name | None,
        About(
            "Order",
            "the order that it meets; it counts as delivered",
            said="for order",
            chosen_from="order",
            nothing="none",
        ),
    ] = None
    colony: Annotated[
        Name | None,
        About(
            "Colony",
            "the colony or nuc of the book; it leaves the book as sold",
            chosen_from="colony",
            nothing="not in the book",
        ),
    ] = None
    yard: Annotated[
        Name | None,
        About(
            "From the yard",
            "where it stood, if the colony is not in the book",
            said="from",
            chosen_from="yard",
            nothing="that of the colony",
        ),
    ] = None
    queen: Annotated[
        Name | None,
        About(
            "Queen",
            "her name, if she has one",
            said="queen",
            chosen_from="own queen",
            nothing="without a name",
        ),
    ] = None
    queen_raised: Annotated[
        date | None, About("Queen emerged", "the day, or a day of that month")
    ] = None
    mark: Annotated[
        MarkColour | None,
        About("Her mark", "its colour", said="marked", nothing="as noted of her"),
    ] = None
    clipped: Annotated[
        bool | None, About("Clipped", "is her wing clipped", nothing="as noted of her")
    ] = None
    origin: Annotated[
        QueenOrigin, About("Her origin", "raised by you, bought, or imported", said="queen")
    ] = "own"
    origin_note: Annotated[
        Text,
        About("Where from", "mother, where she was mated, from whom, import papers", said=""),
        LINE,
    ] = ""
    box: Annotated[Text, About("Hive or frames", "kind of hive, box or frame", said="on"), LINE] = (
        ""
    )
    combs: Annotated[float | None, About("Combs in all", "combs", said="combs"), COMBS] = None
    combs_of_bees: Annotated[
        float | None, About("Combs of bees", "well covered", said="of bees"), COMBS
    ] = None
    combs_of_brood: Annotated[
        float | None, About("Combs of brood", "with brood in all stages", said="of brood"), COMBS
    ] = None
    combs_of_food: Annotated[
        float | None, About("Combs of food", "full", said="of food"), COMBS
    ] = None
    comb_age: Annotated[
        Text, About("Age of the combs", "when they were built", said="combs of"), LINE
    ] = ""
    temper: Annotated[Text, About("Temper", "in your words"), LINE] = ""
    inspected: Annotated[
        date | None, About("Inspected for disease", "the last inspection before it went")
    ] = None
    inspected_by: Annotated[Text, About("By", "who inspected", said="by"), LINE] = ""
    found: Annotated[
        Text, About("Found", "what was found, or that nothing was", said="found"), LINE
    ] = ""
    no_treatment: Annotated[
        bool | None,
        About(
            "No treatment in the last 12 months",
            "to be chosen where none is in the book",
            said="no treatment",
            nothing="see the book",
        ),
    ] = None
    defects: Annotated[Text, About("Faults told", "what the buyer was told of"), LINE] = ""
    box_deposit: Annotated[
        Text, About("Box", "whose it is, and the deposit on it", said="box"), LINE
    ] = ""
    standard: Annotated[
        NucStandard,
        About("Described by", "the standard that the sheet names", said="by", words=STANDARDS),
    ] = "as agreed"


class Movement(Entry):
    """Combs, boxes or bees that went from a yard to another or to somebody."""

    TITLE: ClassVar[str] = "Moved between yards"

    kind: Literal["movement"] = "movement"
    what: Annotated[Text, About("What", "combs, boxes, tools, queens", said=""), LINE]
    count: Annotated[
        int | None, About("How many", "how many of it", said="how many"), Field(ge=1, le=10000)
    ] = None
    from_yard: Annotated[
        Name, About("From the yard", "where it was", said="from", chosen_from="yard")
    ]
    yard: Annotated[
        Name | None,
        About("To the yard", "where it went", said="to", chosen_from="yard", nothing="to somebody"),
    ] = None
    to: Annotated[
        Text, About("To somebody", "name and address", said="to", personal=True), LINE
    ] = ""
    papers: Annotated[Text, About("Papers", "certificate or import reference, if any"), LINE] = ""


class NamesDeleted(Entry):
    """What was noted of a buyer was deleted; the notes themselves stay, without a name.

    It is written by the deletion itself, and says which notes they were, never of whom.
    """

    kind: Literal["names deleted"] = "names deleted"
    notes: Annotated[
        Text, About("Of the notes", "what the notes are about", said=""), Field(max_length=2000)
    ]


class Suspicion(Entry):
    """A notifiable pest or disease is suspected, reported, confirmed or cleared at a yard."""

    TITLE: ClassVar[str] = "A sign to report"

    kind: Literal["suspicion"] = "suspicion"
    yard: Annotated[Name, About("Yard", "where it is", said="at", chosen_from="yard")]
    of: Annotated[Notifiable, About("Of what", "what it may be: never a diagnosis", said="")]
    state: Annotated[
        SuspicionState,
        About("How it stands", "cleared: by the authority alone", said=""),
    ] = "suspected"
    sick: Annotated[
        Name | None,
        About(
            "Colony",
            "at which it was seen",
            said="seen at",
            chosen_from="colony",
            nothing="not one colony",
        ),
    ] = None
    reference: Annotated[
        Text, About("Reference", "of the report, sample or letter; whom you told"), LINE
    ] = ""
