"""The geometry of one set-up, and the pieces of its loss.

Not modelled: bees that close the ways between combs, moisture, sun, and how the bee space over
the top bars feeds air sideways in detail (Mitchell 2024 finds up to 70 % more loss by it); the
last enters as a share of the bee space that air may use, which is a judgement with a wide range.
"""

from dataclasses import dataclass

from combwright.kit.items import Hive
from combwright.science.heat import moving_air, surfaces
from combwright.simulation.enclosure.walls import (
    BEE_SPACE_MM,
    TRAY_LENGTH_MM,
    UNDER_FRAMES_MM,
    Walls,
    board_resistance,
    vent_cm2,
)
from combwright.terms.data_files import parameter
from combwright.terms.set_up import SetUp

BEE_WAY_OPEN = parameter("simulation/enclosure", "bee_way_open")
BOARD_SEAL = parameter("simulation/enclosure", "board_seal")
COMB_RESISTANCE = parameter("simulation/enclosure", "comb_resistance")
VENT_WARMTH = parameter("simulation/enclosure", "vent_warmth")
MESH_OPEN_SHARE = 0.3  # of a mesh floor's area lets air pass, common practice
# Buoyant flow grows with the root of the difference; these are the ones it is taken at.
NEST_OVER_ROOM_K = 10.0
AIR_OVER_OUTSIDE_K = 10.0
MEAN_C = 15.0


@dataclass(frozen=True, slots=True)
class Assumptions:
    """What the loss rests on beside geometry and materials; each may be varied in its range."""

    bee_way_open: float = BEE_WAY_OPEN.value
    board_seal: float = BOARD_SEAL.value
    comb_resistance: float = COMB_RESISTANCE.value
    vent_warmth: float = VENT_WARMTH.value


