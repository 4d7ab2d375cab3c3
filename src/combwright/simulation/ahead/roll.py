"""The season ahead of many colonies: week by week under the good ordinary keeper.

Rare things are not drawn: the chance of a swarm and of a lost queen is gathered along each
member's life, each weighed by the share of the season that would be lost with it.
"""

from dataclasses import dataclass
from functools import lru_cache
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from combwright.kit.items import Hive
from combwright.simulation.ahead.rules import PARAMETERS, RULES
from combwright.simulation.ahead.visit import CAME, StackTable, risk, visit
from combwright.simulation.biology import BIOLOGY, Biology, as_table
from combwright.simulation.columns import LAYING, STATE
from combwright.simulation.enclosure.loss import slab_loss
from combwright.simulation.luck import MATED, QUEEN_LOST, ROBBED, SWARM_LEAVES, SWARM_STARTS
from combwright.simulation.run import days_lived, refuse_broken, run
from combwright.simulation.step.balances import totals
from combwright.simulation.step.compiled import compiled
from combwright.simulation.step.day import one_day
from combwright.simulation.step.frames import brood_cells_of, stack_of
from combwright.terms.set_up import Cover, SetUp
from combwright.weather.conditions import DAY, FLIGHT, NECTAR

Floats = NDArray[np.float64]
EVERY_DAYS: Final = int(PARAMETERS["every"].value)
MOST_SUPERS: Final = int(PARAMETERS["most_supers"].value)
LATE_SHARE: Final = PARAMETERS["late_share"].value
# Rare things are priced, not drawn: no swarm begins, no queen is lost or fails to mate, none rob.
UNDRAWN: Final = {SWARM_STARTS: 1.0, SWARM_LEAVES: 1.0, QUEEN_LOST: 0.5, MATED: 1.0, ROBBED: 1.0}


@dataclass(frozen=True)
class DaysAhead:
    """The days of some members, and what of the season is still to come, each [member, day]."""

    days: NDArray[np.void]
    left: Floats

    def of(self, part: slice) -> "DaysAhead":
        """Give those of a part of the members."""
        return DaysAhead(self.days[part], self.left[part])


def days_ahead(
    conditions: Floats,
    luck: Floats,
    world_of: Floats,
    worlds: tuple[Biology, ...] = (BIOLOGY,),
) -> DaysAhead:
    """Work out the days ahead of members, once for all that is tried on them.

    Member ``i`` lives in scenario ``i`` of the conditions, [scenario, day, column], has the luck of
    [member, day, process], from ``without_the_rare``, and lives in the world named for it.
    """
    return DaysAhead(days_lived(conditions, luck, world_of, worlds), still_to_come(conditions))


def live_on(
    colonies: NDArray[np.void],
    ahead: DaysAhead,
    *,
    stack: StackTable,
    first_visit: int | NDArray[np.intp],
    nucs: Floats | None = None,
    rests: Floats | float = 0.0,
    treated: Floats | float = 0.0,
    worlds: tuple[Biology, ...] = (BIOLOGY,),
) -> Floats:
    """Let colonies live on in place to the end of the days ahead; count what came, [lane, CAME].

    Lane ``i`` lives the days of member ``i % members``, in whose world it must be.
    ``stack`` is from ``stack_table``; ``first_visit`` is its day, or that of each lane. ``nucs`` is
    what a nuc brings that is made on a day, and the share of keepers who would make one, [day, 2];
    none are made without. ``rests`` is the share of its rest that a donor still has before it,
    ``treated`` whether it was treated, [lane].
    """
    came = np.zeros((len(colonies), len(CAME)))
    came[:, [CAME.index("no_swarm"), CAME.index("no_loss")]] = 1.0
    came[:, CAME.index("nucs_lately")] = came[:, CAME.index("nucs")] = rests
    came[:, CAME.index("treatments")] = treated
    broken: Any = live_season(
        colonies,
        ahead.days,
        ahead.left,
        np.zeros((ahead.days.shape[1], 2)) if nucs is None else nucs,
        np.full(len(colonies), first_visit),
        EVERY_DAYS,
        stack,
        RULES,
        as_table(*worlds),
        came,
    )
    refuse_broken(broken)
    return came


