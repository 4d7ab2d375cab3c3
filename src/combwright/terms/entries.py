"""The kinds of entry that a book holds: the one gate through which notes come in.

Entries are never changed. A correction is a new entry that names the old one. A value left out
(``None``) means that nobody looked, and carries no information.
"""

from datetime import date
from typing import Annotated, Literal
from uuid import UUID

from pydantic import BaseModel, ConfigDict, Field, TypeAdapter

from combwright.terms.set_up import Cover

# one line of text without control characters, and no blanks at its ends
Name = Annotated[
    str,
    Field(
        min_length=1,
        max_length=60,
        pattern=r"^[^\s\x00-\x1f\x7f]([^\x00-\x1f\x7f]*[^\s\x00-\x1f\x7f])?$",
    ),
]
# free text: new lines and tabs are welcome, other control characters are damage
Text = Annotated[str, Field(pattern=r"^[^\x00-\x08\x0b-\x1f\x7f]*$")]
QueenCells = Literal["none", "cups", "charged", "sealed"]
QueenEvent = Literal[
    "introduced",
    "removed",
    "caged",
    "released",
    "lost",
    "virgin",
    "marked",
    "cells knocked down",
]
Part = Literal[
    "drawn frame",
    "foundation frame",
    "brood frame",
    "stores frame",
    "dummy board",
    "super",
    "feeder",
]


class Entry(BaseModel):
    """What every entry has: an id made where it was written, and its day."""

    model_config = ConfigDict(frozen=True, extra="forbid", allow_inf_nan=False)

    id: UUID
    on: date
    remark: Text = Field(default="", max_length=2000)


class Yard(Entry):
    """A place with colonies.

    ``climate`` is the built-in one used when no weather is known, ``district`` the forage calendar.
    """

    kind: Literal["yard"] = "yard"
    yard: Name
    climate: Name = "Dublin Airport"
    district: Name = "lowland mixed farmland"
    latitude: float | None = Field(default=None, ge=-90, le=90)
    longitude: float | None = Field(default=None, ge=-180, le=180)


class Colony(Entry):
    """A colony enters the book, in a hive of the catalogue."""

    kind: Literal["colony"] = "colony"
    colony: Name
    yard: Name
    hive: Name
    queen_year: int | None = Field(default=None, ge=1990, le=2100)


class Stack(Entry):
    """How the stack stands when the keeper leaves; ``None`` where it was left as it was."""

    kind: Literal["stack"] = "stack"
    colony: Name
    hive: Name | None = None
    frames: int | None = Field(default=None, ge=0, le=36)
    foundation: int | None = Field(default=None, ge=0, le=36)
    dummy_boards: int | None = Field(default=None, ge=0, le=2)
    supers: int | None = Field(default=None, ge=0, le=8)
    excluder: bool | None = None
    entrance_mm: int | None = Field(default=None, ge=0, le=430)
    tray_open_mm: int | None = Field(default=None, ge=0, le=460)
    cover: Cover | None = None
    pitch_mm: float | None = Field(default=None, ge=28, le=60)


class Visit(Entry):
    """What was seen at a colony, before anything was changed."""

    kind: Literal["visit"] = "visit"
    colony: Name
    frames_of_bees: float | None = Field(default=None, ge=0, le=40)
    frames_of_brood: float | None = Field(default=None, ge=0, le=36)
    frames_of_stores: float | None = Field(default=None, ge=0, le=60)
    stores_kg: float | None = Field(default=None, ge=0, le=120)
    hive_weight_kg: float | None = Field(default=None, ge=2, le=250)
    eggs: bool | None = None
    queen_seen: bool | None = None
    queen_cells: QueenCells | None = None
    syrup_left_g: float | None = Field(default=None, ge=0, le=20000)
    temper: int | None = Field(default=None, ge=1, le=5)
    disease_signs: Text | None = Field(default=None, min_length=1, max_length=500)


class Feed(Entry):
    """Feed given: syrup of a sugar fraction by mass, or fondant."""

    kind: Literal["feed"] = "feed"
    colony: Name
    feed: Literal["syrup", "fondant"] = "syrup"
    grams: float = Field(gt=0, le=30000)
    sugar_fraction: float = Field(default=0.6, ge=0.3, le=0.95)
    temperature_c: float | None = Field(default=None, ge=0, le=60)


