"""Swarm: the chance before the next visit, and the plan with its dates if cells are found."""

from datetime import date, timedelta
from typing import Final, Literal

import numpy as np

from combwright.advice.actions import Action, of_kind
from combwright.advice.bee_acts import (
    CutCells,
    Divide,
    KnockDown,
    LeaveCells,
    LeaveShut,
    Look,
    Requeen,
    Successor,
)
from combwright.advice.deciding import Deciding
from combwright.advice.decision import Decision
from combwright.advice.decisions import food, space
from combwright.advice.decisions.honey import after_honey
from combwright.advice.decisions.kept_shut import is_cold, is_kept_shut
from combwright.advice.decisions.prevention import prevented
from combwright.advice.decisions.successor import successor, unqueened
from combwright.advice.nuc_worth import nuc_with_her
from combwright.advice.numbers import is_in_season, numbers
from combwright.advice.season_ahead import Done
from combwright.advice.situation import Situation
from combwright.advice.trial import Tried, doing, try_all
from combwright.advice.weighing import gain, weigh
from combwright.advice.words.money_words import worth_words
from combwright.advice.words.wording import chance_words, day_words
from combwright.belief.following.causes import TOO_WEAK
from combwright.simulation.step.shapes import YEAR
from combwright.terms.ranked import median

PARAMETERS: Final = numbers("swarm")


def decide(deciding: Deciding) -> Decision:
    """Tell the chance of a swarm under the plan, and divide where charged cells are likely."""
    situation = deciding.of(after_honey)
    if not is_in_season(situation.on, PARAMETERS, "season"):
        return Decision(topic="swarm", tells=False)
    begun = float(np.mean(situation.colonies["swarm_clock"] > 0.0))
    charged = float(np.mean(situation.colonies["swarm_clock"] >= PARAMETERS["charged_on"].value))
    chance = deciding.of(food.decide).tried.chances["swarm"]
    is_closed = is_kept_shut(deciding) or is_cold(deciding)
    actions = () if is_closed else _actions(deciding, chance, charged)
    if repairs := of_kind(actions, Divide) + of_kind(actions, CutCells):
        work = (*deciding.of(space.decide).actions, *repairs)
        chance = try_all(situation, [doing(situation, work)])[0].chances["swarm"]
    kept = prevented(deciding) if _may_be_prevented(situation, actions, chance) else None
    if kept is not None:
        actions, chance = (*of_kind(actions, Look)[:1], *kept.actions), kept.chance
    as_it_is = deciding.of(nothing_done).chances["swarm"]
    inputs = {
        "swarm": chance,
        "swarm_as_it_is": as_it_is,
        "cells_begun": begun,
        "cells_charged": charged,
    }
    because = (
        f"Chance of a swarm before {day_words(situation.planned_until)}: {chance_words(chance)} as "
        f"planned, {chance_words(as_it_is)} if nothing is changed; that cells are begun: "
        f"{chance_words(begun)}. No published figure says when bees swarm: comb, crowding, season "
        "and the queen's age are weighed by judgement."
    )
    told = () if kept is None else (worth_words("This", kept.gain.money, 0.0, kept.gain.minutes),)
    worries = max(chance, as_it_is) >= PARAMETERS["worth_saying"].value
    return Decision(
        topic="swarm", actions=actions, because=(because, *told), inputs=inputs, tells=worries
    )


def _may_be_prevented(situation: Situation, actions: tuple[Action, ...], chance: float) -> bool:
    """Tell whether a swarm is likely enough to be held back, and nothing repairs it already."""
    repairs = any(isinstance(each, Divide | CutCells | KnockDown) for each in actions)
    is_likely = chance >= PARAMETERS["worth_saying"].value and situation.bees >= TOO_WEAK
    return bool(actions) and not repairs and is_likely


def chance_of(deciding: Deciding) -> float:
    """Give the chance of a swarm under all that is planned."""
    planned = deciding.of(food.decide).tried.chances["swarm"]
    return deciding.of(decide).inputs.get("swarm", planned)


def nothing_done(deciding: Deciding) -> Tried:
    """Try doing nothing, unless that was tried with the portions already."""
    situation = deciding.of(after_honey)
    if deciding.of(space.decide).set_up == situation.standing.set_up:
        return deciding.of(food.decide).without
    (tried,) = try_all(situation, [doing(situation, ())])
    return tried


def _actions(deciding: Deciding, chance: float, charged: float) -> tuple[Action, ...]:
    situation = deciding.of(after_honey)
    looks: list[Action] = [Look(at="queen cells")]
    if chance >= situation.limits.swarm:
        looks.append(Look(at="every frame", chance=chance))
    if charged < PARAMETERS["sure"].value or situation.bees < TOO_WEAK:
        return tuple(looks)
    if situation.signs_at is None:
        return (*looks, *repaired(situation, deciding.of(space.decide).actions, likely=True))
    again = situation.on + timedelta(days=PARAMETERS["cut_again"].value)
    return (*looks, KnockDown(on=situation.on, again_by=again))


def repaired(
    situation: Situation, planned: tuple[Action, ...] = (), *, likely: bool = False
) -> tuple[Action, ...]:
    """Give what is done about charged cells: they are cut, or the colony divided where it pays.

    A division sells the queen with a nuc, and gives the colony a young one who swarms less; cells
    that are cut cost the next look in time.
    """
    on, given = situation.on, successor(situation)
    age = median(situation.colonies["queen_age"])
    old = age >= PARAMETERS["old_days"].value
    divided = nucleus_plan(on, given, likely=likely, may_supersede=old)
    cut = (CutCells(again_by=on + timedelta(days=PARAMETERS["cut_again"].value)),)
    changes = [doing(situation, (*planned, *each)) for each in (cut, divided)]
    bought = (Requeen(),) if given == "mated queen" else ()
    brings = nuc_with_her(on, situation.prices, age / YEAR) - unqueened(situation, given)
    kept, parted = weigh(
        situation,
        changes,
        [cut, bought],
        done=[Done(), Done(nuc=1.0)],
        besides=[0.0, brings],
    )
    return divided if gain(parted, kept).is_worth_it else cut


def nucleus_plan(
    on: date,
    successor: Successor,
    *,
    way: Literal["nucleus", "on purpose"] = "nucleus",
    likely: bool = False,
    may_supersede: bool = False,
) -> tuple[Action, ...]:
    """Give the nucleus method by the day, for charged cells found today or for sale.

    A mated queen in the place of the cell that is left saves three to four weeks of laying.

    The clock: a cell is sealed on day 8 from its egg and the virgin emerges on day 16; an open
    cell with a larva is three to eight days old.
    """

    def day(name: str) -> date:
        return on + timedelta(days=PARAMETERS[name].value)

    if successor == "mated queen":
        return (
            Divide(way=way, successor=successor, likely=likely, may_supersede=may_supersede),
            KnockDown(on=day("knock_down_day"), look_for_queen=True),
        )
    return (
        Divide(way=way, successor=successor, likely=likely, may_supersede=may_supersede),
        KnockDown(on=day("knock_down_day"), but="marked one"),
        LeaveShut(why="virgin mates", since=day("shut_from"), until=day("shut_to")),
        Look(at="eggs", on=day("eggs_day"), if_none="test frame or unite"),
    )


def swarmed_plan(on: date) -> tuple[Action, ...]:
    """Give what is done when it has swarmed already."""
    look = on + timedelta(days=PARAMETERS["swarmed_look"].value)
    return (LeaveCells(which="one good one"), LeaveShut(why="swarmed", until=look))
