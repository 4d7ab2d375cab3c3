"""Nucs and surplus brood: what a colony can give without missing its aim, and who needs help."""

from datetime import timedelta
from typing import Any, Final

from combwright.advice.bee_acts import EggFrame, Give, TakeIn
from combwright.advice.deciding import Deciding
from combwright.advice.decision import Decision
from combwright.advice.decisions import food, queen
from combwright.advice.decisions.going import goes
from combwright.advice.decisions.honey import after_honey
from combwright.advice.decisions.kept_shut import nothing_moves
from combwright.advice.lately import nucs_of
from combwright.advice.nuc_worth import NucMade, nuc_made
from combwright.advice.numbers import is_in_season, numbers
from combwright.advice.season_ahead import Effect
from combwright.advice.situation import Situation
from combwright.advice.trial import try_all
from combwright.advice.weighing import gain, weigh
from combwright.advice.words.money_words import money_words
from combwright.advice.words.wording import chance_words, count_words, day_words
from combwright.belief.following.acting import BROOD_FRAME_FULL
from combwright.simulation import observe
from combwright.simulation.hands.dividing import split
from combwright.simulation.observe import FULL_BROOD_SHARE
from combwright.terms.ranked import quantile

PARAMETERS: Final = numbers("nucs")
MOST: Final = int(PARAMETERS["most"].value)


HELP_SEASON: Final = (PARAMETERS["help_from"].value, PARAMETERS["help_to"].value)
WEAK: Final = (PARAMETERS["weak_from"].value, PARAMETERS["weak_to"].value)
CAREFUL: Final = PARAMETERS["careful"].value
SALEABLE_DAYS: Final = (PARAMETERS["saleable_from"].value, PARAMETERS["saleable_to"].value)


def decide(deciding: Deciding) -> Decision:
    """Tell how many frames of brood a colony can give today, or whether one would help it."""
    is_queenless = bool(deciding.of(queen.decide).asks(EggFrame))
    if nothing_moves(deciding) or goes(deciding) or is_queenless:
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
    takings = [_taking(situation, frames) for frames in range(most + 1)]
    works = [(Give(frames_of_brood=frames),) if frames else () for frames in range(most + 1)]
    seasons = weigh(situation, takings, works)
    made = nuc_made(situation.on, situation.prices)
    gains = [gain(each, seasons[0]) for each in seasons]
    nucs = [nucs_of(work) for work in works]
    worth = [each + made.brings * part for part, each in zip(nucs, gains, strict=True)]
    can = max(range(most + 1), key=lambda frames: worth[frames].money)
    if not worth[can].is_worth_it:
        return Decision(topic="nucs", inputs=inputs)
    inputs |= {
        "frames_to_give": float(can),
        "worth_more": worth[can].money,
        "lost": -gains[can].money,
    }
    because = (
        f"{brood:.1f} frames of brood and {bees:.1f} of bees at the careful end. Giving {can} "
        f"costs {money_words(-gains[can].money)} of its season; for a nuc with "
        f"{_queen_words(situation, made)} they are worth "
        f"{money_words(made.brings * nucs[can])}: {money_words(worth[can].money)} more."
    )
    gives = (Give(frames_of_brood=can, queen=made.queen),)
    return Decision(topic="nucs", actions=gives, because=(because,), inputs=inputs)


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
