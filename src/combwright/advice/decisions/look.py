"""What every colony is looked at for: whether it lives, and how it stands."""

from typing import Final

from combwright.advice.actions import Action
from combwright.advice.bee_acts import Look
from combwright.advice.deciding import Deciding
from combwright.advice.decision import Decision
from combwright.advice.decisions.kept_shut import is_cold, is_kept_shut
from combwright.advice.numbers import numbers

PARAMETERS: Final = numbers("look")


def decide(deciding: Deciding) -> Decision:
    """Ask for what every opened colony is looked at for, and say where it may be dead."""
    situation = deciding.situation
    looks: list[Action] = []
    if situation.dead >= PARAMETERS["worth_saying"].value:
        looks.append(Look(at="life", chance=situation.dead))
    if not is_kept_shut(deciding) and not is_cold(deciding):
        looks.append(Look(at="health"))
    return Decision(topic="look", actions=tuple(looks), inputs={"dead": situation.dead})
