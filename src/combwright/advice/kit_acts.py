"""What is done to the stack, the food and the mites: typed actions."""

from datetime import date
from typing import Literal

from pydantic import BaseModel, ConfigDict, Field

from combwright.terms.set_up import Cover


class Act(BaseModel):
    """One thing to do; frozen, and closed to unknown fields."""

    model_config = ConfigDict(frozen=True, extra="forbid")


class Feeding(Act):
    """Give a portion; nothing is given with 0 grams."""

    do: Literal["feed"] = "feed"
    feed: Literal["syrup", "fondant"]
    grams: int
    sugar_fraction: float
    per_day_g: int = 0
    days: int = 0
    hand_warm: bool = False


class Frames(Act):
    """Add frames at the edge of the nest, or take empty ones out: ``more`` below 0."""

    do: Literal["frames"] = "frames"
    more: int
    comb: Literal["drawn", "foundation"] = "drawn"


class StoresOut(Act):
    """Take combs of stores out of a full nest, and put drawn ones in their place."""

    do: Literal["stores out"] = "stores out"
    combs: int


class Boards(Act):
    """Put dummy boards in, or take them out: ``more`` below 0."""

    do: Literal["boards"] = "boards"
    more: int


class SuperOn(Act):
    """Put supers on over the excluder; the feeder comes off."""

    do: Literal["super on"] = "super on"
    supers: int = 1


class SuperOff(Act):
    """Take supers off: the fullest with their honey, or all that stands over a hungry colony."""

    do: Literal["super off"] = "super off"
    supers: int
    why: Literal["ripe", "end of the season", "must be fed"]
    honey_kg_low: float = 0.0
    honey_kg: float = 0.0
    honey_kg_high: float = 0.0


class Tray(Act):
    """Draw the tray under the mesh out so far; as far as it goes, it is taken out."""

    do: Literal["tray"] = "tray"
    open_mm: int
    there: bool = Field(default=True, description="False under a solid floor, where nothing is set")


class TopCover(Act):
    """Open or close the top."""

    do: Literal["cover"] = "cover"
    cover: Cover


class Entrance(Act):
    """Set the width of the entrance."""

    do: Literal["entrance"] = "entrance"
    width_mm: int


class LeaveStack(Act):
    """Leave it on so much, whatever stands there now: what a branch asks for."""

    do: Literal["stack"] = "stack"
    frames: int
    dummy_boards: int
    supers: int


class Respace(Act):
    """Put wrong spacing right; the notice is the kit's own."""

    do: Literal["respace"] = "respace"
    frames: int
    dummy_boards: int
    pitch_mm: float
    notice: str


class ProveRipe(Act):
    """Test that honey is ripe before it is taken."""

    do: Literal["prove ripe"] = "prove ripe"
    water_percent_most: float


class KeepHoney(Act):
    """Keep honey for the bees: fed syrup may be in it."""

    do: Literal["keep honey for the bees"] = "keep honey for the bees"


class Treat(Act):
    """Begin a treatment today, in the dose and way of its label."""

    do: Literal["treat"] = "treat"
    substance: str
    way: str


class WriteDown(Act):
    """Write a treatment into the book, as the law asks."""

    do: Literal["write down treatment"] = "write down treatment"
    kept_years: int = 5


class CutDrones(Act):
    """Cut out sealed drone brood with its mites: allowed under supers."""

    do: Literal["cut drone brood"] = "cut drone brood"


class TakeOut(Act):
    """Take out what is left of a treatment."""

    do: Literal["take out treatment"] = "take out treatment"
    substance: str
    by: date
    is_due: bool


class Counting(Act):
    """Count mites on the tray, or washed off a sample of bees where there is none."""

    do: Literal["count"] = "count"
    on_tray: bool = Field(default=True, description="False over a solid floor: washed off bees")
    days_least: int = 5
    days_most: int = 7
    tray_open_mm: int = 50
