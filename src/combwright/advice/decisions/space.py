"""Room and warmth: frames, dummy boards, super, tray and entrance."""

from dataclasses import dataclass
from typing import Any, Final

from combwright.advice.deciding import Deciding
from combwright.advice.decision import Decision
from combwright.advice.decisions import supers
from combwright.advice.decisions.air import ventilated
from combwright.advice.decisions.combs import stores_out
from combwright.advice.decisions.going import goes
from combwright.advice.decisions.honey import after_honey
from combwright.advice.decisions.kept_shut import is_cold, is_kept_shut
from combwright.advice.decisions.stacks import stacks, stepped, without_supers
from combwright.advice.numbers import numbers
from combwright.advice.season_ahead import Effect
from combwright.advice.situation import Situation, band
from combwright.advice.stacking import steps_to
from combwright.advice.trial import Tried, fed_with, try_all
from combwright.advice.weighing import Gain, Weighed, gain, weigh
from combwright.advice.words.money_words import less_words
from combwright.advice.words.space_words import because
from combwright.advice.words.wording import many
from combwright.simulation import observe
from combwright.simulation.enclosure.loss import slab_loss
from combwright.terms.ranked import median
from combwright.terms.set_up import SetUp

PARAMETERS: Final = numbers("space")
TOPIC: Final = "room and warmth"
FULL: Final = "Stores fill the nest: combs of them come out, so that the queen finds room."
FED_FRACTION: Final = PARAMETERS["fed_fraction"].value


@dataclass(frozen=True, kw_only=True)
class Space(Decision):
    """The decision, and the set-up that it leads to.

    ``super_near``: one may go on soon; until then no feed but against hunger is to be carried up.
    """

    set_up: SetUp
    super_near: bool = False


def decide(deciding: Deciding) -> Space:
    """Choose the set-up of a colony that is opened and stays; else leave it or only air it."""
    situation = deciding.of(after_honey)
    if is_kept_shut(deciding):
        return left_alone(situation)
    if situation.signs_at is not None:
        return unopened(
            situation, "Nothing goes in or out of this yard, so frames and boards stay as they are."
        )
    if goes(deciding):
        return unopened(situation)
    return space(situation, is_opened=not is_cold(deciding))


def space(situation: Situation, *, is_opened: bool = True) -> Space:
    """Choose frames, boards and supers, then tray and entrance.

    Candidates without supers are tried with a feed that replaces what the colony uses, so that room
    and warmth are not confused with hunger. Under supers nothing can be fed: there hunger counts,
    and supers that are as good as empty come off before the colony starves under them. In the cold
    that is all that is done: the nest stays shut.
    """
    now = situation.standing.set_up
    candidates = [now, *(stacks(situation) if is_opened else []), *without_supers(situation)]
    if len(candidates) == 1 and not is_opened:
        return unopened(situation)
    tried = try_all(situation, [_arranged(situation, each) for each in candidates])
    worth = _worth(situation, candidates)
    excess, best = _weighed(situation, candidates, tried, worth)
    further = 2 * (candidates[best].frames - now.frames)
    if further and (more := stepped(situation, further)):
        tried += try_all(situation, [_arranged(situation, each) for each in more])
        candidates += more
        worth = _worth(situation, candidates)
        excess, best = _weighed(situation, candidates, tried, worth)
    chosen, after = candidates[best], tried[best]
    supered = supers.with_super(situation, chosen) if is_opened else None
    is_due = supered is not None and supers.fed_lately(situation)
    if supered is not None and not is_due:
        chosen, after = supered.set_up, supered.tried
    chosen = ventilated(situation, chosen)
    combs = stores_out(situation, chosen) if is_opened else ()
    inputs = _inputs(situation, tried[0], after, chosen)
    if chosen.frames == candidates[best].frames:
        inputs |= _money(gain(worth[best], worth[0]))
    if supered is not None:
        inputs |= _super_money(supered.gain)
    return Space(
        topic=TOPIC,
        actions=(*combs, *steps_to(situation.standing.hive, now, chosen)),
        because=(
            *because(situation, now, chosen, inputs),
            *((supers.DUE,) if is_due else ()),
            *((FULL,) if combs else ()),
        ),
        inputs=inputs,
        runner_up=_runner_up(candidates, worth, excess, best),
        tells=True,
        set_up=chosen,
        super_near=is_due or supers.is_near_its_super(situation, chosen),
    )


def _worth(situation: Situation, candidates: list[SetUp]) -> list[Weighed]:
    """Weigh set-ups in money, each with the work that leads to it."""
    hive, now = situation.standing.hive, situation.standing.set_up
    works = [steps_to(hive, now, each) for each in candidates]
    return weigh(situation, [_arranged(situation, each) for each in candidates], works)


