"""The colonies on the way of a round: with the plan that is kept, or all that it takes to make one.

What rests on nothing new is not even followed: a new note costs one colony.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial

from combwright.belief.following.replay import Followed
from combwright.belief.sharing.pooling import Moments
from combwright.planning.round import colony_sheet
from combwright.planning.sheet import ColonySheet
from combwright.services.beliefs.neighbours import Lessons
from combwright.services.beliefs.workers import for_each, or_left_out
from combwright.services.progress import LEARNING, READING, READY, Progress, Step
from combwright.services.rounds.kept_plans import KeptPlans, Planned, rests_on
from combwright.services.rounds.second_programs import LESSON, SecondPrograms
from combwright.services.rounds.situations import Situations
from combwright.simulation.ahead.roll import make_ready


@dataclass(frozen=True)
class OnTheWay:
    """A colony on the way: its plan where one is kept, else the belief to plan from.

    ``frame_mm`` is the size of the frames that it takes [mm, mm]: top bar and depth.
    """

    colony: str
    yard: str
    key: str
    is_asked_about: bool
    frame_mm: tuple[float, float]
    known: ColonySheet | Followed


def all_on_the_way(
    situations: Situations,
    progress: Progress,
    kept: KeptPlans,
    left_out: dict[str, str],
    beside: SecondPrograms,
) -> list[OnTheWay]:
    """Give every colony that stands in the yard asked for; those without a plan are followed."""
    progress(Step(READY))
    make_ready()
    if isinstance(situations.replay.pooled, Lessons):
        situations.replay.pooled.learn(partial(_taught, progress, beside))
    names = situations.replay.colonies
    keys = {name: rests_on(name, situations) for name in names}
    at_hand = {name for name, key in keys.items() if kept.get(key) is not None}
    # planning waits less for the interpreter than following does, so that twice as many are many;
    # by the time that all are followed it has come
    beside.come((len(names) - len(at_hand)) // 2)

    def one(name: str) -> OnTheWay | None:
        if name not in at_hand:
            beside.read(name)
        make = partial(one_on_the_way, name, keys[name], situations, kept)
        return or_left_out(name, make, left_out)

    found = for_each(one, names, doing=READING, progress=progress, at_hand=at_hand.__contains__)
    standing = [each for each in found if each is not None]
    asked = situations.asked
    return [each for each in standing if asked.yard in {None, each.yard}]


def _taught(
    progress: Progress,
    beside: SecondPrograms,
    moments: Callable[[str], Moments],
    teachers: Sequence[str],
) -> list[Moments]:
    """Ask teachers for what they have to teach, side by side."""

    def one(name: str) -> Moments:
        beside.read(name, LESSON)
        return moments(name)

    beside.come(len(teachers))
    return for_each(one, teachers, doing=LEARNING, progress=progress) if teachers else []


def one_on_the_way(
    colony: str, key: str, situations: Situations, kept: KeptPlans
) -> OnTheWay | None:
    """Give a colony with its plan or belief, or nothing if it does not stand.

    ``key`` is the fingerprint of what its plan rests on.
    """
    known = kept.get(key)
    if known is not None:
        sheet = known.sheet
        if sheet is None:
            return None
        return OnTheWay(colony, sheet.yard, key, known.is_asked_about, known.frame_mm, sheet)
    followed = situations.replay.follow(colony, situations.asked.on)
    if followed is None or followed.has_ended:
        kept.put(key, Planned(sheet=None))
        return None
    frame = followed.standing.hive.frame
    return OnTheWay(
        colony,
        followed.yard,
        key,
        bool(followed.belief.questions),
        (frame.top_bar_mm, frame.depth_mm),
        followed,
    )


def sheet_of(
    one: OnTheWay,
    order: int,
    situations: Situations,
    kept: KeptPlans,
    beside: SecondPrograms | None = None,
) -> ColonySheet:
    """Give the sheet of a colony, made now where none is kept, if need be by a second program."""
    if isinstance(one.known, ColonySheet):
        return one.known.model_copy(update={"order": order})
    sheet = beside.plan(one.colony, one.key) if beside is not None else None
    if sheet is None:
        sheet = colony_sheet(one.known, situations.of(one.known), order)
    planned = Planned(sheet=sheet, is_asked_about=one.is_asked_about, frame_mm=one.frame_mm)
    kept.put(one.key, planned)
    return sheet.model_copy(update={"order": order})
