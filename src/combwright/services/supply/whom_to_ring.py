"""What a customer who has a promise must hear: by how much it can no longer be kept."""

from datetime import date

import numpy as np

from combwright.advice.words.wording import chance_words, day_words, many
from combwright.planning.supply.promising import KEPT
from combwright.planning.supply.ready import A_WEEK
from combwright.planning.supply.tightening import FirmPlan
from combwright.planning.supply.wanted import WantedOrder
from combwright.records.replay.known_orders import KnownOrder


def ring(
    known: KnownOrder,
    wanted: WantedOrder,
    firm: FirmPlan,
    now: tuple[date | None, float | None],
) -> str:
    """Say what a customer who has a promise must hear: how many are sure, how late it is."""
    ready, chance = now
    if known.week is None or wanted.promised is None:
        return ""
    promised = f"Promised for the week of {day_words(known.week)}"
    if ready is None or chance is None:
        sure = _sure_of(wanted, firm)
        if sure == 0:
            return f"{promised}: {wanted.count} cannot be ready this season."
        return f"{promised}: {sure} of {wanted.count} are sure then, the others not this season."
    late = (ready - known.week).days - A_WEEK + 1
    if late > 0:
        return (
            f"{promised}: ready {many(-(-late // A_WEEK), 'week')} late, by {day_words(ready)} "
            f"({chance_words(chance)}); {_sure_of(wanted, firm)} of {wanted.count} are sure then."
        )
    if chance < KEPT:
        return f"{promised}: now kept with only {chance_words(chance)}."
    return ""


def _sure_of(wanted: WantedOrder, firm: FirmPlan) -> int:
    """Count what an order can have in its week in nine seasons of ten, others' promises kept."""
    left = firm.tried.spare[wanted.product][:, wanted.promised or 0 :].min(axis=1)
    edge = float(np.quantile(left, 1.0 - KEPT, method="lower"))
    return int(np.clip(edge, 0, wanted.count))
