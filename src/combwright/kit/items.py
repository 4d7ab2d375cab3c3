"""What the catalogue holds: each thing with its measures, materials, masses and source.

Lengths are in millimetres, masses in kilograms, areas in square decimetres. The bounds catch a
slip of unit (centimetres, inches, grams), not an unusual hive.
"""

from typing import Annotated, Literal

from pydantic import ConfigDict, Field
from pydantic.dataclasses import dataclass

from combwright.terms.parameters import Verified

Length = Annotated[float, Field(ge=60, le=1500)]  # a box, a frame
Thickness = Annotated[float, Field(ge=0.1, le=300)]  # a wall, a bar, a gap
Mass = Annotated[float, Field(ge=0, le=60)]
Count = Annotated[int, Field(ge=1, le=40)]
Key = Annotated[str, Field(min_length=1, pattern=r"^[a-z0-9][a-z0-9 ]*[a-z0-9]$")]
Words = Annotated[str, Field(min_length=1)]

CONFIG = ConfigDict(extra="forbid", str_strip_whitespace=True)


@dataclass(frozen=True, kw_only=True, config=CONFIG)
class Item:
    """Anything in the catalogue: its key, its name and who vouches for its numbers."""

    key: Key
    name: Words
    source: Words
    verified: Verified
    note: str = ""


@dataclass(frozen=True, kw_only=True, config=CONFIG)
class Material(Item):
    """What walls and boards are made of; conductivity [W/(m K)], density [kg/m³]."""

    conductivity_w_per_m_k: Annotated[float, Field(gt=0.015, le=400)]
    density_kg_per_m3: Annotated[float, Field(ge=5, le=9000)]


@dataclass(frozen=True, kw_only=True, config=CONFIG)
class Layer:
    """One layer of a wall, inside to outside; still air has no conductivity of its own."""

    material: Words
    mm: Thickness
    conductivity_w_per_m_k: float | None


@dataclass(frozen=True, kw_only=True, config=CONFIG)
class Frame(Item):
    """A frame with comb; ``comb_area_dm2`` is one side, all else is the whole frame."""

    use: Literal["brood", "super"]
    spacing: Literal["self-spacing", "plain", "manley"]
    top_bar_mm: Length
    top_bar_width_mm: Thickness
    width_mm: Length
    depth_mm: Length
    pitch_mm: Annotated[float, Field(ge=28, le=60)]
    comb_area_dm2: Annotated[float, Field(ge=1, le=30)]
    worker_cells: Annotated[int, Field(ge=500, le=20000)]
    bees_full_cover: Annotated[int, Field(ge=200, le=8000)]
    stores_full_kg: Annotated[float, Field(gt=0, le=8)]
    drawn_kg: Mass

    @property
    def honey_full_kg(self) -> float:
        """What the bees put into it when it is full. [kg]."""
        return self.stores_full_kg


@dataclass(frozen=True, kw_only=True, config=CONFIG)
class Super(Item):
    """A honey box and the frames that usually stand in it."""

    fits: tuple[Words, ...]
    inner_width_mm: Length
    inner_length_mm: Length
    inner_depth_mm: Length
    frames: Count
    frame: Frame
    box_kg: Mass

    @property
    def honey_full_kg(self) -> float:
        """Honey in the full box. [kg]."""
        return self.frames * self.frame.honey_full_kg

    @property
    def full_kg(self) -> float:
        """What is lifted when the box is full. [kg]."""
        return self.box_kg + self.frames * (self.frame.drawn_kg + self.frame.honey_full_kg)


@dataclass(frozen=True, kw_only=True, config=CONFIG)
class Board(Item):
    """A dummy board, which takes a frame's place and is thinner than one."""

    mm: Thickness
    layers: tuple[Layer, ...]
    kg: Mass


@dataclass(frozen=True, kw_only=True, config=CONFIG)
class Hive(Item):
    """A hive or nuc box. ``inner_width_mm`` is the direction in which frames stack.

    ``frames`` is the usual number in the brood box, ``capacity`` the most that go in at the
    35 mm spacing. Layers run from the bees outwards; ``tray`` is what closes a mesh floor.
    """

    kind: Literal["hive", "nuc"]
    plan: Words
    bee_space: Literal["top", "bottom"]
    frames: Count
    inner_width_mm: Length
    inner_length_mm: Length
    inner_depth_mm: Length
    wall: tuple[Layer, ...]
    crown_board: tuple[Layer, ...]
    roof: tuple[Layer, ...]
    roof_is_ventilated: bool
    floor: Literal["mesh", "solid"]
    floor_layers: tuple[Layer, ...]
    frame: Frame
    honey_super: Super | None = None
    dummy_board: Board
    box_kg: Mass
    floor_kg: Mass
    crown_board_kg: Mass
    roof_kg: Mass

    @property
    def capacity(self) -> int:
        """The most frames that go into one box at the 35 mm spacing, or at its own if wider."""
        return int(self.inner_width_mm // max(35.0, self.frame.pitch_mm))

    @property
    def pitch_mm(self) -> float:
        """From the middle of one comb to the middle of the next. [mm]."""
        return self.frame.pitch_mm

    @property
    def inner_volume_l(self) -> float:
        """Room inside one brood box. [L]."""
        return self.inner_width_mm * self.inner_length_mm * self.inner_depth_mm / 1e6

    @property
    def super_frames(self) -> int:
        """Frames in its usual super; none where it takes no super."""
        return self.honey_super.frames if self.honey_super else 0

    @property
    def empty_kg(self) -> float:
        """Floor, one brood box with drawn frames, crown board and roof, without bees. [kg]."""
        combs = self.frames * self.frame.drawn_kg
        return self.floor_kg + self.box_kg + combs + self.crown_board_kg + self.roof_kg


@dataclass(frozen=True, kw_only=True, config=CONFIG)
class Spacing(Item):
    """A way of keeping frames apart."""

    pitch_mm: Annotated[float, Field(ge=28, le=60)]


@dataclass(frozen=True, kw_only=True, config=CONFIG)
class Feeder(Item):
    """A feeder; where it stands, what it holds [L], and whether it needs an empty box round it."""

    stands: Literal["over the crown board", "in place of a frame", "on the frames"]
    capacity_l: Annotated[float, Field(gt=0, le=30)]
    capacity_low_l: Annotated[float, Field(gt=0, le=30)]
    capacity_high_l: Annotated[float, Field(gt=0, le=30)]
    needs_empty_box: bool
    empty_kg: Mass


@dataclass(frozen=True, kw_only=True, config=CONFIG)
class Floor(Item):
    """A floor: mesh with a tray, or solid; the entrance's height [mm]."""

    floor: Literal["mesh", "solid"]
    entrance_height_mm: Thickness
    layers: tuple[Layer, ...]
    kg: Mass


@dataclass(frozen=True, kw_only=True, config=CONFIG)
class Cover(Item):
    """What lies over the frames: a crown board, a cushion, a roof."""

    part: Literal["crown board", "cushion", "roof"]
    layers: tuple[Layer, ...]
    openings_cm2: Annotated[float, Field(ge=0, le=500)]
    kg: Mass


@dataclass(frozen=True, kw_only=True, config=CONFIG)
class Excluder(Item):
    """A queen excluder: the gap that workers pass and queens do not. [mm]."""

    gap_mm: Annotated[float, Field(ge=3.5, le=5.0)]
    kg: Mass