@compiled
def live_season(
    colonies: Any,
    lived: Any,
    left: Any,
    nucs: Any,
    first_visit: Any,
    every: int,
    stack: Any,
    rules: Any,
    bio: Any,
    came: Any,
) -> int:
    """Let every colony live to the end of their days in place, visited from the first visit on.

    Gives 0, or the number of a broken balance plus 10 times the lane, as ``step.day.live`` does.
    """
    days = lived.shape[1]
    for lane in range(colonies.shape[0]):
        s, place = colonies[lane], lane % lived.shape[0]
        world = int(s.world) if s.world < len(bio) else 0
        come, carried, held = 0, 0.0, totals(s)
        for day in range(days):
            today = lived[place, day]
            if day == come:
                come = min(days, day + (every if day else first_visit[lane]))
                if day == first_visit[lane]:
                    carried = s.super_syrup
                if day:  # no keeper who has a super on has fed since
                    s.super_syrup = min(s.super_syrup, carried)
                    visit(s, today.day, nucs[day], stack, rules[0], came[lane])
                    held = totals(s)
                if s.queen == LAYING:
                    risk(
                        s, today, left[place, day], float(come - day), bio[world], stack, came[lane]
                    )
            broken, held = one_day(s, today, held, bio[world])
            if broken != 0:
                return broken + 10 * lane
    return 0


def make_ready() -> None:
    """Load what is compiled; after an update it is compiled first, in some ten seconds."""
    none = StackTable(1.0, 1.0, 0.0, np.zeros((3, 1)), np.zeros((3, 1)))
    nobody, day = np.zeros(0, STATE), np.zeros((1, 1, DAY + 1))
    run(nobody, day, np.zeros((1, 1, 1)))
    stack_of(nobody, 0.0, 0.0, 0.0, 0.0, False)  # noqa: FBT003 (the kernel takes no names)
    brood_cells_of(nobody, np.zeros(0), np.zeros(0))
    live_on(
        nobody, days_ahead(day, np.zeros((0, 1, 1)), nobody["world"]), stack=none, first_visit=1
    )


def without_the_rare(luck: Floats) -> Floats:
    """Give the luck of a season ahead: what is rare never happens of itself."""
    calm = luck.copy()
    for process, value in UNDRAWN.items():
        calm[:, :, process] = value
    return calm


def still_to_come(conditions: Floats) -> Floats:
    """Share of what a colony can bring that is still to come, [scenario, day]; 1 at first.

    By the flow that is left, and a part that stays to the end: the bees of the winter.
    """
    flow = conditions[:, :, NECTAR] * conditions[:, :, FLIGHT]
    ahead = flow[:, ::-1].cumsum(axis=1)[:, ::-1]
    return np.asarray(LATE_SHARE + (1.0 - LATE_SHARE) * ahead / np.maximum(ahead[:, :1], 1e-9))


@lru_cache(maxsize=64)
def stack_table(hive: Hive, brood_boxes: int, cover: Cover) -> StackTable:
    """Give what the nest loses on each number of frames, under each number of supers."""
    box, above = hive.frames * brood_boxes, hive.honey_super
    supers = MOST_SUPERS + 1 if above is not None else 1
    base, per_frame = np.zeros((2, box + 2, supers))
    plain = SetUp(hive=hive.key, frames=1, brood_boxes=brood_boxes, cover=cover)
    for frames in range(1, box + 2):
        for on in range(supers):
            stood = {"frames": frames, "supers": on, "excluder": on > 0}
            loss = slab_loss(hive, plain.model_copy(update=stood))
            base[frames, on], per_frame[frames, on] = loss.base_w_per_k, loss.per_frame_w_per_k
    cells = above.frames * above.frame.worker_cells if above is not None else 0
    return StackTable(float(box), float(hive.frames), float(cells), base, per_frame)
