"""Medicines for bees: what the label says, what was bought, what was thrown away."""

from datetime import date
from typing import Annotated, ClassVar, Literal

from pydantic import Field

from combwright.terms.entries.about import About
from combwright.terms.entries.entry import Entry, Name, Text

Route = Literal["POM", "POM(E)", "LR", "CAM", "AVM-GSL", "other", "not known"]
MedicineUnit = Literal["strips", "trays", "sachets", "tablets", "g", "ml"]
Prescription = Literal["none needed", "needed", "not known"]
AMOUNT = Field(gt=0, le=100000)
LINE = Field(max_length=200)

OfProduct = Annotated[
    Name, About("Product", "the medicine it is about", said="", chosen_from="product")
]
OfBatch = Annotated[Text, About("Batch", "the batch on the label"), Field(max_length=100)]
Quantity = Annotated[float, About("Quantity", "how much", said=""), AMOUNT]
OfUnit = Annotated[MedicineUnit, About("Unit", "what is counted or measured", said="")]


class Product(Entry):
    """A medicine as its label has it."""

    TITLE: ClassVar[str] = "A medicine"

    kind: Literal["product"] = "product"
    product: Annotated[Name, About("Product", "its name on the label", said="")]
    withdrawal_days: Annotated[
        float,
        About(
            "Withdrawal period of honey",
            "days that honey must wait after it, as the label says",
            unit="days",
            hint="nought is an answer; what is not known cannot be left blank",
            said="withdrawal",
        ),
        Field(ge=0, le=400),
    ]
    authorisation: Annotated[
        Text, About("Authorisation number", "its number on the label"), LINE
    ] = ""
    route: Annotated[
        Route, About("Route of supply", "the letters on the label", said="supplied as")
    ] = "not known"
    prescription: Annotated[
        Prescription, About("Prescription", "whether a prescription is needed", said="prescription")
    ] = "not known"


class Purchase(Entry):
    """A medicine that was bought or got; the paper that shows it is named."""

    TITLE: ClassVar[str] = "Medicine bought"

    kind: Literal["purchase"] = "purchase"
    product: OfProduct
    quantity: Quantity
    unit: OfUnit
    batch: OfBatch = ""
    expiry: Annotated[date | None, About("Expiry", "the last day on the label", said="expires")] = (
        None
    )
    supplier: Annotated[Text, About("Supplier", "name or business", said="from"), LINE] = ""
    supplier_address: Annotated[
        Text,
        About("Supplier’s address", "permanent address or registered place", said="of"),
        Field(max_length=300),
    ] = ""
    proof: Annotated[
        Text,
        About("Proof of purchase", "number of the receipt or invoice; keep the paper"),
        LINE,
    ] = ""
    prescriber: Annotated[
        Text, About("Prescriber", "name of the vet, if one prescribed it", said="by"), LINE
    ] = ""
    prescriber_contact: Annotated[
        Text, About("Contact of the prescriber", "address, phone or e-mail", said="of"), LINE
    ] = ""
    prescription_copy: Annotated[
        Text,
        About("Copy of the prescription", "where it is kept; not needed beside a code"),
        LINE,
    ] = ""
    no_prescription: Annotated[
        bool | None,
        About(
            "No prescription",
            "yes: it was got without one; no: there is one",
            said="no prescription",
        ),
    ] = None
    prescription_code: Annotated[
        Text,
        About("Prescription code", "code of an electronic prescription", hint="16 digits"),
        Field(max_length=40),
    ] = ""
    prescription_line: Annotated[
        Text,
        About("Line of the prescription", "number of the product’s line", hint="16 digits"),
        Field(max_length=40),
    ] = ""


class Disposal(Entry):
    """Medicine that went another way than into a hive."""

    TITLE: ClassVar[str] = "Medicine disposed of"

    kind: Literal["disposal"] = "disposal"
    product: OfProduct
    quantity: Quantity
    unit: OfUnit
    batch: OfBatch = ""
    how: Annotated[Text, About("How and where", "how and where it went"), LINE]
