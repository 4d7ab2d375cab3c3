"""The kinds of entry that a book holds: the one gate through which notes come in.

Entries are never changed. A correction is a new entry that names the old one. A value left out
(``None``) means that nobody looked, and carries no information.
"""

from typing import Annotated, Final, Literal, get_args
from uuid import UUID

from pydantic import Field, TypeAdapter

from combwright.terms.entries.bees_sold import BeesSold, Movement, NamesDeleted, Suspicion
from combwright.terms.entries.colonies import Colony, End, EndReason, Split, Unite
from combwright.terms.entries.counting import HowCounted
from combwright.terms.entries.entry import Entry, Name, Text
from combwright.terms.entries.food import Feed, Harvest
from combwright.terms.entries.hive_to_jar import (
    HoneyBatch,
    HoneySale,
    HoneySource,
    JarRun,
    JarWeights,
)
from combwright.terms.entries.keeper import Keeper
from combwright.terms.entries.keeping import (
    Aim,
    AimedAt,
    Harm,
    Kit,
    Limit,
    Price,
    Priced,
    Wording,
)
from combwright.terms.entries.medicines import Disposal, Product, Purchase
from combwright.terms.entries.mites import Substance, TrayCount, Treatment, WashCount
from combwright.terms.entries.orders import Order, Ordered, OrderNews
from combwright.terms.entries.places import Move, Yard
from combwright.terms.entries.queens import Queen, QueenEvent
from combwright.terms.entries.raised import Batch, BatchCounts, Method, OwnQueen, OwnQueenNews
from combwright.terms.entries.scales import ScaleReading
from combwright.terms.entries.stack import STACK_FIELDS, Change, Part, Stack
from combwright.terms.entries.visit import QueenCells, Visit

__all__ = [
    "ENTRY",
    "KINDS",
    "PAPERS",
    "STACK_FIELDS",
    "Aim",
    "AimedAt",
    "AnyEntry",
    "Batch",
    "BatchCounts",
    "BeesSold",
    "Change",
    "Colony",
    "Correction",
    "Disposal",
    "End",
    "EndReason",
    "Entry",
    "Feed",
    "Harm",
    "Harvest",
    "HoneyBatch",
    "HoneySale",
    "HoneySource",
    "HowCounted",
    "JarRun",
    "JarWeights",
    "Keeper",
    "Kit",
    "Limit",
    "Method",
    "Move",
    "Movement",
    "Name",
    "NamesDeleted",
    "Noted",
    "Order",
    "OrderNews",
    "Ordered",
    "OwnQueen",
    "OwnQueenNews",
    "Part",
    "Price",
    "Priced",
    "Product",
    "Purchase",
    "Queen",
    "QueenCells",
    "QueenEvent",
    "ScaleReading",
    "Split",
    "Stack",
    "Substance",
    "Suspicion",
    "Text",
    "TrayCount",
    "Treatment",
    "Unite",
    "Visit",
    "WashCount",
    "Wording",
    "Yard",
]


class Correction(Entry):
    """An earlier entry was wrong: it is replaced, or struck out when no replacement is given."""

    kind: Literal["correction"] = "correction"
    corrects: UUID
    replacement: "Noted | None" = None


# In the order of a visit: seen, counted, taken and given, set up, sent elsewhere.
Noted = Annotated[
    Colony
    | Visit
    | TrayCount
    | WashCount
    | Change
    | Harvest
    | Treatment
    | Feed
    | Queen
    | Split
    | Stack
    | Unite
    | Move
    | End
    | Yard
    | Kit
    | Limit
    | Price
    | Aim
    | Wording
    | HowCounted
    | Batch
    | BatchCounts
    | OwnQueen
    | OwnQueenNews
    | Order
    | OrderNews
    | Product
    | Purchase
    | Disposal
    | HoneyBatch
    | HoneySource
    | JarRun
    | JarWeights
    | HoneySale
    | Keeper
    | BeesSold
    | Movement
    | Suspicion
    | ScaleReading
    | NamesDeleted,
    Field(discriminator="kind"),
]
AnyEntry = Annotated[Noted | Correction, Field(discriminator="kind")]
KINDS: Final[tuple[type[Entry], ...]] = get_args(get_args(Noted)[0])

# what is written at a desk and says nothing of how a colony is
PAPERS: Final = (
    *(HoneyBatch, HoneySource, JarRun, JarWeights, HoneySale, Keeper),
    *(BeesSold, Movement, NamesDeleted, Product, Purchase, Disposal, Wording),
)

Correction.model_rebuild()
ENTRY: TypeAdapter[AnyEntry] = TypeAdapter(AnyEntry)
