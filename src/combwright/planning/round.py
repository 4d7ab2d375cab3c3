"""The round: from each colony's plan to the sheet."""

from collections.abc import Iterable
from typing import Final

import numpy as np
from numpy.typing import NDArray

from combwright.advice.decision import Decision
from combwright.advice.decisions.if_found import IfFound
from combwright.advice.decisions.winter import still_supered
from combwright.advice.kit_acts import Feeding
from combwright.advice.plan import plan
from combwright.advice.situation import Situation, band
from combwright.advice.words.wording import SYRUP_G_PER_L
from combwright.belief.following.followed import Followed
from combwright.belief.weighing.filter import QUANTITIES
from combwright.planning import sheet
from combwright.planning.strip import stack_view
from combwright.planning.supply.nuc_readiness import NucReady, is_sold, readiness_of
from combwright.simulation.columns import copied
from combwright.terms.set_up import SetUp

TENTHS: Final = ("stores_kg", "frames_of_bees", "frames_of_brood")


def colony_sheet(followed: Followed, situation: Situation, order: int) -> sheet.ColonySheet:
    """Plan for a colony and write its part of the sheet."""
    decided = plan(situation)
    set_up = decided.set_up
    after = copied(situation.colonies)
    situation.arrange(after, set_up)
    hive = situation.standing.hive
    sold = hive.kind == "nuc" and is_sold(situation.on)
    sale = readiness_of(situation, followed.yard) if sold else None
    return sheet.ColonySheet(
        colony=situation.colony,
        yard=followed.yard,
        hive=hive.name,
        order=order,
        last_visit=followed.last_visit,
        next_visit=decided.next_visit,
        planned_until=decided.planned_until,
        expected=_expected(situation.colonies),
        portion=_portion(decided.portion),
        set_up_now=_shown(situation.standing.set_up),
        set_up=_shown(set_up),
        actions=list(decided.actions),
        jobs=list(decided.jobs),
        because=[*([f"For sale: {sale.said}."] if sale else []), *decided.because],
        for_sale=None if sale is None else _for_sale(sale),
        branches=shown_branches(decided.branches),
        questions=[*followed.belief.questions, *followed.notices, *still_supered(situation)],
        chances={name: round(chance, 3) for name, chance in decided.chances.items()},
        inputs={name: _rounded(value) for name, value in decided.inputs.items()},
        decisions=[_decision(each) for each in decided.decisions if each.actions or each.because],
        before=stack_view(situation.colonies, hive, situation.standing.set_up, feeder_over=False),
        after=stack_view(
            after,
            hive,
            set_up,
            feeder_over=decided.portion.grams > 0,
            was=situation.standing.set_up,
        ),
    )


def _for_sale(ready: NucReady) -> sheet.ForSale:
    return sheet.ForSale(
        missing=list(ready.missing), by=ready.by, chance=ready.chance, job=ready.job
    )


def _rounded(value: float) -> float:
    return float(f"{value:.4g}")


def _expected(colonies: NDArray[np.void]) -> sheet.Expected:
    bands = {}
    for name, quantity in QUANTITIES.items():
        low, mid, high = (_sensible(name, value) for value in band(quantity(colonies)))
        bands[name] = sheet.Band(low=low, mid=mid, high=high)
    return sheet.Expected(**bands)


def _sensible(name: str, value: float) -> float:
    """Round to what can be seen at a hive: tenths of a frame, hundreds of cells, two digits."""
    if name == "room_cells":
        return round(value, -2) + 0.0
    return round(value, 1) if name in TENTHS else float(f"{value:.2g}")


def _portion(feed: Feeding) -> sheet.Portion:
    return sheet.Portion(
        syrup_g=feed.grams,
        per_day_g=feed.per_day_g,
        days=feed.days,
        sugar_fraction=feed.sugar_fraction,
        feed=feed.feed,
        litres=round(feed.grams / SYRUP_G_PER_L, 1) if feed.feed == "syrup" else 0.0,
    )


def _shown(set_up: SetUp) -> sheet.SetUpShown:
    return sheet.SetUpShown(**set_up.model_dump(exclude={"hive"}))


def _decision(decided: Decision) -> sheet.DecisionShown:
    return sheet.DecisionShown(
        topic=decided.topic,
        actions=list(decided.actions),
        jobs=list(decided.jobs),
        because=list(decided.because),
        inputs={name: _rounded(value) for name, value in decided.inputs.items()},
        runner_up=decided.runner_up,
    )


def shown_branches(found: Iterable[IfFound]) -> list[sheet.Branch]:
    """Write branches as the sheet shows them."""
    return [_branch(each) for each in found]


def _branch(found: IfFound) -> sheet.Branch:
    return sheet.Branch(
        code=found.code,
        quantity=found.quantity,
        amount=found.amount,
        chance=None if found.chance is None else round(found.chance, 3),
        found=found.found,
        actions=list(found.actions),
        do=list(found.do),
        because=found.because,
        portion=None if found.portion is None else _portion(found.portion),
    )
