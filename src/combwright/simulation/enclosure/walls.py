"""What each square metre of a stack lets through: side walls, top, floor, supers."""

from dataclasses import dataclass
from functools import lru_cache

from combwright.kit.catalogue import catalogue
from combwright.kit.items import Hive, Layer
from combwright.science.heat import surfaces
from combwright.terms.set_up import SetUp

BEE_SPACE_MM = 7.0  # 6 to 9 mm (read: British pages on bee space)
TRAY_LENGTH_MM = 460.0  # BS 1300 outside: a tray drawn this far is out
UNDER_FRAMES_MM = 22.0  # from the bottom bars to the floor or mesh: the entrance's height
UNDER_MESH_MM = 40.0  # from mesh to tray, common practice


@dataclass(frozen=True, slots=True)
class Walls:
    """Transmittances of a stack. [W/(m² K)].

    ``wall`` starts at a bee space, ``wall_of_room`` at the air of an empty space; ``top`` is what
    lies over the frames, supers included where they are warmed evenly.
    """

    wall: float
    wall_of_room: float
    cover: float
    floor: float
    surface_up: float


@lru_cache(maxsize=256)
def walls_of(hive: Hive, set_up: SetUp, wind_m_s: float) -> Walls:
    """Give the transmittances of a stack in a wind. [m/s]."""
    outside = float(surfaces.outer_surface_resistance(wind_m_s))
    wall = _resistance(hive.wall, "horizontal") + outside
    inside = float(surfaces.inner_surface_resistance("horizontal"))
    return Walls(
        wall=1 / (_air(BEE_SPACE_MM, "horizontal") + wall),
        wall_of_room=1 / (inside + wall),
        cover=_cover(hive, set_up, outside),
        floor=_floor(hive, set_up, outside),
        surface_up=1 / float(surfaces.inner_surface_resistance("up")),
    )


def vent_cm2() -> float:
    """Area of a vented top. [cm²]."""
    return catalogue().cover("crown board vented").openings_cm2


def board_resistance(hive: Hive) -> float:
    """Resistance of a hive's dummy board without its surfaces. [m² K/W]."""
    return _resistance(hive.dummy_board.layers, "horizontal")


def _cover(hive: Hive, set_up: SetUp, outside: float) -> float:
    cushion = catalogue().cover("cushion").layers if set_up.cover == "cushion" else ()
    under_roof = _air(BEE_SPACE_MM, "up") + _resistance((*hive.crown_board, *cushion), "up")
    if hive.roof_is_ventilated:
        # ISO 6946: what lies beyond a ventilated space counts only as still air.
        return 1 / (under_roof + float(surfaces.inner_surface_resistance("up")))
    return 1 / (under_roof + _resistance(hive.roof, "up") + outside)


def _floor(hive: Hive, set_up: SetUp, outside: float) -> float:
    layers = _resistance(hive.floor_layers, "down")
    under_frames = _air(UNDER_FRAMES_MM, "down")
    if hive.floor == "solid":
        return 1 / (under_frames + layers + outside)
    closed = 1 / (under_frames + _air(UNDER_MESH_MM, "down") + layers + outside)
    bare = 1 / (float(surfaces.inner_surface_resistance("down")) + outside)
    drawn = min(1.0, set_up.tray_open_mm / TRAY_LENGTH_MM)
    return drawn * bare + (1 - drawn) * closed


def _resistance(layers: tuple[Layer, ...], direction: surfaces.Direction) -> float:
    return sum(
        _air(layer.mm, direction)
        if layer.conductivity_w_per_m_k is None
        else float(surfaces.layer_resistance(layer.mm, layer.conductivity_w_per_m_k))
        for layer in layers
    )


def _air(mm: float, direction: surfaces.Direction) -> float:
    return float(surfaces.air_layer_resistance(mm, direction))