class Change(Entry):
    """Frames, boards or supers put in (positive) or taken out (negative).

    A feeder is noted only when it comes off, with what is left in it (-1): one that goes on empty
    changes nothing, and what goes into it is a feed.
    """

    kind: Literal["change"] = "change"
    colony: Name
    part: Part
    count: int = Field(ge=-36, le=36)


class TrayCount(Entry):
    """Mites fallen on the tray over some days."""

    kind: Literal["tray count"] = "tray count"
    colony: Name
    mites: int = Field(ge=0, le=50000)
    days: float = Field(gt=0, le=60)


class WashCount(Entry):
    """Mites washed or shaken off a sample of bees."""

    kind: Literal["wash count"] = "wash count"
    colony: Name
    mites: int = Field(ge=0, le=2000)
    bees: int = Field(gt=0, le=2000)
    method: Literal["wash", "sugar"] = "wash"


class Treatment(Entry):
    """A mite treatment; the label says how it is used and how long honey must wait."""

    kind: Literal["treatment"] = "treatment"
    colony: Name
    substance: Literal[
        "oxalic acid",
        "formic acid",
        "thymol",
        "amitraz",
        "tau-fluvalinate",
        "flumethrin",
        "drone brood removed",
        "other",
    ]
    product: Text = Field(default="", max_length=200)
    batch: Text = Field(default="", max_length=100)
    amount: Text = Field(default="", max_length=100)
    until: date | None = None


class Split(Entry):
    """Bees and brood taken from a colony to start another."""

    kind: Literal["split"] = "split"
    colony: Name
    new_colony: Name
    hive: Name
    frames_of_bees: float = Field(gt=0, le=30)
    frames_of_brood: float = Field(default=0, ge=0, le=30)
    frames_of_stores: float = Field(default=0, ge=0, le=30)
    goes_with: Literal["queen", "cell", "nothing", "mated queen"] = "cell"


class Unite(Entry):
    """A colony joined to another, whose queen is kept."""

    kind: Literal["unite"] = "unite"
    colony: Name
    into: Name


class Queen(Entry):
    """Something done to, or learnt of, a queen.

    “Cells knocked down” means all of them; where one was left, the colony goes on with it.
    """

    kind: Literal["queen"] = "queen"
    colony: Name
    event: QueenEvent
    queen_year: int | None = Field(default=None, ge=1990, le=2100)


class Move(Entry):
    """A colony taken to another yard."""

    kind: Literal["move"] = "move"
    colony: Name
    yard: Name


class Harvest(Entry):
    """Honey taken from a colony."""

    kind: Literal["harvest"] = "harvest"
    colony: Name
    honey_kg: float = Field(ge=0, le=200)
    supers: int = Field(default=0, ge=0, le=8)


class End(Entry):
    """A colony leaves the book."""

    kind: Literal["end"] = "end"
    colony: Name
    reason: Literal["dead", "sold", "swarmed out", "united", "stolen", "other"]


class Kit(Entry):
    """How many of one item of the catalogue the keeper owns, free for use, from this day on."""

    kind: Literal["kit"] = "kit"
    item: Name
    count: int = Field(ge=0, le=100000)


class Limit(Entry):
    """The greatest chance of a harm that plans may carry, from this day on."""

    kind: Literal["limit"] = "limit"
    harm: Literal["hunger", "no room", "chilled", "sour", "swarm"]
    percent: float = Field(ge=0, le=50)


class Correction(Entry):
    """An earlier entry was wrong: it is replaced, or struck out when no replacement is given."""

    kind: Literal["correction"] = "correction"
    corrects: UUID
    replacement: "Noted | None" = None


Noted = Annotated[
    Yard
    | Colony
    | Stack
    | Visit
    | Feed
    | Change
    | TrayCount
    | WashCount
    | Treatment
    | Split
    | Unite
    | Queen
    | Move
    | Harvest
    | End
    | Kit
    | Limit,
    Field(discriminator="kind"),
]
AnyEntry = Annotated[Noted | Correction, Field(discriminator="kind")]

Correction.model_rebuild()
ENTRY: TypeAdapter[AnyEntry] = TypeAdapter(AnyEntry)
