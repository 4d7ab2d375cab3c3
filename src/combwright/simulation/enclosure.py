"""What a set-up loses: from the boundary of the nest through the stack to the outside.

The nest is a slab of covered frames in the middle of the frames of the box. Its top, bottom and
ends lie behind bee spaces; each of its two faces looks along combs without bees (a fin that leaks
as it goes) to the wall, to a dummy board with a room behind it, or to the bare empty room.

Not modelled: bees that close the ways between combs, moisture, sun, and how the bee space over
the top bars feeds air sideways in detail (Mitchell 2024 finds up to 70 % more loss by it); the
last enters as a share of the bee space that air may use, which is a judgement with a wide range.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from math import ceil
from types import MappingProxyType

from combwright.kit.items import Hive
from combwright.science import heat, heat_flow
from combwright.simulation.enclosure_walls import (
    BEE_SPACE_MM,
    TRAY_LENGTH_MM,
    UNDER_FRAMES_MM,
    Walls,
    board_mm,
    board_resistance,
    vent_cm2,
    walls_of,
)
from combwright.terms.errors import OutOfRangeError
from combwright.terms.parameters import Parameter
from combwright.terms.set_up import SetUp

BEE_WAY_OPEN = Parameter(
    0.3, "share", 0.0, 1.0, "share of the bee space over the combs that air may use", "judgement"
)
BOARD_SEAL = Parameter(
    0.7, "share", 0.4, 0.95, "share of those ways that a dummy board closes", "judgement"
)
COMB_RESISTANCE = Parameter(
    0.4,
    "m² K/W",
    0.2,
    0.6,
    "one comb and its bee way: 10 mm of air 0.15; 25 mm of honey 0.05 to empty cells 0.4",
    "computed",
)
VENT_WARMTH = Parameter(
    0.5, "share", 0.2, 0.8, "excess of the air that leaves, of the nest's own", "judgement"
)
PUBLISHED_SPREAD = Parameter(
    1.0,
    "ratio",
    0.5,
    1.6,
    "wooden hives from 0.78-0.86 W/K (D. Heaf, 25 mm larch, read) to over 2.5 W/K (Mitchell 2016, "
    "doi 10.1007/s00484-015-1057-z, from its mass ratio) against our full timber National",
    "computed",
)
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
class SlabLoss:
    """Loss of a nest that covers so many frames: ``base + per frame * frames``. [W/K].

    ``parts`` are the pieces with every frame covered; ``free_volume_l`` is the room of the stack
    that no frame takes; the relative bounds are the honest spread of published conductances.
    """

    base_w_per_k: float
    per_frame_w_per_k: float
    free_volume_l: float
    parts: Mapping[str, float] = field(hash=False)
    relative_low: float = PUBLISHED_SPREAD.low
    relative_high: float = PUBLISHED_SPREAD.high

    def w_per_k(self, frames_of_bees: float) -> float:
        """Loss of a nest of so many frames. [W/K]."""
        return self.base_w_per_k + self.per_frame_w_per_k * frames_of_bees


def slab_loss(
    hive: Hive,
    set_up: SetUp,
    *,
    wind_m_s: float = 0.0,
    assumptions: Assumptions | None = None,
) -> SlabLoss:
    """Loss of a set-up as a straight line in the frames that bees cover.

    The line joins one covered frame and all covered; between them it is within 10 % of the curve.
    A set-up that fills the box is taken without a room beside it, also when it overfills it.

    Parameters
    ----------
    hive
        The hive.
    set_up
        How it stands.
    wind_m_s
        Wind at the walls. [m/s]
    assumptions
        The values that are judged.

    Returns
    -------
    SlabLoss
        The line, its pieces and its spread.

    Examples
    --------
    >>> from combwright.kit.catalogue import catalogue
    >>> loss = slab_loss(catalogue().hive("national timber"), SetUp(frames=11))
    >>> 0.78 < loss.w_per_k(11) < 2.6
    True

    """
    if set_up.frames < 1:
        raise OutOfRangeError(
            "A set-up without frames holds no nest.", remedy="Give at least one frame."
        )
    stack = _Stack(hive, set_up, walls_of(hive, set_up, wind_m_s), assumptions or Assumptions())
    few, most = min(1.0, set_up.frames / 2), float(set_up.frames)
    parts = stack.parts(most)
    slope = (sum(parts.values()) - sum(stack.parts(few).values())) / (most - few)
    return SlabLoss(
        base_w_per_k=sum(parts.values()) - slope * most,
        per_frame_w_per_k=slope,
        free_volume_l=stack.free_volume_l,
        parts=MappingProxyType(parts),
    )


def nest_parts_w_per_k(
    hive: Hive,
    set_up: SetUp,
    frames_of_bees: float,
    *,
    wind_m_s: float = 0.0,
    assumptions: Assumptions | None = None,
) -> dict[str, float]:
    """Pieces of the loss of a nest of just so many frames. [W/K]."""
    if not 0 < frames_of_bees <= set_up.frames:
        raise OutOfRangeError(
            f"Bees cannot cover {frames_of_bees:g} of {set_up.frames} frames.",
            remedy="Frames of bees are those covered on both sides, halves allowed.",
        )
    walls = walls_of(hive, set_up, wind_m_s)
    return _Stack(hive, set_up, walls, assumptions or Assumptions()).parts(frames_of_bees)


def nest_loss_w_per_k(
    hive: Hive,
    set_up: SetUp,
    frames_of_bees: float,
    *,
    wind_m_s: float = 0.0,
    assumptions: Assumptions | None = None,
) -> float:
    """Loss of a nest of just so many frames, of which ``slab_loss`` is the straight line. [W/K]."""
    parts = nest_parts_w_per_k(
        hive, set_up, frames_of_bees, wind_m_s=wind_m_s, assumptions=assumptions
    )
    return sum(parts.values())


@dataclass(frozen=True, slots=True)
class _Stack:
    """Geometry of one set-up; lengths in metres. Two brood boxes hold half the frames each."""

    hive: Hive
    set_up: SetUp
    walls: Walls
    assumed: Assumptions

    @property
    def boxes(self) -> int:
        return ceil(self.set_up.frames / self.hive.capacity)

    @property
    def length(self) -> float:
        return self.hive.inner_length_mm / 1000

    @property
    def height(self) -> float:
        return self.boxes * self.hive.inner_depth_mm / 1000

    @property
    def pitch(self) -> float:
        return self.hive.pitch_mm / 1000 / self.boxes

    @property
    def face(self) -> float:
        return self.length * self.height

    @property
    def room(self) -> float:
        """Width that neither frames nor boards take."""
        board = board_mm() / 1000 * self.set_up.dummy_boards
        return max(0.0, self.hive.inner_width_mm / 1000 - self.set_up.frames * self.pitch - board)

    @property
    def plan(self) -> float:
        return self.hive.inner_width_mm / 1000 * self.length

    @property
    def free_volume_l(self) -> float:
        supers = self.set_up.supers * self.super_height * self.plan
        return 1000 * (self.room * self.face + supers)

    @property
    def super_height(self) -> float:
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
        flow = heat_flow.stack_flow_l_per_s(area_cm2, self.height, warm, MEAN_C)
        return float(heat_flow.air_conductance(flow))

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
        return float(heat_flow.in_series(area * self.walls.surface_up, self.supers_out))

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
        return float(heat_flow.fin_conductance(idle, along * pitch, self.sideways(), end))

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
        still = float(heat.air_layer_resistance(BEE_SPACE_MM, "horizontal"))
        surface = float(heat.inner_surface_resistance("horizontal"))
        through = self.face / (still + board_resistance() + surface)
        past = self.bee_ways * (1 - self.assumed.board_seal)
        return float(heat_flow.in_series(through + past, self.room_out(width)))

    def open_room(self, width: float) -> float:
        if width * 1000 <= BEE_SPACE_MM:
            return self.face * self.walls.wall
        into = self.face / float(heat.inner_surface_resistance("horizontal")) + self.bee_ways
        return float(heat_flow.in_series(into, self.room_out(width)))

    def entrance(self) -> float:
        """Air that changes places through the entrance. [W/K]."""
        warm = MEAN_C + AIR_OVER_OUTSIDE_K
        flow = heat_flow.exchange_flow_l_per_s(
            self.set_up.entrance_mm, UNDER_FRAMES_MM, warm, MEAN_C
        )
        return float(heat_flow.air_conductance(flow)) * self.assumed.vent_warmth

    def vent(self) -> float:
        """Air that rises through the stack and out of a vented top. [W/K]."""
        if self.set_up.cover != "vented":
            return 0.0
        entrance = self.set_up.entrance_mm * UNDER_FRAMES_MM / 100
        drawn = min(1.0, self.set_up.tray_open_mm / TRAY_LENGTH_MM) * (self.hive.floor == "mesh")
        inlet = entrance + drawn * self.plan * 1e4 * MESH_OPEN_SHARE
        both = heat_flow.openings_in_series(vent_cm2(), inlet)
        rise = self.height + self.set_up.supers * self.super_height
        flow = heat_flow.stack_flow_l_per_s(both, rise, MEAN_C + AIR_OVER_OUTSIDE_K, MEAN_C)
        return float(heat_flow.air_conductance(flow)) * self.assumed.vent_warmth
