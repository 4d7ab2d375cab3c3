"""A nuc that fills its box: it is sold, or set into a hive, before it swarms."""

from typing import Final

from combwright.advice.bee_acts import Rehouse
from combwright.advice.deciding import Deciding
from combwright.advice.decision import Decision
from combwright.advice.decisions.kept_shut import nothing_moves
from combwright.advice.numbers import is_in_season, numbers
from combwright.advice.words.money_words import money_words

PARAMETERS: Final = numbers("housing")


def decide(deciding: Deciding) -> Decision:
    """Say that a nuc with a laying queen is full, and what it would bring."""
    situation = deciding.situation
    hive, bees = situation.standing.hive, situation.bees
    is_full = hive.kind == "nuc" and bees >= hive.frames - PARAMETERS["lacking"].value
    is_sound = situation.laying >= PARAMETERS["sure_of_her"].value
    in_season = is_in_season(situation.on, PARAMETERS, "season")
    if not (is_full and is_sound and in_season) or nothing_moves(deciding):
        return Decision(topic="housing")
    brings = situation.prices.nuc(situation.on)
    because = (
        f"{bees:.1f} frames of bees on {hive.frames} frames. A nuc sold now brings "
        f"{money_words(brings)}; in a full box its queen will soon be short of room."
    )
    inputs = {"frames_of_bees": bees, "frames": float(hive.frames), "brings": brings}
    return Decision(topic="housing", actions=(Rehouse(),), because=(because,), inputs=inputs)
