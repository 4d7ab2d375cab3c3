"""A set-up: how a colony's stack should stand until the next visit."""

from typing import Literal

from pydantic import BaseModel, ConfigDict, Field

Cover = Literal["crown board", "cushion", "vented"]


class SetUp(BaseModel):
    """Room and warmth of one colony.

    ``frames`` counts all frames in the brood box or boxes, ``foundation`` those of them that are
    still to be drawn. ``tray_open_mm`` is how far the tray under the mesh floor is drawn out.
    """

    model_config = ConfigDict(frozen=True, extra="forbid")

    hive: str = "national timber"
    frames: int = Field(ge=0, le=36)
    foundation: int = Field(default=0, ge=0, le=36)
    dummy_boards: int = Field(default=0, ge=0, le=2)
    supers: int = Field(default=0, ge=0, le=8)
    excluder: bool = False
    entrance_mm: int = Field(default=100, ge=0, le=430)
    tray_open_mm: int = Field(default=100, ge=0, le=460)
    cover: Cover = "crown board"
