"""What a set-up loses: from the boundary of the nest through the stack to the outside.

The nest is a slab of covered frames in the middle of the frames of the box. Its top, bottom and
ends lie behind bee spaces; each of its two faces looks along combs without bees (a fin that leaks
as it goes) to the wall, to a dummy board with a room behind it, or to the bare empty room.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import lru_cache
from types import MappingProxyType

from combwright.kit.items import Hive
from combwright.simulation.enclosure.stack_geometry import Assumptions, SlabGeometry
from combwright.simulation.enclosure.walls import walls_of
from combwright.terms.data_files import parameter
from combwright.terms.errors import OutOfRangeError
from combwright.terms.set_up import SetUp

PUBLISHED_SPREAD = parameter("simulation/enclosure", "published_spread")


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


@lru_cache(maxsize=1024)  # a round asks for the same few set-ups at every colony
def slab_loss(
    hive: Hive,
    set_up: SetUp,
    *,
    wind_m_s: float = 0.0,
    assumptions: Assumptions | None = None,
) -> SlabLoss:
    """Loss of a set-up as a straight line in the frames that bees cover.

    The line joins one covered frame and all covered, so that set-ups keep their order; between
    them it is within 13 % of the curve, and within 25 % under supers.
    A set-up that fills the box is taken without a room beside it, also when it overfills it.

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
    stack = SlabGeometry(
        hive, set_up, walls_of(hive, set_up, wind_m_s), assumptions or Assumptions()
    )
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
    """Pieces of the loss of a nest of just so many frames; ``slab_loss`` is their straight line.

    Each in W/K.
    """
    if not 0 < frames_of_bees <= set_up.frames:
        raise OutOfRangeError(
            f"Bees cannot cover {frames_of_bees:g} of {set_up.frames} frames.",
            remedy="Frames of bees are those covered on both sides, halves allowed.",
        )
    walls = walls_of(hive, set_up, wind_m_s)
    return SlabGeometry(hive, set_up, walls, assumptions or Assumptions()).parts(frames_of_bees)
