"""The keeper's own minutes at a hive and by task: as set, and as the notes of visits say."""

from collections.abc import Sequence
from datetime import date

from combwright.planning.task_minutes import TaskMinutes, learned_minutes
from combwright.services.rounds.price_list import prices_on
from combwright.terms.entries import Noted


def own_minutes(entries: Sequence[Noted], on: date) -> TaskMinutes:
    """Give the minutes by task as known on a day."""
    look = prices_on(entries, on).minutes_at_a_hive
    return learned_minutes([each for each in entries if each.on <= on], look)
