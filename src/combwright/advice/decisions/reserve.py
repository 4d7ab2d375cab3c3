"""The reserve: stores below which a colony must not be expected to fall."""

from typing import Final

from combwright.advice.numbers import numbers
from combwright.advice.situation import Situation

PARAMETERS: Final = numbers("food")


def reserve_kg(situation: Situation) -> float:
    """Give the stores below which the colony must not be expected to fall. [kg]."""
    return PARAMETERS[f"reserve_{situation.standing.hive.kind}_kg"].value
