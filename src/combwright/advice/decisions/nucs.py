"""Nucs and surplus brood: what a colony can give without missing its aim, and who needs help."""

from dataclasses import dataclass
from datetime import timedelta
from typing import Any, Final

from combwright.advice.actions import Action
from combwright.advice.bee_acts import Divide, EggFrame, Give, Requeen, TakeIn
from combwright.advice.deciding import Deciding
from combwright.advice.decision import Decision
from combwright.advice.decisions import food, queen, swarm
from combwright.advice.decisions.going import goes
from combwright.advice.decisions.honey import after_honey
from combwright.advice.decisions.kept_shut import nothing_moves
from combwright.advice.decisions.successor import to_be_had, unqueened
from combwright.advice.decisions.swarm import nucleus_plan
from combwright.advice.lately import nucs_of
from combwright.advice.nuc_worth import NucMade, nuc_made, nuc_with_her
from combwright.advice.numbers import is_in_season, numbers
from combwright.advice.season_ahead import Done, Effect
from combwright.advice.situation import Situation
from combwright.advice.trial import PARAMETERS as TRIAL
from combwright.advice.trial import doing, try_all
from combwright.advice.weighing import gain, weigh
from combwright.advice.words.money_words import money_words
from combwright.advice.words.wording import chance_words, count_words, day_words
from combwright.belief.following.acting import BROOD_FRAME_FULL
from combwright.simulation import observe
from combwright.simulation.columns import copied
from combwright.simulation.hands.dividing import split
from combwright.simulation.observe import FULL_BROOD_SHARE
from combwright.simulation.step.shapes import YEAR
from combwright.terms.ranked import median, quantile

PARAMETERS: Final = numbers("nucs")
MOST: Final = int(PARAMETERS["most"].value)


HELP_SEASON: Final = (PARAMETERS["help_from"].value, PARAMETERS["help_to"].value)
WEAK: Final = (PARAMETERS["weak_from"].value, PARAMETERS["weak_to"].value)
CAREFUL: Final = PARAMETERS["careful"].value
SALEABLE_DAYS: Final = (PARAMETERS["saleable_from"].value, PARAMETERS["saleable_to"].value)


def decide(deciding: Deciding) -> Decision:
    """Tell how many frames of brood a colony can give today, or whether one would help it."""
    is_queenless = bool(deciding.of(queen.decide).asks(EggFrame))
    divides = bool(deciding.of(swarm.decide).asks(Divide))
    if nothing_moves(deciding) or goes(deciding) or is_queenless or divides:
        return Decision(topic="nucs")
    situation = deciding.of(after_honey)
    unfed = deciding.of(food.decide)
    is_hungry = unfed.without.chances["hunger"] > PARAMETERS["hungry_chance"].value
    is_short = unfed.inputs["stores_kg"] < unfed.inputs["reserve_kg"]
    return _nucs(situation, is_hungry=is_hungry or is_short)


def _nucs(situation: Situation, *, is_hungry: bool) -> Decision:
    """Give so many frames as bring most: the nucs they make against the season without them.

    A colony that must be fed against hunger gives none: what it has left of stores goes with them.
    """
    bees = quantile(situation.frames_of_bees, CAREFUL)[0]
    brood = quantile(observe.frames_of_brood(situation.colonies), CAREFUL)[0]
    inputs = {"frames_of_bees_safe": bees, "frames_of_brood_safe": brood}
    spare_bees = (bees - PARAMETERS["keeps_bees"].value) / PARAMETERS["bees_a_frame"].value
    most = min(MOST, int(min(spare_bees, brood - PARAMETERS["keeps_brood"].value)))
    in_season = is_in_season(situation.on, PARAMETERS, "season")
    if not in_season or is_hungry or most < 1:
        return _helped(situation, inputs)
    made = nuc_made(situation.on, situation.prices)
    ways = [_Way((), lambda _: None)]
    ways += [_given(situation, frames, made) for frames in range(1, most + 1)]
    ways += [_parted(situation)] if _may_part(situation, bees, brood) else []
    seasons = weigh(
        situation,
        [way.change for way in ways],
        [way.costs for way in ways],
        done=[Done(nuc=way.nucs) for way in ways],
        besides=[way.brings for way in ways],
    )
    worth = [gain(each, seasons[0]) for each in seasons]
    best = max(range(len(ways)), key=lambda i: worth[i].money)
    if not worth[best].is_worth_it:
        return Decision(topic="nucs", inputs=inputs)
    way = ways[best]
    lost = way.brings - worth[best].money
    inputs |= {"frames_to_give": way.frames, "worth_more": worth[best].money, "lost": lost}
    because = (
        f"{brood:.1f} frames of brood and {bees:.1f} of bees at the careful end. {way.gives} "
        f"costs {money_words(lost)} of its season; for a nuc with {way.queen} they "
        f"are worth {money_words(way.brings)}: {money_words(worth[best].money)} more."
    )
    return Decision(topic="nucs", actions=way.actions, because=(because,), inputs=inputs)


@dataclass(frozen=True)
class _Way:
    """One way to make a nuc, or none: what is done, to the donor too, what it costs and brings."""

    actions: tuple[Action, ...]
    change: Effect
    costs: tuple[Action, ...] = ()
    frames: float = 0.0
    nucs: float = 0.0
    brings: float = 0.0
    gives: str = ""
    queen: str = ""


