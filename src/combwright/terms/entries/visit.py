"""What was seen at a colony."""

from typing import Annotated, Literal

from pydantic import Field

from combwright.terms.entries.about import About
from combwright.terms.entries.entry import Entry, OfColony, Text

QueenCells = Literal["none", "cups", "charged", "sealed"]
TEMPERS = {"1": "very calm", "2": "calm", "3": "lively", "4": "stings", "5": "fierce"}


class Visit(Entry):
    """What was seen at a colony, before anything was changed."""

    kind: Literal["visit"] = "visit"
    colony: OfColony
    frames_of_bees: Annotated[
        float | None,
        About(
            "Frames of bees",
            "frames covered on both sides",
            "frames of bees",
            step=0.5,
            at_hive="seen",
        ),
        Field(ge=0, le=40),
    ] = None
    frames_of_brood: Annotated[
        float | None,
        About(
            "Frames of brood",
            "frames filled on both sides",
            "frames of brood",
            step=0.5,
            at_hive="seen",
        ),
        Field(ge=0, le=36),
    ] = None
    frames_of_stores: Annotated[
        float | None,
        About(
            "Frames of stores",
            "full frames of food",
            "frames of stores",
            step=0.5,
            start=1,
            at_hive="seen",
        ),
        Field(ge=0, le=60),
    ] = None
    stores_kg: Annotated[
        float | None,
        About("Stores", "food in the hive", "stores kg", "kg", at_hive="taken"),
        Field(ge=0, le=120),
    ] = None
    hive_weight_kg: Annotated[
        float | None,
        About(
            "Hive on the scales",
            "the whole hive weighed",
            "hive weight kg",
            "kg",
            step=1,
            start=30,
            at_hive="more",
        ),
        Field(ge=2, le=250),
    ] = None
    eggs: Annotated[
        bool | None,
        About(
            "Eggs",
            "were eggs seen",
            "eggs",
            words={"yes": "eggs", "no": "no eggs"},
            nothing="not looked",
            at_hive="seen",
        ),
    ] = None
    queen_seen: Annotated[
        bool | None,
        About(
            "Queen",
            "was the queen seen",
            "queen seen",
            said="queen seen",
            words={"yes": "seen"},
            nothing="not seen",
            at_hive="seen",
        ),
    ] = None
    queen_cells: Annotated[
        QueenCells | None,
        About(
            "Queen cells",
            "the furthest stage found",
            "queen cells",
            nothing="not looked",
            at_hive="seen",
        ),
    ] = None
    syrup_left_g: Annotated[
        float | None,
        About(
            "Syrup left in the feeder",
            "left over from the last feed",
            "syrup left g",
            "g",
            step=100,
            at_hive="more",
        ),
        Field(ge=0, le=20000),
    ] = None
    temper: Annotated[
        int | None,
        About(
            "Temper",
            "1 calm to 5 fierce",
            "temper",
            words=TEMPERS,
            nothing="not noted",
            at_hive="more",
        ),
        Field(ge=1, le=5),
    ] = None
    disease_signs: Annotated[
        Text | None,
        About(
            "Signs of disease",
            "what looked unwell; “none” once it is cleared",
            "disease signs",
            hint="foul brood or a new pest: stop, close, move nothing, report; “none” once it is "
            "cleared",
            at_hive="more",
        ),
        Field(min_length=1, max_length=500),
    ] = None
    remark: Annotated[
        Text,
        About("Remark", "anything else", "remark", at_hive="last"),
        Field(max_length=2000),
    ] = ""
