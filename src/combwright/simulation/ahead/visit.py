"""What the good ordinary keeper does at one weekly visit, to one colony in place; compiled.

The rules of a careful keeper who obeys the limits of the advice: nothing is fed under supers, and
no honey with more than a trace of fed sugar is sold. What is done is counted in ``came``.

The keeper stands for many, who judge a little differently: near a rule's mark some have done it
and others not yet, so that frames, supers and feeds come in parts. With a step in its place a few
grams would tip a whole super, and every difference of two candidates would drown in that.
"""

from typing import Any, Final, NamedTuple

import numpy as np
from numpy.typing import NDArray

from combwright.simulation.columns import LAYING, QUEENLESS
from combwright.simulation.observe import AWAY_AT_NOON, SUGAR_IN_HONEY
from combwright.simulation.step.balances import mites_of
from combwright.simulation.step.compiled import compiled
from combwright.simulation.step.queen_day import swarm_hazard
from combwright.simulation.step.room import share_above
from combwright.simulation.step.shapes import YEAR, between, spread
from combwright.simulation.step.warmth import adults_of, brood_of

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
    "nucs",
    "nuc_money",
    "nucs_lately",
)
HONEY, SUGAR, FEEDS, FRAMES, SUPERS, QUEENS, TREATMENTS = range(7)
SWARMS, LOST, NO_SWARM, NO_LOSS, NUCS, NUC_MONEY, LATELY = range(7, 14)
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
def share_done(value: float, mark: float, about: float) -> float:
    """Share of keepers who have passed a mark that they place up to so much below or above it."""
    return spread(value, mark - about, mark + about)


@compiled
def supers_on(s: Any, stack: Any) -> float:
    """Supers on the hive, by their comb: a part where only some keepers have put one on."""
    return (s.super_drawn + s.super_foundation) / max(stack.super_cells, 1.0)


@compiled
def risk(s: Any, today: Any, left: float, days: float, bio: Any, stack: Any, came: Any) -> None:
    """Add the chance that a swarm is begun, and that a queen is lost, by what is lost with it.

    Cells that stand already count as begun; they are gone then, one way or the other.
    """
    whole, s.supers = s.supers, min(s.supers, supers_on(s, stack))
    hazard = swarm_hazard(s, today.day, share_above(s, today, bio), bio)
    s.supers = whole
    begun = 1.0 - np.exp(-days * hazard)
    if s.swarm_clock > 0.0:
        begun, s.swarm_clock = 1.0, 0.0
    came[SWARMS] += came[NO_SWARM] * begun * left
    came[NO_SWARM] *= 1.0 - begun
    years = max(0.0, s.queen_age / YEAR - 1.0)
    lost = 1.0 - np.exp(-days * bio.queen_loss * (1.0 + bio.queen_ages * years))
    came[LOST] += came[NO_LOSS] * lost * left
    came[NO_LOSS] *= 1.0 - lost


@compiled
def visit(s: Any, day: float, nuc: Any, stack: Any, rules: Any, came: Any) -> None:
    """Go through a visit: honey, nucs, room, food, mites, queen.

    ``nuc`` is what a nuc brings today, and the share of keepers who would make one for that.
    """
    if adults_of(s) < 1.0:
        return
    make_nuc(s, nuc, rules, came)
    bees = frames_of_bees(s)
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
def loss_at(table: Any, frames: float, supers: float) -> float:
    """Read a table of losses, [frames, supers], between its whole numbers."""
    f = min(int(frames), table.shape[0] - 2)
    above = min(int(supers), max(0, table.shape[1] - 2))
    more, part = min(1.0, frames - f), min(1.0, supers - above)
    higher = min(above + 1, table.shape[1] - 1)
    low = between(table[f, above], table[f + 1, above], more)
    return between(low, between(table[f, higher], table[f + 1, higher], more), part)


@compiled
def make_nuc(s: Any, nuc: Any, rules: Any, came: Any) -> None:
    """Make part of a nuc from a strong colony; a donor recovers before it gives again."""
    came[LATELY] = max(0.0, came[LATELY] - rules.every / rules.nuc_rest)
    if nuc[1] <= 0.0 or s.queen != LAYING:
        return
    part = nuc[1] * share_done(frames_of_bees(s), rules.nuc_from_bees, rules.bees_about)
    part *= share_done(s.sealed.sum(), rules.nuc_from_sealed * s.cells_per_frame, s.cells_per_frame)
    part = min(part, 1.0 - came[LATELY], rules.nuc_most - came[NUCS])
    if part <= 0.0:
        return
    bees = min(part * rules.nuc_bees * s.bees_per_frame / max(adults_of(s), 1.0), 1.0)
    brood = min(part * rules.nuc_brood * s.cells_per_frame / max(brood_of(s), 1.0), 1.0)
    s.nest *= 1.0 - bees
    s.winter *= 1.0 - bees
    s.mites *= 1.0 - bees
    s.foragers *= 1.0 - 0.5 * bees  # the others fly home
    s.eggs[:] *= 1.0 - brood
    s.larvae[:] *= 1.0 - brood
    s.sealed[:] *= 1.0 - brood
    s.mites_worker[:] *= 1.0 - brood
    s.ripe -= min(0.95 * s.ripe, part * rules.nuc_stores * s.cells_per_frame * s.sugar_per_cell)
    came[NUCS] += part
    came[NUC_MONEY] += part * nuc[0]
    came[LATELY] += part


