"""What the good ordinary keeper does at one weekly visit, to one colony in place; compiled.

The rules of a careful keeper who obeys the limits of the advice: nothing is fed under supers, and
no honey with more than a trace of fed sugar is sold. What is done is counted in ``came``.
"""

from typing import Any, Final, NamedTuple

import numpy as np
from numpy.typing import NDArray

from combwright.simulation.columns import LAYING, QUEENLESS
from combwright.simulation.observe import AWAY_AT_NOON, SUGAR_IN_HONEY
from combwright.simulation.step.compiled import compiled
from combwright.simulation.step.queen_day import swarm_hazard
from combwright.simulation.step.room import share_above
from combwright.simulation.step.shapes import YEAR, spread
from combwright.simulation.step.warmth import adults_of
from combwright.weather.conditions import DAY, NIGHT_C

# What is counted of a roll, by lane.
CAME: Final = (
    "honey_kg",
    "sugar_kg",
    "feeds",
    "frames",
    "supers",
    "queens",
    "treatments",
    "swarms",
    "queens_lost",
    "no_swarm",
    "no_loss",
)
HONEY, SUGAR, FEEDS, FRAMES, SUPERS, QUEENS, TREATMENTS = range(7)
SWARMS, LOST, NO_SWARM, NO_LOSS = range(7, 11)
GRAMS = 1000.0  # in a kilogram


class StackTable(NamedTuple):
    """How a colony's hive may stand: frames of all boxes and of one, cells of a super, losses.

    Losses of the nest by frames and supers, [frames, supers], each in W/K.
    """

    box: float
    usual: float
    super_cells: float
    base: NDArray[np.float64]
    per_frame: NDArray[np.float64]


@compiled
def frames_of_bees(s: Any) -> float:
    """Frames covered by bees on both sides, as a keeper counts them."""
    return (adults_of(s) - AWAY_AT_NOON * s.foragers) / max(s.bees_per_frame, 1.0)


@compiled
def stores_kg(s: Any) -> float:
    """All stores as honey. [kg]."""
    return (s.ripe + s.unripe + s.super_ripe) / GRAMS / SUGAR_IN_HONEY


@compiled
def risk(s: Any, w: Any, left: float, days: float, bio: Any, came: Any) -> None:
    """Add the chance that a swarm is begun, and that a queen is lost, by what is lost with it.

    Cells that stand already count as begun; they are gone then, one way or the other.
    """
    begun = 1.0 - np.exp(-days * swarm_hazard(s, w[DAY], share_above(s, w[NIGHT_C], bio), bio))
    if s.swarm_clock > 0.0:
        begun, s.swarm_clock = 1.0, 0.0
    came[SWARMS] += came[NO_SWARM] * begun * left
    came[NO_SWARM] *= 1.0 - begun
    years = max(0.0, s.queen_age / YEAR - 1.0)
    lost = 1.0 - np.exp(-days * bio.queen_loss * (1.0 + bio.queen_ages * years))
    came[LOST] += came[NO_LOSS] * lost * left
    came[NO_LOSS] *= 1.0 - lost


@compiled
def visit(s: Any, day: float, stack: Any, rules: Any, came: Any) -> None:
    """Go through a visit: honey, room, food, mites, queen."""
    bees = frames_of_bees(s)
    if adults_of(s) < 1.0:
        return
    if day >= rules.take_from and s.supers > 0.0:
        take_honey(s, stack, rules, came)
    add_frames(s, day, bees, stack, rules, came)
    add_super(s, day, bees, stack, rules, came)
    give_food(s, day, bees, stack, rules, came)
    if rules.treat_from <= day <= rules.treat_until and s.supers == 0.0:
        treat(s, rules, came)
    if s.queen == QUEENLESS and rules.queen_from <= day <= rules.queen_until:
        give_queen(s, rules, came)


@compiled
def restack(s: Any, frames: float, supers: float, stack: Any) -> None:
    """Change the stack's frames and supers in place, and what the nest loses with them."""
    highest, most = stack.base.shape[0] - 1, stack.base.shape[1] - 1
    f, above = min(int(s.frames), highest), min(int(s.supers), most)
    g, over = min(int(frames), highest), min(int(supers), most)
    s.loss_base += stack.base[g, over] - stack.base[f, above]
    s.loss_per_frame += stack.per_frame[g, over] - stack.per_frame[f, above]
    s.drawn += (frames - s.frames) * s.cells_per_frame
    s.frames, s.supers = frames, supers
    s.excluder = 1.0 if supers > 0.0 else 0.0


