"""Whether a colony goes on alone, or goes: is united with another."""

from combwright.advice.bee_acts import Uniting
from combwright.advice.deciding import Deciding
from combwright.advice.decisions import queen, winter
from combwright.advice.decisions.kept_shut import nothing_moves


def goes(deciding: Deciding) -> bool:
    """Tell whether a colony is united with another."""
    asked = (*deciding.of(queen.decide).asks(Uniting), *deciding.of(winter.decide).asks(Uniting))
    return bool(asked) and not nothing_moves(deciding)
