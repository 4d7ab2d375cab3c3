"""Mites counted, and what was done against them."""

from datetime import date
from typing import Annotated, Literal

from pydantic import Field

from combwright.terms.entries.about import more
from combwright.terms.entries.entry import Entry, OfColony, Text

Substance = Literal[
    "oxalic acid",
    "formic acid",
    "thymol",
    "amitraz",
    "tau-fluvalinate",
    "flumethrin",
    "drone brood removed",
    "other",
]


class TrayCount(Entry):
    """Mites fallen on the tray over some days."""

    kind: Literal["tray count"] = "tray count"
    colony: OfColony
    mites: Annotated[
        int,
        more(
            "Mites on the tray",
            "mites fallen on the tray",
            "mites on tray",
            step=1,
            name="tray_mites",
        ),
        Field(ge=0, le=50000),
    ]
    days: Annotated[
        float,
        more(
            "Time the tray lay in",
            "days the tray lay in",
            "tray days",
            "days",
            said="in",
            step=1,
            start=7,
            name="tray_days",
        ),
        Field(gt=0, le=60),
    ]


class WashCount(Entry):
    """Mites washed or shaken off a sample of bees."""

    kind: Literal["wash count"] = "wash count"
    colony: OfColony
    mites: Annotated[
        int,
        more(
            "Mites in the sample",
            "mites off a sample of bees",
            "mites washed",
            step=1,
            name="wash_mites",
        ),
        Field(ge=0, le=2000),
    ]
    bees: Annotated[
        int,
        more(
            "Bees in the sample",
            "bees in that sample",
            "bees washed",
            step=50,
            start=300,
            name="wash_bees",
        ),
        Field(gt=0, le=2000),
    ]
    method: Annotated[
        Literal["wash", "sugar"],
        more(
            "Sample",
            "how the mites came off",
            said="by",
            words={"wash": "washed", "sugar": "shaken in sugar"},
            name="wash_method",
        ),
    ] = "wash"


class Treatment(Entry):
    """A mite treatment; the label says how it is used and how long honey must wait."""

    kind: Literal["treatment"] = "treatment"
    colony: OfColony
    substance: Annotated[
        Substance,
        more(
            "Treatment begun",
            "what acts against mites",
            "treatment",
            hint="the label and your country’s law rule; keep the record",
            said="",
            nothing="none",
        ),
    ]
    product: Annotated[
        Text,
        more("Product", "its name on the label", "product"),
        Field(max_length=200),
    ] = ""
    batch: Annotated[
        Text,
        more("Batch", "the batch on the label", "batch"),
        Field(max_length=100),
    ] = ""
    amount: Annotated[
        Text,
        more("Amount", "how much was used", "amount"),
        Field(max_length=100),
    ] = ""
    quantity: Annotated[
        float | None,
        more(
            "Quantity used",
            "how much of the product, in the unit it was bought in",
            "treatment quantity",
            hint="strips, grams or millilitres, as bought",
            name="treated_quantity",
        ),
        Field(gt=0, le=100000),
    ] = None
    until: Annotated[
        date | None,
        more("Until", "the day it came or comes out", "treated until", name="treated_until"),
    ] = None
