"""A set-up: how a colony's stack should stand until the next visit."""

from typing import Final, Literal

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from combwright.terms.errors import OutOfRangeError

Cover = Literal["crown board", "cushion", "vented"]
MOST_BROOD_BOXES: Final = 3
MOST_DUMMY_BOARDS: Final = 2  # in one box: one on each side of the nest
MOST_SUPERS: Final = 8


class SetUp(BaseModel):
    """Room and warmth of one colony.

    ``frames`` counts all frames in the brood box or boxes, ``foundation`` those of them that are
    still to be drawn; ``dummy_boards`` stand in each brood box. ``tray_open_mm`` is how far the
    tray under the mesh floor is drawn out.
    """

    model_config = ConfigDict(frozen=True, extra="forbid")

    hive: str = "national timber"
    brood_boxes: int = Field(default=1, ge=1, le=MOST_BROOD_BOXES)
    frames: int = Field(ge=0, le=36)
    foundation: int = Field(default=0, ge=0, le=36)
    dummy_boards: int = Field(default=0, ge=0, le=MOST_DUMMY_BOARDS)
    supers: int = Field(default=0, ge=0, le=MOST_SUPERS)
    excluder: bool = False
    entrance_mm: int = Field(default=100, ge=0, le=430)
    tray_open_mm: int = Field(default=100, ge=0, le=460)
    cover: Cover = "crown board"


def set_up_of(**fields: object) -> SetUp:
    """Make a set-up; what cannot be is refused in a sentence."""
    try:
        return SetUp.model_validate(fields)
    except ValidationError as error:
        problem = error.errors()[0]
        name = " ".join(str(part) for part in problem["loc"]).replace("_", " ")
        message = problem["msg"][0].lower() + problem["msg"][1:]
        raise OutOfRangeError(f"{name} cannot be {problem['input']!r}: {message}.") from error