def _given(situation: Situation, frames: int, made: NucMade) -> _Way:
    """Frames of brood with bees, to which a queen or a cell is given."""
    gives = (Give(frames_of_brood=frames, queen=made.queen),)
    nucs = nucs_of(gives)
    return _Way(
        gives,
        _taking(situation, frames),
        frames=float(frames),
        nucs=nucs,
        brings=made.brings * nucs,
        gives=f"Giving {frames}",
        queen=_queen_words(situation, made),
    )


def _parted(situation: Situation) -> _Way:
    """Give the way in which the queen goes with a frame of brood, and a mated one takes her place.

    What the bees that fly home leave of the nuc is sold.
    """
    on, prices = situation.on, situation.prices
    parts = nucleus_plan(on, "mated queen", way="on purpose")
    change = doing(situation, parts)
    years = median(situation.colonies["queen_age"]) / YEAR
    brings = _size(situation, change) * nuc_with_her(on, prices, years)
    ready = on + timedelta(days=PARAMETERS["with_queen_days"].value)
    return _Way(
        parts,
        change,
        costs=(Requeen(),),
        frames=1.0,
        nucs=1.0,
        brings=brings - unqueened(situation, "mated queen"),
        gives="Giving its queen and a frame of brood with their bees for a young queen",
        queen=f"the one that lays, for sale about {day_words(ready)},",
    )


def _size(situation: Situation, change: Effect) -> float:
    """Give the share of a nuc's bees that stay with it."""
    left = copied(situation.colonies)
    change(left)
    taken = (observe.adults(situation.colonies) - observe.adults(left)) / left["bees_per_frame"]
    return min(1.0, float(taken.mean()) / TRIAL["nuc_bees"].value)


def _may_part(situation: Situation, bees: float, brood: float) -> bool:
    """Tell whether its queen can go: she surely lays, one is to be had, enough stays without."""
    is_there = situation.laying >= PARAMETERS["sure_of_her"].value
    is_there &= to_be_had(situation.on) == "mated queen"
    spare = bees - TRIAL["nuc_bees"].value >= PARAMETERS["keeps_bees"].value
    return (
        is_there and spare and brood - TRIAL["nuc_brood"].value >= PARAMETERS["keeps_brood"].value
    )


def _queen_words(situation: Situation, made: NucMade) -> str:
    """Name the queen that goes with a nuc, and when it is ready for sale."""
    if made.queen == "mated queen":
        ready = situation.on + timedelta(days=PARAMETERS["with_queen_days"].value)
        return f"a mated queen, for sale about {day_words(ready)},"
    ready, latest = (situation.on + timedelta(days=days) for days in SALEABLE_DAYS)
    return f"a ripe cell, for sale about {day_words(ready)} to {day_words(latest)} if she mates,"


def _helped(situation: Situation, inputs: dict[str, float]) -> Decision:
    """Tell whether a weak colony with a queen is helped by a frame of sealed brood."""
    first, last = HELP_SEASON
    in_season = first <= situation.on.timetuple().tm_yday <= last
    is_weak = WEAK[0] <= situation.bees <= WEAK[1] and situation.standing.hive.kind == "hive"
    if not in_season or not is_weak or situation.laying < PARAMETERS["sure_of_her"].value:
        return Decision(topic="nucs", inputs=inputs)
    without, with_one = try_all(situation, [_taking(situation, 0), _taking_in])
    limits, chances = situation.limits, with_one.chances
    covers = chances["chilled"] <= max(limits.chilled, without.chances["chilled"])
    has_room = chances["no room"] <= max(limits.no_room, without.chances["no room"])
    inputs = inputs | {
        "frames_of_bees": situation.bees,
        "chilled_without": without.chances["chilled"],
        "chilled_with": chances["chilled"],
        "gained_by_help": with_one.bees - without.bees,
    }
    if not (covers and has_room):
        return Decision(topic="nucs", inputs=inputs)
    because = (
        f"{situation.bees:.1f} frames of bees with a laying queen keep one frame more warm (chance "
        f"that brood is chilled {chance_words(chances['chilled'])}): about "
        f"{count_words(inputs['gained_by_help'])} bees and brood more by "
        f"{day_words(situation.planned_until)}. A colony without a laying queen is united instead."
    )
    return Decision(topic="nucs", actions=(TakeIn(),), because=(because,), inputs=inputs)


def _taking_in(colonies: Any) -> None:
    cells = BROOD_FRAME_FULL * FULL_BROOD_SHARE * colonies["cells_per_frame"]
    colonies["sealed"] += (cells / colonies["sealed"].shape[1])[:, None]


def _taking(situation: Situation, frames: int) -> Effect:
    """Take frames of brood with bees and stores for a nuc."""
    standing = situation.standing

    def change(colonies: Any) -> None:
        split(
            colonies,
            standing.hive,
            standing.set_up,
            frames_of_bees=PARAMETERS["bees_a_frame"].value * frames,
            frames_of_brood=float(frames),
            frames_of_stores=PARAMETERS["stores_a_frame"].value * frames,
            goes_with="nothing",
        )

    return change
