"""How the stack stands, and what was put into it or taken out."""

from collections.abc import Mapping
from typing import Annotated, Any, ClassVar, Literal

from pydantic import Field

from combwright.terms.entries.about import About, Variant, done, taken
from combwright.terms.entries.entry import Entry, Name, OfColony
from combwright.terms.set_up import Cover

Part = Literal[
    "drawn frame",
    "foundation frame",
    "brood frame",
    "stores frame",
    "dummy board",
    "super",
    "feeder",
]
ADDED = {
    "drawn frame": "drawn frames added",
    "foundation frame": "foundation added",
    "brood frame": "brood frames added",
    "stores frame": "stores frames added",
}


class Stack(Entry):
    """How the stack stands when the keeper leaves; ``None`` where it was left as it was."""

    kind: Literal["stack"] = "stack"
    colony: OfColony
    hive: Annotated[Name | None, taken("Hive", "its hive now", chosen_from="hive")] = None
    brood_boxes: Annotated[
        int | None,
        done("Brood boxes", "brood boxes, on leaving", "brood boxes", step=1, start=1),
        Field(ge=1, le=3),
    ] = None
    frames: Annotated[
        int | None,
        done(
            "Frames in the box",
            "all frames of the brood box or boxes, on leaving",
            "frames in box",
            said="frames",
            step=1,
        ),
        Field(ge=0, le=36),
    ] = None
    foundation: Annotated[
        int | None,
        done(
            "Foundation",
            "those of them still to be drawn",
            "foundation",
            hint="of these frames",
            step=1,
        ),
        Field(ge=0, le=36),
    ] = None
    dummy_boards: Annotated[
        int | None,
        done("Dummy boards", "dummy boards in the box, on leaving", "dummy boards", step=1),
        Field(ge=0, le=2),
    ] = None
    supers: Annotated[
        int | None,
        done("Supers", "supers on the hive, on leaving", "supers", step=1),
        Field(ge=0, le=8),
    ] = None
    excluder: Annotated[
        bool | None,
        done(
            "Queen excluder", "is a queen excluder on", "excluder", words={"yes": "on", "no": "off"}
        ),
    ] = None
    entrance_mm: Annotated[
        int | None,
        done("Entrance", "width of the open entrance", "entrance mm", "mm", step=10),
        Field(ge=0, le=430),
    ] = None
    tray_open_mm: Annotated[
        int | None,
        done("Tray drawn out", "how far the tray is out", "tray open mm", "mm", step=10),
        Field(ge=0, le=460),
    ] = None
    cover: Annotated[Cover | None, done("Cover", "what lies over the frames", "cover")] = None
    pitch_mm: Annotated[
        float | None,
        taken("Comb to comb", "from the middle of a comb to the next", "pitch mm", "mm"),
        Field(ge=28, le=60),
    ] = None


class Change(Entry):
    """Frames, boards or supers put in (positive) or taken out (negative).

    A feeder is noted only when it comes off, with what is left in it (-1): one that goes on empty
    changes nothing, and what goes into it is a feed.
    """

    AT_HIVE: ClassVar[Mapping[str, Any]] = {"part": "feeder"}
    VARIANTS: ClassVar[Mapping[str, Variant]] = {
        part: Variant({"part": part}, {"count": heading}) for part, heading in ADDED.items()
    } | {
        "feeder": Variant(
            {"part": "feeder"},
            {"count": "feeder added"},
            "-1: taken off, with what was left in it; a full one is a feed",
        )
    }

    kind: Literal["change"] = "change"
    colony: OfColony
    part: Annotated[Part, About("Part", "what was put in or taken out", said="")]
    count: Annotated[
        int,
        done(
            "Feeder",
            "negative: taken out",
            said="put in",
            words={"-1": "taken off"},
            nothing="left as it was",
            name="feeder",
            nought_is_none=True,
        ),
        Field(ge=-36, le=36),
    ]


STACK_FIELDS = tuple(name for name in Stack.model_fields if name not in Change.model_fields)
