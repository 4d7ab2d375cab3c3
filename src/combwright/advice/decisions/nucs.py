"""Nucs and surplus brood: what a colony can give without missing its aim, and who needs help."""

from dataclasses import dataclass
from datetime import timedelta
from typing import Any, Final

import numpy as np

from combwright.advice.decision import Decision
from combwright.advice.situation import Situation
from combwright.advice.trial import Change, try_all
from combwright.advice.words.wording import chance_words, count_words, day_words
from combwright.belief.following.standing import BROOD_FRAME_FULL
from combwright.simulation import observe
from combwright.simulation.columns import LAYING
from combwright.simulation.observe import FULL_BROOD_SHARE
from combwright.terms.entries import Split

MOST: Final = 3  # frames given at once: one nuc
SEASON: Final = (110, 206)  # days of the year in which nucs are made: late July to winter them
RECOVERS_IN: Final = 21  # days after which a donor may give again: planning rule of the trade


@dataclass(frozen=True)
class Terms:
    """What a donor must have, at the careful end, and what giving may cost it; judgement."""

    frames_of_brood: float
    frames_of_bees: float
    cost: float


# Brood that is sealed before the main flow makes its foragers; what is sealed later does not
# (an egg becomes a forager in about 42 days), so that it can be given more freely.
MAIN_FLOW: Final = 172  # day of the year, 21 June
BEFORE: Final = Terms(6.0, 9.0, 0.12)
AFTER: Final = Terms(4.0, 8.5, 0.12)
HELP_SEASON: Final = (105, MAIN_FLOW)  # days of the year in which helping bees pays; judgement
WEAK: Final = (2.0, 5.0)  # frames of bees of a colony that is helped; judgement
SURE_OF_HER: Final = 0.9  # chance that the queen lays, below which nothing is given; judgement
SALEABLE_DAYS: Final = (37, 45)  # from a ripe cell to a nuc ready for sale


def nucs(situation: Situation) -> tuple[Decision, int]:
    """Tell how many frames of brood a colony can give today."""
    day = situation.on.timetuple().tm_yday
    bees = float(np.quantile(situation.frames_of_bees, 0.2))
    brood = float(np.quantile(observe.frames_of_brood(situation.colonies), 0.2))
    inputs = {"frames_of_bees_safe": bees, "frames_of_brood_safe": brood}
    terms = BEFORE if day < MAIN_FLOW else AFTER
    is_able = brood >= terms.frames_of_brood and bees >= terms.frames_of_bees
    if not SEASON[0] <= day <= SEASON[1] or not is_able or _gave_lately(situation):
        return _helped(situation, inputs), 0
    tried = try_all(situation, [_taking(frames) for frames in range(MOST + 1)])
    lost = [1.0 - each.bees / tried[0].bees for each in tried]
    can = max(frames for frames in range(MOST + 1) if lost[frames] <= terms.cost)
    inputs |= {"frames_to_give": float(can), "cost_share": lost[can]}
    if can == 0:
        return Decision("nucs", inputs=inputs), 0
    ready = [situation.on + timedelta(days=days) for days in SALEABLE_DAYS]
    jobs = (f"Can give {can} frame{'s' if can > 1 else ''} of sealed brood with bees for a nuc.",)
    because = (
        (
            f"{brood:.1f} frames of brood and {bees:.1f} of bees at the careful end: giving {can} "
            f"costs {lost[can]:.0%} of its bees and brood by then. A nuc made with "
            "a ripe cell today "
            f"is ready for sale about {day_words(ready[0])} to {day_words(ready[1])}, if she mates."
        ),
    )
    return Decision("nucs", jobs, because, inputs), can


def _helped(situation: Situation, inputs: dict[str, float]) -> Decision:
    """Tell whether a weak colony with a queen is helped by a frame of sealed brood."""
    first, last = HELP_SEASON
    in_season = first <= situation.on.timetuple().tm_yday <= last
    is_weak = WEAK[0] <= situation.bees <= WEAK[1] and situation.standing.hive.kind == "hive"
    laying = float(np.mean(situation.colonies["queen"] == LAYING))
    if not in_season or not is_weak or laying < SURE_OF_HER:
        return Decision("nucs", inputs=inputs)
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
        return Decision("nucs", inputs=inputs)
    job = (
        "Can take a frame of sealed brood for an empty one, bees shaken off and the frame marked, "
        "from a healthy colony that can give."
    )
    because = (
        f"{situation.bees:.1f} frames of bees with a laying queen keep one frame more warm (chance "
        f"that brood is chilled {chance_words(chances['chilled'])}): about "
        f"{count_words(inputs['gained_by_help'])} bees and brood more by "
        f"{day_words(situation.next_visit)}. A colony without a laying queen is united instead."
    )
    return Decision("nucs", (job,), (because,), inputs)


def _taking_in(colonies: Any) -> None:
    cells = BROOD_FRAME_FULL * FULL_BROOD_SHARE * colonies["cells_per_frame"]
    colonies["sealed"] += (cells / colonies["sealed"].shape[1])[:, None]


def _gave_lately(situation: Situation) -> bool:
    given = [e.on for e in situation.history if isinstance(e, Split)]
    return bool(given) and (situation.on - given[-1]).days < RECOVERS_IN


def _taking(frames: int) -> Change:
    def change(colonies: Any) -> None:
        cells = frames * BROOD_FRAME_FULL * FULL_BROOD_SHARE * colonies["cells_per_frame"]
        sealed = colonies["sealed"].sum(axis=1)
        share = np.clip(cells / np.maximum(sealed, 1.0), 0.0, 0.95)
        colonies["sealed"] *= (1.0 - share)[:, None]
        bees = np.clip(
            frames * colonies["bees_per_frame"] / np.maximum(colonies["nest"], 1.0), 0, 0.6
        )
        colonies["nest"] *= 1.0 - bees
        colonies["mites_worker"] *= (1.0 - share)[:, None]

    return change