@dataclass(frozen=True, slots=True)
class SlabGeometry:
    """Geometry of one set-up; lengths in metres. Brood boxes share the frames evenly."""

    hive: Hive
    set_up: SetUp
    walls: Walls
    assumed: Assumptions

    @property
    def boxes(self) -> int:
        """Brood boxes, over all of which the nest reaches."""
        return self.set_up.brood_boxes

    @property
    def length(self) -> float:
        """Inside length, along the frames. [m]."""
        return self.hive.inner_length_mm / 1000

    @property
    def height(self) -> float:
        """Inside height of the brood boxes. [m]."""
        return self.boxes * self.hive.inner_depth_mm / 1000

    @property
    def pitch(self) -> float:
        """Width that one frame adds to a nest which spans all brood boxes. [m]."""
        return self.hive.pitch_mm / 1000 / self.boxes

    @property
    def face(self) -> float:
        """Area of one side of the nest. [m²]."""
        return self.length * self.height

    @property
    def room(self) -> float:
        """Width that neither frames nor boards take."""
        board = self.hive.dummy_board.mm / 1000 * self.set_up.dummy_boards
        return max(0.0, self.hive.inner_width_mm / 1000 - self.set_up.frames * self.pitch - board)

    @property
    def plan(self) -> float:
        """Inside area seen from above. [m²]."""
        return self.hive.inner_width_mm / 1000 * self.length

    @property
    def free_volume_l(self) -> float:
        """Room that no frame of the brood boxes takes. [L]."""
        supers = self.set_up.supers * self.super_height * self.plan
        return 1000 * (self.room * self.face + supers)

    @property
    def super_height(self) -> float:
        """Height of one super. [m]."""
        honey_super = self.hive.honey_super
        return (honey_super.inner_depth_mm if honey_super else self.hive.inner_depth_mm) / 1000

    @property
    def supers_out(self) -> float:
        """What the supers over the nest lose to the outside. [W/K]."""
        around = 2 * (self.hive.inner_width_mm / 1000 + self.length)
        sides = around * self.super_height * self.set_up.supers * self.walls.wall_of_room
        return sides + self.plan * self.walls.cover

    @property
    def bee_ways(self) -> float:
        """What air carries from one way between combs to the next. [W/K]."""
        area_cm2 = BEE_SPACE_MM * self.hive.inner_length_mm / 100 * self.assumed.bee_way_open
        warm = MEAN_C + NEST_OVER_ROOM_K
        flow = moving_air.stack_flow_l_per_s(area_cm2, self.height, warm, MEAN_C)
        return float(moving_air.air_conductance(flow))

    def parts(self, frames: float) -> dict[str, float]:
        """Pieces of the loss of a nest of so many frames. [W/K]."""
        footprint = frames * self.pitch * self.length
        first, second = self.ends_of_strips()
        idle = (self.set_up.frames - frames) / 2 * self.pitch
        return {
            "faces": self.strip(idle, first) + self.strip(idle, second),
            "ends": 2 * frames * self.pitch * self.height * self.walls.wall,
            "top": self.top(footprint),
            "floor": footprint * self.walls.floor,
            "entrance": self.entrance(),
            "vent": self.vent(),
        }

    def top(self, area: float) -> float:
        """Loss upwards from a part of the plan that is as warm as the nest."""
        if not self.set_up.supers:
            return area * self.walls.cover
        return float(moving_air.in_series(area * self.walls.surface_up, self.supers_out))

    def sideways(self) -> float:
        """Loss of the space beside the nest for each metre of width. [W/(m K)]."""
        over = self.walls.cover
        if self.set_up.supers:
            over = 1 / (1 / self.walls.surface_up + self.plan / self.supers_out)
        around = self.length * (over + self.walls.floor)
        return around + 2 * self.height * self.walls.wall

    def strip(self, idle: float, end: float) -> float:
        """Loss of one face of the nest along combs without bees. [W/K]."""
        along = self.face / self.assumed.comb_resistance + self.bee_ways
        pitch = self.hive.pitch_mm / 1000
        return float(moving_air.fin_conductance(idle, along * pitch, self.sideways(), end))

    def ends_of_strips(self) -> tuple[float, float]:
        """Give the loss behind the two ends of the frames: wall, board, or empty room. [W/K]."""
        at_wall = self.face * self.walls.wall
        if self.set_up.dummy_boards == 2:
            end = self.board(self.room / 2)
            return end, end
        beside = self.board(self.room) if self.set_up.dummy_boards else self.open_room(self.room)
        return at_wall, beside

    def room_out(self, width: float) -> float:
        """Give what an empty room of this width loses to the outside. [W/K]."""
        return self.face * self.walls.wall_of_room + width * self.sideways()

    def board(self, width: float) -> float:
        """Give the loss through and past a board into a room of this width. [W/K]."""
        still = float(surfaces.air_layer_resistance(BEE_SPACE_MM, "horizontal"))
        surface = float(surfaces.inner_surface_resistance("horizontal"))
        through = self.face / (still + board_resistance(self.hive) + surface)
        past = self.bee_ways * (1 - self.assumed.board_seal)
        return float(moving_air.in_series(through + past, self.room_out(width)))

    def open_room(self, width: float) -> float:
        """Give the loss of a bare side into a room of this width. [W/K]."""
        if width * 1000 <= BEE_SPACE_MM:
            return self.face * self.walls.wall
        into = self.face / float(surfaces.inner_surface_resistance("horizontal")) + self.bee_ways
        return float(moving_air.in_series(into, self.room_out(width)))

    def entrance(self) -> float:
        """Air that changes places through the entrance. [W/K]."""
        warm = MEAN_C + AIR_OVER_OUTSIDE_K
        flow = moving_air.exchange_flow_l_per_s(
            self.set_up.entrance_mm, UNDER_FRAMES_MM, warm, MEAN_C
        )
        return float(moving_air.air_conductance(flow)) * self.assumed.vent_warmth

    def vent(self) -> float:
        """Air that rises through the stack and out of a vented top. [W/K]."""
        if self.set_up.cover != "vented":
            return 0.0
        entrance = self.set_up.entrance_mm * UNDER_FRAMES_MM / 100
        drawn = min(1.0, self.set_up.tray_open_mm / TRAY_LENGTH_MM) * (self.hive.floor == "mesh")
        inlet = entrance + drawn * self.plan * 1e4 * MESH_OPEN_SHARE
        both = moving_air.openings_in_series(vent_cm2(), inlet)
        rise = self.height + self.set_up.supers * self.super_height
        flow = moving_air.stack_flow_l_per_s(both, rise, MEAN_C + AIR_OVER_OUTSIDE_K, MEAN_C)
        return float(moving_air.air_conductance(flow)) * self.assumed.vent_warmth
