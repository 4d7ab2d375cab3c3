"""The plan for one colony: the decisions in their order, none against another."""

from dataclasses import dataclass, replace

import numpy as np

from combwright.advice.decision import Advised, Decision
from combwright.advice.decisions import honey, mites, nucs, queen, swarm, visits
from combwright.advice.decisions.branches import branches
from combwright.advice.decisions.disease import disease
from combwright.advice.decisions.food import Portion
from combwright.advice.decisions.found import Found
from combwright.advice.decisions.housing import (
    COLD_MONTHS,
    housing,
    is_kept_shut,
    waits_for_a_queen,
)
from combwright.advice.decisions.space import Space
from combwright.advice.situation import Situation
from combwright.advice.trial import Tried, given, try_all
from combwright.advice.words.wording import chance_words
from combwright.kit.geometry import spacing_notice
from combwright.simulation import observe

WORTH_SAYING = 0.05  # chance of a swarm, or of its death, from which the sheet says so; judgement


@dataclass(frozen=True)
class Plan:
    """Everything advised for one colony until its next visit."""

    space: Space
    portion: Portion
    decisions: tuple[Decision, ...]
    branches: tuple[Found, ...]
    advised: Advised
    chances: dict[str, float]

    @property
    def jobs(self) -> tuple[str, ...]:
        """All jobs in working order."""
        return tuple(job for decision in self.decisions for job in decision.jobs)

    @property
    def because(self) -> tuple[str, ...]:
        """The reasons that belong on a sheet: of food and room always, of others when they act."""
        return tuple(
            reason
            for decision in self.decisions
            if _matters(decision)
            for reason in decision.because
        )

    @property
    def inputs(self) -> dict[str, float]:
        """All figures that the reasons quote."""
        return {
            f"{decision.topic}: {name}": value
            for decision in self.decisions
            for name, value in decision.inputs.items()
        }


def _matters(decision: Decision) -> bool:
    """Tell whether a decision's reason belongs on the sheet; all of them stand in the JSON."""
    if decision.topic in {"food", "room and warmth"}:
        return True
    if decision.topic == "swarm":
        return decision.inputs.get("swarm", 0.0) >= WORTH_SAYING
    if decision.topic == "mites":
        return any(job.startswith("Treat") for job in decision.jobs)
    return bool(decision.jobs)


def plan(situation: Situation, *, with_branches: bool = True) -> Plan:
    """Decide in the order in which one decision binds the next.

    Disease first: with signs nothing is moved, in the whole yard. Then whether the colony is opened
    at all (a virgin, winter), what comes off (honey), whether it goes on alone, its room and
    warmth, the food that fits into it, and mites. Branches may be left out where nobody reads them.
    Where it may be dead, that is said, and all is decided for the case that it lives.
    """
    alive = np.flatnonzero(observe.adults(situation.colonies) > 0.0)
    dead = 1.0 - len(alive) / len(situation.colonies)
    if 0.0 < dead < 1.0:
        situation = situation.with_members(alive)
    signs = disease(situation)
    queens = queen.queen(situation)
    is_shut = is_kept_shut(situation, queens)
    stays = is_shut or situation.signs_at is not None  # nothing comes out of it, and nothing in
    taken = honey.HoneyPlan(Decision("honey"), 0.0, 0) if stays else honey.honey(situation)
    at = _without_supers(situation, taken.supers_off)
    housed = housing(at, queens)
    room, food = housed.room, housed.food
    against_mites = (
        mites.MitePlan(Decision("mites"), None)
        if is_shut
        else mites.mites(at, supers=room.set_up.supers)
    )
    work = given(at, room.set_up, food.grams, food.sugar_fraction or at.syrup_fraction)
    crowding = swarm.swarm(at, food.tried, _as_it_is(at, room, food), is_shut=is_shut)
    spare, frames = (
        (Decision("nucs"), 0) if stays or housed.goes or queens.give_queen else nucs.nucs(at)
    )
    today = at.colonies.copy()
    work(today)
    for_winter = housed.for_winter.decision
    decisions = (
        signs,
        _with_look(situation, crowding.decision, dead, is_shut=is_shut),
        _idle(queens.decision)
        if stays and not waits_for_a_queen(situation, queens)
        else queens.decision,
        taken.decision,
        room.decision,
        _spacing(situation),
        against_mites.decision,
        food.decision,
        _idle(for_winter) if is_shut or (stays and housed.for_winter.unite) else for_winter,
        spare,
        visits.next_visit(at, today, keep_out=queens.keep_out),
    )
    return Plan(
        room,
        food,
        decisions,
        branches(at, queens, housed) if with_branches else (),
        Advised(
            set_up=room.set_up,
            grams=food.grams,
            sugar_fraction=food.sugar_fraction,
            treatment=against_mites.treatment,
            honey_kg=taken.honey_kg,
            supers_off=taken.supers_off,
            give_queen=crowding.give_queen or (queens.give_queen and not stays and not housed.goes),
            divide=crowding.divide and not housed.goes,
            requeen=queens.requeen and not (stays or housed.goes or crowding.divide),
            unite=housed.goes,
            brood_frames_to_give=frames,
        ),
        food.tried.chances,
    )


def _idle(decision: Decision) -> Decision:
    """Keep what was found, but ask for nothing."""
    return replace(decision, jobs=())


def _as_it_is(situation: Situation, room: Space, food: Portion) -> Tried:
    """Try doing nothing, unless that was tried with the portions already."""
    if room.set_up == situation.standing.set_up:
        return food.without
    as_it_is = given(situation, situation.standing.set_up, 0, situation.syrup_fraction)
    (tried,) = try_all(situation, [as_it_is])
    return tried


def _without_supers(situation: Situation, off: int) -> Situation:
    if not off:
        return situation
    now = situation.standing.set_up
    left = now.supers - off
    lighter = now.model_copy(update={"supers": left, "excluder": now.excluder and left > 0})
    return situation.after_harvest(lighter, off * honey.full_super_kg(situation))


def _with_look(situation: Situation, crowding: Decision, dead: float, *, is_shut: bool) -> Decision:
    """Put what every opened colony is looked at for before its swarm cells."""
    looks = []
    if dead >= WORTH_SAYING:
        looks.append(f"It may be dead ({chance_words(dead)}): look at the entrance first.")
    if not is_shut and situation.on.month not in COLD_MONTHS:
        looks.append("Look for eggs, stores, room, and any sign of disease.")
    inputs = {**crowding.inputs, "dead": dead}
    return replace(crowding, jobs=(*looks, *crowding.jobs), inputs=inputs)


def _spacing(situation: Situation) -> Decision:
    """Say when the frames stand too wide, and the cure."""
    set_up = situation.standing.set_up
    if situation.pitch_mm is None:
        return Decision("room and warmth")
    notice = spacing_notice(
        situation.standing.hive, set_up.frames, situation.pitch_mm, set_up.dummy_boards
    )
    return Decision("room and warmth", (notice,) if notice else ())
