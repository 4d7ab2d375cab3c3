"""The colonies on the way of a round: with the plan that is kept, or all that it takes to make one.

What rests on nothing new is not even followed: a new note costs one colony.
"""

from dataclasses import dataclass

from combwright.belief.following.replay import Followed
from combwright.planning.round import colony_sheet
from combwright.planning.sheet import ColonySheet
from combwright.services.beliefs.workers import for_each, or_left_out
from combwright.services.progress import READING, READY, Progress, Step
from combwright.services.rounds.kept_plans import KeptPlans, Planned, rests_on
from combwright.services.rounds.situations import Situations
from combwright.simulation.ahead.roll import make_ready
from combwright.terms.errors import NotFoundError


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
    situations: Situations, progress: Progress, kept: KeptPlans, left_out: dict[str, str]
) -> list[OnTheWay]:
    """Give every colony that stands in the yard asked for; those without a plan are followed."""
    progress(Step(READY))
    make_ready()

    def one(name: str) -> OnTheWay | None:
        return or_left_out(name, lambda: one_on_the_way(name, situations, kept), left_out)

    found = for_each(one, situations.replay.colonies, doing=READING, progress=progress)
    standing = [each for each in found if each is not None]
    asked = situations.asked
    if asked.yard is None:
        return standing
    yards = sorted({each.yard for each in standing})
    if asked.yard not in yards:
        raise NotFoundError(
            f"There is no yard “{asked.yard}” with colonies in the book.",
            remedy=f"There are: {', '.join(yards)}.",
        )
    return [each for each in standing if each.yard == asked.yard]


def one_on_the_way(colony: str, situations: Situations, kept: KeptPlans) -> OnTheWay | None:
    """Give a colony with its plan or belief, or nothing if it does not stand."""
    key = rests_on(colony, situations)
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


def sheet_of(one: OnTheWay, order: int, situations: Situations, kept: KeptPlans) -> ColonySheet:
    """Give the sheet of a colony, made now where none is kept."""
    if isinstance(one.known, ColonySheet):
        return one.known.model_copy(update={"order": order})
    sheet = colony_sheet(one.known, situations.of(one.known), order)
    planned = Planned(sheet=sheet, is_asked_about=one.is_asked_about, frame_mm=one.frame_mm)
    kept.put(one.key, planned)
    return sheet
