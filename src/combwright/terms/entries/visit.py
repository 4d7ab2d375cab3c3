"""What was seen at a colony."""

from typing import Annotated, Literal

from pydantic import Field

from combwright.terms.entries.about import About, more, seen, taken
from combwright.terms.entries.entry import Entry, OfColony, Text

BroodKind = Literal["worker brood", "drone brood only", "several eggs a cell"]
QueenCells = Literal["none", "cups", "charged", "sealed"]
CellsPlace = Literal["face of a comb", "edges of combs", "face and edges"]
BroodPattern = Literal["solid", "patchy"]
HowMuch = Literal["none", "some", "much"]
Flow = Literal["none", "some", "strong"]
EntranceTrouble = Literal["none", "wasps", "robbing"]
TEMPERS = {"1": "very calm", "2": "calm", "3": "lively", "4": "stings", "5": "fierce"}


class Visit(Entry):
    """What was seen at a colony, before anything was changed."""

    kind: Literal["visit"] = "visit"
    colony: OfColony
    frames_of_bees: Annotated[
        float | None,
        seen("Frames of bees", "frames covered on both sides", "frames of bees", step=0.5),
        Field(ge=0, le=40),
    ] = None
    seams_of_bees: Annotated[
        float | None,
        seen("Seams of bees", "gaps between combs with bees in them", "seams of bees", step=1),
        Field(ge=0, le=42),
    ] = None
    frames_of_brood: Annotated[
        float | None,
        seen("Frames of brood", "frames filled on both sides", "frames of brood", step=0.5),
        Field(ge=0, le=36),
    ] = None
    combs_with_brood: Annotated[
        float | None,
        seen("Combs with brood", "combs with any brood in them", "combs with brood", step=1),
        Field(ge=0, le=36),
    ] = None
    frames_of_stores: Annotated[
        float | None,
        seen("Frames of stores", "full frames of food", "frames of stores", step=0.5, start=1),
        Field(ge=0, le=60),
    ] = None
    stores_kg: Annotated[
        float | None,
        taken("Stores", "food in the hive", "stores kg", "kg"),
        Field(ge=0, le=120),
    ] = None
    hive_weight_kg: Annotated[
        float | None,
        more(
            "Hive on the scales", "the whole hive weighed", "hive weight kg", "kg", step=1, start=30
        ),
        Field(ge=2, le=250),
    ] = None
    eggs: Annotated[
        bool | None,
        seen(
            "Eggs",
            "were eggs seen",
            "eggs",
            words={"yes": "eggs", "no": "no eggs"},
            nothing="not looked",
        ),
    ] = None
    queen_seen: Annotated[
        bool | None,
        seen(
            "Queen",
            "was the queen seen",
            "queen seen",
            said="queen seen",
            words={"yes": "seen"},
            nothing="not seen",
        ),
    ] = None
    queen_cells: Annotated[
        QueenCells | None,
        seen("Queen cells", "the furthest stage found", "queen cells", nothing="not looked"),
    ] = None
    cells_found: Annotated[
        int | None,
        seen(
            "How many cells",
            "queen cells with a larva or sealed, counted",
            "queen cells found",
            said="cells",
            step=1,
            start=1,
        ),
        Field(ge=0, le=200),
    ] = None
    cells_place: Annotated[
        CellsPlace | None,
        seen(
            "Where",
            "where the queen cells hang",
            "queen cells place",
            said="on the",
            nothing="not noted",
        ),
    ] = None
    brood_kind: Annotated[
        BroodKind | None,
        more(
            "Kind of brood",
            "what is in the worker cells",
            "kind of brood",
            hint="domed caps in worker cells are drone brood; several eggs a cell, on its walls, "
            "are workers' eggs",
            nothing="not noted",
        ),
    ] = None
    larvae: Annotated[
        bool | None,
        more(
            "Larvae",
            "were larvae seen",
            "larvae",
            words={"yes": "seen", "no": "none"},
            nothing="not looked",
        ),
    ] = None
    sealed_brood: Annotated[
        bool | None,
        more(
            "Sealed brood",
            "was sealed brood seen",
            "sealed brood",
            words={"yes": "seen", "no": "none"},
            nothing="not looked",
        ),
    ] = None
    brood_pattern: Annotated[
        BroodPattern | None,
        more(
            "Brood pattern", "how evenly the cells are filled", "brood pattern", nothing="not noted"
        ),
    ] = None
    drone_brood: Annotated[
        HowMuch | None,
        more("Drone brood", "how much of it in drone cells", "drone brood", nothing="not noted"),
    ] = None
    pollen: Annotated[
        bool | None,
        more("Pollen coming in", "is pollen carried in", "pollen coming in", nothing="not looked"),
    ] = None
    flow: Annotated[
        Flow | None,
        more("Flow", "is nectar coming in", "flow", said="flow:", nothing="not noted"),
    ] = None
    entrance_trouble: Annotated[
        EntranceTrouble | None,
        more(
            "At the entrance",
            "wasps or robbing bees",
            "wasps or robbing",
            said="at the entrance:",
            nothing="not noted",
        ),
    ] = None
    granulated: Annotated[
        bool | None,
        more(
            "Stores granulated",
            "have stores set hard in the combs",
            "granulated",
            nothing="not looked",
        ),
    ] = None
    super_sealed_quarters: Annotated[
        int | None,
        more(
            "Top super sealed",
            "how much of its comb is sealed",
            "super sealed quarters",
            "quarters",
            step=1,
        ),
        Field(ge=0, le=4),
    ] = None
    supers_fill: Annotated[
        Text | None,
        more("Fill of each super", "from the lowest up", "fill of supers", hint="full, ½, empty"),
        Field(min_length=1, max_length=100),
    ] = None
    treatment_out: Annotated[
        bool | None,
        more(
            "Strips or tray out",
            "was what was put in against mites taken out",
            "treatment out",
            nothing="nothing to say",
        ),
    ] = None
    syrup_left_g: Annotated[
        float | None,
        more(
            "Syrup left in the feeder",
            "left over from the last feed",
            "syrup left g",
            "g",
            step=100,
        ),
        Field(ge=0, le=20000),
    ] = None
    temper: Annotated[
        int | None,
        more("Temper", "1 calm to 5 fierce", "temper", words=TEMPERS, nothing="not noted"),
        Field(ge=1, le=5),
    ] = None
    minutes: Annotated[
        float | None,
        more(
            "Minutes at the hive",
            "how long the visit took, with all that was done",
            "minutes taken",
            "min",
            step=1,
            start=6,
        ),
        Field(gt=0, le=480),
    ] = None
    disease_signs: Annotated[
        Text | None,
        more(
            "Signs of disease",
            "what looked unwell; “none” once it is cleared",
            "disease signs",
            hint="foul brood or a new pest: stop, close, move nothing, report; “none” once it is "
            "cleared",
        ),
        Field(min_length=1, max_length=500),
    ] = None
    remark: Annotated[
        Text,
        About("Remark", "anything else", "remark", at_hive="last"),
        Field(max_length=2000),
    ] = ""