@compiled
def restack(s: Any, frames: float, supers: float, stack: Any) -> None:
    """Change the stack's frames and supers in place, and what the nest loses with them."""
    now = supers_on(s, stack)
    s.loss_base += loss_at(stack.base, frames, supers) - loss_at(stack.base, s.frames, now)
    s.loss_per_frame += loss_at(stack.per_frame, frames, supers)
    s.loss_per_frame -= loss_at(stack.per_frame, s.frames, now)
    s.drawn += (frames - s.frames) * s.cells_per_frame
    if supers < now:
        s.super_ripe *= supers / now
        s.super_syrup *= supers / now
        s.super_foundation *= supers / now
        s.super_drawn *= supers / now
    else:
        s.super_drawn += (supers - now) * stack.super_cells
    s.frames, s.supers = frames, max(1.0, supers) if supers > 0.0 else 0.0
    s.excluder = 1.0 if supers > 0.0 else 0.0


@compiled
def take_honey(s: Any, stack: Any, rules: Any, came: Any) -> None:
    """Take all supers off; what holds more than a trace of fed sugar is not sold."""
    fed = s.super_syrup / max(s.super_ripe, 1.0)
    sold = 1.0 - spread(fed, 0.0, rules.trace_share)
    came[HONEY] += sold * rules.honey_out * s.super_ripe / GRAMS / SUGAR_IN_HONEY
    restack(s, s.frames, 0.0, stack)


@compiled
def add_frames(s: Any, day: float, bees: float, stack: Any, rules: Any, came: Any) -> None:
    """Put the next frames beside covered ones, two at most."""
    in_season = rules.frames_from <= day <= rules.frames_until
    wanted = bees + rules.frame_short - s.frames + 0.5
    more = min(wanted, 2.0, stack.box - s.frames)
    if in_season and more > 0.0:
        restack(s, s.frames + more, supers_on(s, stack), stack)
        came[FRAMES] += more


@compiled
def add_super(s: Any, day: float, bees: float, stack: Any, rules: Any, came: Any) -> None:
    """Put the first super over a full box ahead of the bees, the next over a half full one.

    What was fed is ripened first, so that none of it is carried up; the feeder comes off.
    """
    if stack.super_cells <= 0.0 or not rules.supers_from <= day <= rules.supers_until:
        return
    now = supers_on(s, stack)
    first = share_done(s.frames, stack.box - 1.0, 0.5)
    first *= share_done(bees, rules.super_bees * stack.box / stack.usual, rules.bees_about)
    first *= share_done(stores_kg(s), rules.super_stores_kg, rules.stores_about)
    fed = s.syrup_share * s.unripe
    first *= 1.0 - share_done(fed, rules.feeder_empty_g, rules.feeder_empty_g)
    held = s.super_ripe / s.sugar_per_cell / stack.super_cells
    following = min(rules.most_supers, 0.5 * min(1.0, now) + held / rules.super_held)
    wanted = max(first, following)
    if wanted > now:
        s.feeder *= 1.0 - (wanted - now)
        s.feeder_water *= 1.0 - (wanted - now)
        came[SUPERS] += wanted - now
        restack(s, s.frames, wanted, stack)


@compiled
def give_food(s: Any, day: float, bees: float, stack: Any, rules: Any, came: Any) -> None:
    """Feed as the season asks; supers of a hungry colony come off first."""
    stores = stores_kg(s)
    if s.supers > 0.0:
        stays = share_done(stores, rules.hungry_kg, rules.stores_about)
        restack(s, s.frames, stays * supers_on(s, stack), stack)
    if day < rules.fed_from:
        return
    if rules.autumn_from <= day <= rules.autumn_until:
        wanted, most = rules.winter_kg + rules.winter_kg_a_frame * bees, rules.autumn_most_g
        share = rules.autumn_sugar
    else:
        wanted = rules.floor_kg * min(1.0, bees / stack.usual)
        most = rules.portion_g * bees * rules.every * rules.syrup_sugar
        share = rules.syrup_sugar
    short = (wanted - stores) * GRAMS * SUGAR_IN_HONEY - s.feeder
    grams = min(max(short, 0.0), most)
    grams *= 1.0 - min(1.0, supers_on(s, stack))  # who has supers on does not feed
    if grams > 0.0:
        s.feeder += grams
        s.feeder_water += grams * (1.0 / share - 1.0)
        s.feeder_days = 0.0
        came[SUGAR] += grams / GRAMS
        came[FEEDS] += spread(grams, 0.0, rules.feeder_empty_g)


@compiled
def treat(s: Any, rules: Any, came: Any) -> None:
    """Treat against mites once in late summer, where there are enough of them."""
    if came[TREATMENTS] == 0.0 and s.treated_days == 0.0:
        part = share_done(mites_of(s), rules.treat_mites, rules.treat_mites)
        s.kill_bees, s.kill_cells = part * rules.kill_bees, part * rules.kill_cells
        s.lay_brake, s.treated_days = part * rules.lay_brake, rules.treat_days
        came[TREATMENTS] = part


@compiled
def give_queen(s: Any, rules: Any, came: Any) -> None:
    """Give a queenless colony a mated queen."""
    if adults_of(s) >= rules.queen_bees:
        s.queen, s.queen_clock, s.queen_age = LAYING, 0.0, rules.queen_days
        s.swarm_clock = s.mating_flights = 0.0
        came[QUEENS] += 1.0
