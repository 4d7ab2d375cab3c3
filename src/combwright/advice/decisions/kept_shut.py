"""Whether a colony is opened, and whether anything goes in or out of it.

Both bind all other decisions; see ``binding``.
"""

from typing import Final

from combwright.advice.bee_acts import LeaveShut
from combwright.advice.deciding import Deciding
from combwright.advice.decisions import queen
from combwright.advice.decisions.disease import is_sick
from combwright.advice.numbers import is_in_months, numbers

PARAMETERS: Final = numbers("look")
OPENED_FROM_C: Final = PARAMETERS["opened_from_c"].value


def is_cold(deciding: Deciding) -> bool:
    """Tell whether no hive is opened: by the day's forecast, and while bees cluster for winter.

    Then only lids, weights and entrances are seen to.
    """
    situation = deciding.situation
    rests = is_in_months(situation.on, PARAMETERS, "cold")
    return rests or situation.reaches_today(OPENED_FROM_C) < PARAMETERS["mild_chance"].value


def keeps_out(deciding: Deciding) -> bool:
    """Tell whether a virgin or a cell is likely, at whose hive nobody works."""
    return bool(deciding.of(queen.decide).asks(LeaveShut))


def is_kept_shut(deciding: Deciding) -> bool:
    """Tell whether a colony is left shut: with a virgin, or with signs of disease."""
    return keeps_out(deciding) or deciding.of(is_sick)


def waits_for_a_queen(deciding: Deciding) -> bool:
    """Tell whether a colony is left shut for its virgin or cell alone."""
    return keeps_out(deciding) and not deciding.of(is_sick)


def is_barred(deciding: Deciding) -> bool:
    """Tell whether signs of disease or a virgin bar a colony from all exchange."""
    return is_kept_shut(deciding) or deciding.situation.signs_at is not None


def nothing_moves(deciding: Deciding) -> bool:
    """Tell whether nothing comes out of a colony today and nothing goes in."""
    return is_barred(deciding) or is_cold(deciding)