@compiled
def take_honey(s: Any, stack: Any, rules: Any, came: Any) -> None:
    """Take all supers off; what holds more than a trace of fed sugar is not sold."""
    fed = s.super_syrup / max(s.super_ripe, 1.0)
    sold = 1.0 - spread(fed, 0.0, rules.trace_share)
    came[HONEY] += sold * rules.honey_out * s.super_ripe / GRAMS / SUGAR_IN_HONEY
    clear_supers(s, stack)


@compiled
def clear_supers(s: Any, stack: Any) -> None:
    """Take all supers off in place with what is in them."""
    s.super_ripe = s.super_syrup = s.super_drawn = s.super_foundation = 0.0
    restack(s, s.frames, 0.0, stack)


@compiled
def add_frames(s: Any, day: float, bees: float, stack: Any, rules: Any, came: Any) -> None:
    """Put the next frame beside covered ones."""
    room = stack.box - s.frames
    in_season = rules.frames_from <= day <= rules.frames_until
    if in_season and room >= 1.0 and bees >= s.frames - rules.frame_short:
        is_ahead = bees >= s.frames + rules.frame_short and room > 1.0
        more = min(room, 1.0 + is_ahead)
        restack(s, s.frames + more, s.supers, stack)
        came[FRAMES] += more


@compiled
def add_super(s: Any, day: float, bees: float, stack: Any, rules: Any, came: Any) -> None:
    """Put the first super over a full box ahead of the bees, the next over a half full one.

    What was fed is ripened first, so that none of it is carried up; the feeder comes off.
    """
    if stack.super_cells <= 0.0 or not rules.supers_from <= day <= rules.supers_until:
        return
    if s.supers >= 1.0:
        held = s.super_ripe / s.sugar_per_cell / max(s.super_drawn, 1.0)
        wanted = held >= rules.super_held and s.supers < rules.most_supers
    else:
        is_full = s.frames >= stack.box - 1.0 and bees >= rules.super_bees * stack.box / stack.usual
        wanted = is_full and stores_kg(s) >= rules.super_stores_kg
        wanted = wanted and s.syrup_share * s.unripe < rules.feeder_empty_g
    if wanted:
        s.super_drawn += stack.super_cells
        s.feeder = s.feeder_water = s.feeder_days = s.feeder_warmth = 0.0
        restack(s, s.frames, s.supers + 1.0, stack)
        came[SUPERS] += 1.0


@compiled
def give_food(s: Any, day: float, bees: float, stack: Any, rules: Any, came: Any) -> None:
    """Feed as the season asks; supers of a hungry colony come off first."""
    stores, full = stores_kg(s), min(1.0, s.frames / stack.usual)
    if s.supers >= 1.0:
        if stores >= rules.hungry_kg:
            return
        clear_supers(s, stack)
    if s.feeder >= rules.feeder_empty_g or day < rules.fed_from:
        return
    if rules.autumn_from <= day <= rules.autumn_until:
        short = (rules.winter_kg * full - stores) * GRAMS * SUGAR_IN_HONEY
        grams, share = min(max(short, 0.0), rules.autumn_most_g), rules.autumn_sugar
    elif stores < rules.floor_kg * full:
        grams, share = rules.portion_g * bees * rules.every * rules.syrup_sugar, rules.syrup_sugar
    else:
        return
    if grams >= rules.feeder_empty_g:
        s.feeder += grams
        s.feeder_water += grams * (1.0 / share - 1.0)
        s.feeder_days = 0.0
        came[SUGAR] += grams / GRAMS
        came[FEEDS] += 1.0


@compiled
def treat(s: Any, rules: Any, came: Any) -> None:
    """Treat against mites once in late summer."""
    if came[TREATMENTS] == 0.0 and s.treated_days == 0.0:
        s.kill_bees, s.kill_cells = rules.kill_bees, rules.kill_cells
        s.lay_brake, s.treated_days = rules.lay_brake, rules.treat_days
        came[TREATMENTS] = 1.0


@compiled
def give_queen(s: Any, rules: Any, came: Any) -> None:
    """Give a queenless colony a mated queen."""
    if adults_of(s) >= rules.queen_bees:
        s.queen, s.queen_clock, s.queen_age = LAYING, 0.0, rules.queen_days
        s.swarm_clock = s.mating_flights = 0.0
        came[QUEENS] += 1.0
