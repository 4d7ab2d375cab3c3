"""Nucs and surplus brood: what a colony can give without missing its aim, and who needs help."""

from dataclasses import dataclass
from datetime import timedelta
from typing import Any, Final

import numpy as np

from combwright.advice.bee_acts import EggFrame, Give, TakeIn
from combwright.advice.deciding import Deciding
from combwright.advice.decision import Decision
from combwright.advice.decisions import queen
from combwright.advice.decisions.going import goes
from combwright.advice.decisions.honey import after_honey
from combwright.advice.decisions.kept_shut import nothing_moves
from combwright.advice.numbers import is_in_season, numbers
from combwright.advice.situation import Situation
from combwright.advice.trial import Change, try_all
from combwright.advice.words.wording import chance_words, count_words, day_words
from combwright.belief.following.acting import BROOD_FRAME_FULL
from combwright.simulation import observe
from combwright.simulation.columns import LAYING
from combwright.simulation.observe import FULL_BROOD_SHARE
from combwright.terms.entries import Split

PARAMETERS: Final = numbers("nucs")
MOST: Final = int(PARAMETERS["most"].value)


@dataclass(frozen=True)
class Terms:
    """What a donor must have, at the careful end, and what giving may cost it; judgement."""

    frames_of_brood: float
    frames_of_bees: float
    cost: float


# Brood that is sealed before the main flow makes its foragers; what is sealed later does not
# (an egg becomes a forager in about 42 days), so that it can be given more freely.
MAIN_FLOW: Final = PARAMETERS["main_flow"].value
BEFORE: Final = Terms(*(PARAMETERS[name].value for name in ("brood_before", "bees_before", "cost")))
AFTER: Final = Terms(*(PARAMETERS[name].value for name in ("brood_after", "bees_after", "cost")))
HELP_SEASON: Final = (PARAMETERS["help_from"].value, MAIN_FLOW)
WEAK: Final = (PARAMETERS["weak_from"].value, PARAMETERS["weak_to"].value)
CAREFUL: Final = PARAMETERS["careful"].value
SALEABLE_DAYS: Final = (PARAMETERS["saleable_from"].value, PARAMETERS["saleable_to"].value)


def decide(deciding: Deciding) -> Decision:
    """Tell how many frames of brood a colony can give today, or whether one would help it."""
    is_queenless = bool(deciding.of(queen.decide).asks(EggFrame))
    if nothing_moves(deciding) or goes(deciding) or is_queenless:
        return Decision(topic="nucs")
    return _nucs(deciding.of(after_honey))


def _nucs(situation: Situation) -> Decision:
    day = situation.on.timetuple().tm_yday
    bees = float(np.quantile(situation.frames_of_bees, CAREFUL))
    brood = float(np.quantile(observe.frames_of_brood(situation.colonies), CAREFUL))
    inputs = {"frames_of_bees_safe": bees, "frames_of_brood_safe": brood}
    terms = BEFORE if day < MAIN_FLOW else AFTER
    is_able = brood >= terms.frames_of_brood and bees >= terms.frames_of_bees
    in_season = is_in_season(situation.on, PARAMETERS, "season")
    if not in_season or not is_able or _gave_lately(situation):
        return _helped(situation, inputs)
    tried = try_all(situation, [_taking(frames) for frames in range(MOST + 1)])
    lost = [1.0 - each.bees / tried[0].bees for each in tried]
    can = max(frames for frames in range(MOST + 1) if lost[frames] <= terms.cost)
    inputs |= {"frames_to_give": float(can), "cost_share": lost[can]}
    if can == 0:
        return Decision(topic="nucs", inputs=inputs)
    ready = [situation.on + timedelta(days=days) for days in SALEABLE_DAYS]
    because = (
        f"{brood:.1f} frames of brood and {bees:.1f} of bees at the careful end: giving {can} "
        f"costs {lost[can]:.0%} of its bees and brood by then. A nuc made with a ripe cell today "
        f"is ready for sale about {day_words(ready[0])} to {day_words(ready[1])}, if she mates."
    )
    gives = (Give(frames_of_brood=can),)
    return Decision(topic="nucs", actions=gives, because=(because,), inputs=inputs)


def _helped(situation: Situation, inputs: dict[str, float]) -> Decision:
    """Tell whether a weak colony with a queen is helped by a frame of sealed brood."""
    first, last = HELP_SEASON
    in_season = first <= situation.on.timetuple().tm_yday <= last
    is_weak = WEAK[0] <= situation.bees <= WEAK[1] and situation.standing.hive.kind == "hive"
    laying = float(np.mean(situation.colonies["queen"] == LAYING))
    if not in_season or not is_weak or laying < PARAMETERS["sure_of_her"].value:
        return Decision(topic="nucs", inputs=inputs)
    without, with_one = try_all(situation, [_taking(0), _taking_in])
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


def _gave_lately(situation: Situation) -> bool:
    given = [e.on for e in situation.history if isinstance(e, Split)]
    return bool(given) and (situation.on - given[-1]).days < PARAMETERS["recovers_in"].value


def _taking(frames: int) -> Change:
    def change(colonies: Any) -> None:
        cells = frames * BROOD_FRAME_FULL * FULL_BROOD_SHARE * colonies["cells_per_frame"]
        sealed = colonies["sealed"].sum(axis=1)
        share = np.clip(cells / np.maximum(sealed, 1.0), 0.0, PARAMETERS["sealed_most"].value)
        colonies["sealed"] *= (1.0 - share)[:, None]
        bees = np.clip(
            frames * colonies["bees_per_frame"] / np.maximum(colonies["nest"], 1.0),
            0,
            PARAMETERS["bees_most"].value,
        )
        colonies["nest"] *= 1.0 - bees
        colonies["mites_worker"] *= (1.0 - share)[:, None]

    return change