def _weighed(
    situation: Situation, candidates: list[SetUp], tried: list[Tried], worth: list[Weighed]
) -> tuple[list[float], int]:
    """Weigh the harm of each candidate, and name the best: least harm, then most money.

    Harm that a few members more or less make is the same; hunger under supers takes them off.
    To leave it as it stands costs nothing,
    and must be beaten by more than a trifle for each frame that is moved, and by one more where the
    queen runs short of room more often then: frames that stay cold are none to her.
    """
    excess = [round(_excess(situation, each), 2) for each in tried]
    now = candidates[0].supers
    bare = [i for i, each in enumerate(candidates) if each.supers < now]
    starving = bare if _must_be_fed(situation, tried[0]) else []
    open_to = starving or [i for i, each in enumerate(candidates) if each.supers >= now]
    same = PARAMETERS["same_harm_members"].value / len(situation.colonies)
    least = min(excess[i] for i in open_to) + same
    best = max((i for i in open_to if excess[i] <= least), key=lambda i: worth[i].money)
    brought = gain(worth[best], worth[0])
    moved = max(1, abs(candidates[best].frames - candidates[0].frames))
    is_colder = tried[best].chances["no room"] > tried[0].chances["no room"] + same
    is_trifle = not brought.is_worth(moved + is_colder)
    return excess, 0 if is_trifle and excess[0] <= least and not starving else best


def _must_be_fed(situation: Situation, as_it_is: Tried) -> bool:
    """Tell whether supers come off for hunger: empty ones where it threatens, others where likely.

    Where it is likely only because nobody saw the stores for weeks, a look comes first, and the
    branch for a bare colony.
    """
    above_kg = median(observe.honey_above_kg(situation.colonies))
    least = PARAMETERS["likely_hunger"].value
    if above_kg < PARAMETERS["empty_kg"].value:
        least = situation.limits.hunger
    return as_it_is.chances["hunger"] > least


def left_alone(situation: Situation) -> Space:
    """Give the set-up as it stands, for a colony whose queen comes, or that is sick."""
    reason = "It is left in peace today, so the set-up stays as it is."
    now = situation.standing.set_up
    return Space(topic=TOPIC, because=(reason,), tells=True, set_up=now)


def unopened(
    situation: Situation,
    reason: str = "It is not opened now, so frames and boards stay as they are.",
) -> Space:
    """Leave the box as it stands, and set tray and entrance for the season."""
    now = situation.standing.set_up
    chosen = ventilated(situation, now)
    steps = steps_to(situation.standing.hive, now, chosen)
    return Space(topic=TOPIC, actions=steps, because=(reason,), tells=True, set_up=chosen)


def _money(frames: Gain) -> dict[str, float]:
    """Give what the set-up is worth against leaving it."""
    return {"worth_more": frames.money, "minutes": frames.minutes}


def _super_money(brought: Gain) -> dict[str, float]:
    """Give what the super is worth against none, with the frames that fill the box under it."""
    return {
        "super_worth_more": brought.money,
        "super_honey_kg": brought.honey_kg,
        "super_minutes": brought.minutes,
    }


def _runner_up(
    candidates: list[SetUp], worth: list[Weighed], excess: list[float], best: int
) -> str:
    """Name the second choice and by how much it lost."""
    others = [i for i in range(len(candidates)) if i != best]
    if not others:
        return ""
    second = min(others, key=lambda i: (excess[i], -worth[i].money))
    kept = candidates[second]
    stack = [many(kept.frames, "frame"), many(kept.dummy_boards, "board")]
    stack += [many(kept.supers, "super")] if kept.supers else []
    if excess[second] > excess[best] + PARAMETERS["told_apart"].value:
        return f"{', '.join(stack)}: more than the limits allow"
    return f"{', '.join(stack)}: {less_words(worth[best].money - worth[second].money)}"


def _arranged(situation: Situation, set_up: SetUp) -> Effect:
    use_g = situation.used_g * situation.horizon
    fed = fed_with(situation, use_g * PARAMETERS["fed_share"].value / FED_FRACTION, FED_FRACTION)

    def change(colonies: Any) -> None:
        situation.arrange(colonies, set_up)
        if set_up.supers == 0:
            fed(colonies)

    return change


def _excess(situation: Situation, tried: Tried) -> float:
    named = ("no room", "chilled", "hunger", "syrup in honey")
    chances = {name: tried.chances[name] for name in named}
    return situation.limits.excess(chances)


def _inputs(situation: Situation, now: Tried, chosen: Tried, set_up: SetUp) -> dict[str, float]:
    bees = band(situation.frames_of_bees)
    before = slab_loss(situation.standing.hive, situation.standing.set_up)
    after = slab_loss(situation.standing.hive, set_up)
    covered = bees[1]
    watt_before = before.base_w_per_k + before.per_frame_w_per_k * covered
    watt_after = after.base_w_per_k + after.per_frame_w_per_k * covered
    return {
        "frames_as_it_is": float(situation.standing.set_up.frames),
        "frames": float(set_up.frames),
        "frames_of_bees_low": bees[0],
        "frames_of_bees": bees[1],
        "frames_of_bees_high": bees[2],
        "no_room_as_it_is": now.chances["no room"],
        "no_room": chosen.chances["no room"],
        "chilled": chosen.chances["chilled"],
        "swarm_as_it_is": now.chances["swarm"],
        "swarm": chosen.chances["swarm"],
        "hunger_as_it_is": now.chances["hunger"],
        "bees_gained": chosen.bees - now.bees,
        "loss_w_per_k_as_it_is": watt_before,
        "loss_w_per_k": watt_after,
        "mean_high_c": situation.mean_high_c,
        "robbed": situation.robbed,
    }
