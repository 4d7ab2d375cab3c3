"""The plan for one colony: the decisions in their order, none against another."""

from dataclasses import dataclass, replace

from combwright.advice import honey, mites, nucs, queen, swarm, visits, winter
from combwright.advice.branches import Found, branches
from combwright.advice.decision import Advised, Decision
from combwright.advice.disease import disease
from combwright.advice.food import FONDANT_MOST_G, Portion, portion
from combwright.advice.situation import Situation
from combwright.advice.space import Space, left_alone, space, unopened
from combwright.advice.trial import Tried, given, try_all
from combwright.kit.geometry import spacing_notice

FONDANT_FRACTION = 0.85
COLD_MONTHS = (11, 12, 1)  # no inspection: hefting from behind
WORTH_SAYING = 0.05  # chance of a swarm from which the sheet gives its reason; judgement
SYRUP_FRACTION = 0.6
AUTUMN_FRACTION = 0.62  # thick syrup, 1 kg sugar to 0.63 L water


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

    Disease first: with signs nothing is moved. Then whether the colony is opened at all (a virgin,
    winter), what comes off (honey), whether it goes on alone, its room and warmth, mites, and last
    the food that fits into it. Branches may be left out where nobody reads them.
    """
    signs = disease(situation)
    queens = queen.queen(situation)
    is_shut = queens.keep_out or bool(signs.jobs)
    taken = honey.HoneyPlan(Decision("honey"), 0.0, 0) if is_shut else honey.honey(situation)
    at = _without_supers(situation, taken.supers_off)
    for_winter = winter.winter(at, supers=at.standing.set_up.supers)
    going = not is_shut and (for_winter.unite or queens.unite)
    room = _room(at, is_shut=is_shut, going=going)
    against_mites = (
        mites.MitePlan(Decision("mites"), None)
        if is_shut
        else mites.mites(at, supers=room.set_up.supers)
    )
    food = _food(at, room, for_winter, going=going)
    work = given(at, room.set_up, food.grams, food.sugar_fraction or SYRUP_FRACTION)
    crowding = swarm.swarm(at, food.tried, _as_it_is(at, room, food), is_shut=is_shut)
    spare, frames = (
        (Decision("nucs"), 0) if is_shut or going or queens.give_queen else nucs.nucs(at)
    )
    today = at.colonies.copy()
    work(today)
    decisions = (
        signs,
        _with_look(situation, crowding.decision, is_shut=is_shut),
        queens.decision if not signs.jobs else Decision("queen"),
        taken.decision,
        room.decision,
        _spacing(situation),
        against_mites.decision,
        food.decision,
        for_winter.decision if not is_shut else replace(for_winter.decision, jobs=()),
        spare,
        visits.next_visit(at, today, keep_out=queens.keep_out),
    )
    return Plan(
        room,
        food,
        decisions,
        branches(at, room, food) if with_branches else (),
        Advised(
            set_up=room.set_up,
            grams=food.grams,
            sugar_fraction=food.sugar_fraction,
            treatment=against_mites.treatment,
            honey_kg=taken.honey_kg,
            supers_off=taken.supers_off,
            give_queen=crowding.give_queen or (queens.give_queen and not is_shut and not going),
            divide=crowding.divide and not going,
            requeen=queens.requeen and not (is_shut or going or crowding.divide),
            unite=going,
            brood_frames_to_give=frames,
        ),
        food.tried.chances,
    )


def _as_it_is(situation: Situation, room: Space, food: Portion) -> Tried:
    """Try doing nothing, unless that was tried with the portions already."""
    if room.set_up == situation.standing.set_up:
        return food.without
    (tried,) = try_all(situation, [given(situation, situation.standing.set_up, 0, SYRUP_FRACTION)])
    return tried


def _room(situation: Situation, *, is_shut: bool, going: bool) -> Space:
    if is_shut:
        return left_alone(situation)
    if going or situation.on.month in COLD_MONTHS:
        return unopened(situation)
    return space(situation)


def _without_supers(situation: Situation, off: int) -> Situation:
    if not off:
        return situation
    now = situation.standing.set_up
    left = now.supers - off
    return situation.with_set_up(
        now.model_copy(update={"supers": left, "excluder": now.excluder and left > 0})
    )


def _food(
    situation: Situation, room: Space, for_winter: winter.WinterPlan, *, going: bool
) -> Portion:
    if going:
        return portion(situation, room.set_up, fixed=(0, AUTUMN_FRACTION, "syrup"))
    if for_winter.syrup_kg > 0.0:
        grams = int(round(for_winter.syrup_kg * 1000.0, -2))
        return portion(situation, room.set_up, fixed=(grams, AUTUMN_FRACTION, "syrup"))
    if for_winter.fondant_kg > 0.0:
        grams = min(FONDANT_MOST_G, int(round(for_winter.fondant_kg * 1000.0, -2)))
        return portion(situation, room.set_up, fixed=(grams, FONDANT_FRACTION, "fondant"))
    if situation.on.month in {10, 11, 12, 1}:
        return portion(situation, room.set_up, fixed=(0, AUTUMN_FRACTION, "syrup"))
    return portion(situation, room.set_up)


def _with_look(situation: Situation, crowding: Decision, *, is_shut: bool) -> Decision:
    """Put what every opened colony is looked at for before its swarm cells."""
    if is_shut or situation.on.month in COLD_MONTHS:
        return crowding
    look = "Look for eggs, stores, room, and any sign of disease."
    return replace(crowding, jobs=(look, *crowding.jobs))


def _spacing(situation: Situation) -> Decision:
    """Say when the frames stand too wide, and the cure."""
    set_up = situation.standing.set_up
    if situation.pitch_mm is None:
        return Decision("room and warmth")
    notice = spacing_notice(
        situation.standing.hive, set_up.frames, situation.pitch_mm, set_up.dummy_boards
    )
    return Decision("room and warmth", (notice,) if notice else ())
