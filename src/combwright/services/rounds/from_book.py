"""The round of a day: from the book to the sheet."""

from collections.abc import Mapping, Sequence
from datetime import date, timedelta
from functools import partial
from typing import Final

from combwright import __version__
from combwright.planning.at_every_colony import at_any
from combwright.planning.matching import SpareQueen, matched, told
from combwright.planning.sheet import ColonySheet, RoundSheet
from combwright.planning.short_day import short_day
from combwright.planning.supplies import bench, load
from combwright.records.replay.colonies import standings
from combwright.records.replay.first_day import known_on
from combwright.records.replay.known_queens import known_batches, known_queens
from combwright.records.store.book_handle import Book
from combwright.services.beliefs.unknown_colonies import unknown_colony_notices
from combwright.services.beliefs.workers import for_each, or_left_out
from combwright.services.progress import PLANNING, READY, Progress, Step, silent
from combwright.services.rounds.kept_plans import KeptPlans, plans_folder, rests_on
from combwright.services.rounds.old_notes import too_old_notices
from combwright.services.rounds.on_the_way import OnTheWay, all_on_the_way, one_on_the_way, sheet_of
from combwright.services.rounds.own_minutes import own_minutes
from combwright.services.rounds.second_programs import SecondPrograms
from combwright.services.rounds.situations import (
    SYRUP_FRACTION,
    AskedRound,
    Situations,
    situations_of,
)
from combwright.services.supply.batch_days import due
from combwright.services.unswept import unswept
from combwright.services.weather.known_places import unknown_places
from combwright.simulation.ahead.roll import make_ready
from combwright.terms.dated import dated
from combwright.terms.errors import ClashError, NotFoundError, OutOfRangeError

NOTICES: Final = (
    "Stings can kill: keep a telephone and any prescribed adrenaline at hand.",
    "With a known allergy never work alone.",
    "Light the smoker away from dry growth and put it out with water.",
    "Full boxes weigh 14 to 28 kg: lift with the legs, or with two.",
    "Combwright advises; you, the label, the inspector and the vet decide.",
)
LONGEST_WAIT: Final = 60  # days until the next visit
MEMBERS: Final = (20, 5000)
MOST_MINUTES: Final = 1440.0  # a day


def round_sheet(
    book: Book,
    on: date,
    *,
    yard: str | None = None,
    days: int = 7,
    members: int = 200,
    seed: int = 1,
    minutes: float | None = None,
    progress: Progress = silent,
    kept: KeptPlans | None = None,
) -> RoundSheet:
    """Plan the round of a day in one yard or all; notes of that day itself are not yet taken in.

    The same book, day and seed give the same sheet. With fewer ``minutes`` than it takes, what
    costs least is left for another day. ``kept`` are plans made before, of which those are taken
    that would be the same again.
    """
    asked = AskedRound(on, yard, days, members, seed)
    _check(asked)
    if minutes is not None and not 0.0 < minutes <= MOST_MINUTES:
        raise OutOfRangeError(
            f"{minutes:g} minutes are no time for a round.",
            remedy=f"Give more than 0 and at most {MOST_MINUTES:.0f} minutes.",
        )
    _check_yard(book, asked)
    left_out: dict[str, str] = {}
    plans = KeptPlans(plans_folder()) if kept is None else kept
    with unswept():
        situations = situations_of(book, asked)
        _first_of_all(situations, progress, plans)
    with SecondPrograms(book, asked) as beside:
        ours = all_on_the_way(situations, progress, plans, left_out, beside)
        sheets = _sheets(ours, situations, progress, plans, left_out=left_out, beside=beside)
    if left_out and not ours:
        raise ClashError(" ".join(left_out.values()))
    if not ours:
        raise NotFoundError(
            f"No colony stands in {'yard ' + yard if yard else 'the book'} on {on.day} {on:%B %Y}.",
            remedy="Ask for another day or yard; “combwright book export” shows what is there.",
        )
    sheet = _sheet(ours, sheets, situations, left_out)
    if minutes is None:
        return sheet
    return short_day(sheet, minutes, own_minutes(situations.entries, on))


def _check(asked: AskedRound) -> None:
    if not 1 <= asked.days <= LONGEST_WAIT:
        raise OutOfRangeError(
            f"{asked.days} days until the next visit cannot be planned.",
            remedy=f"Give 1 to {LONGEST_WAIT} days.",
        )
    fewest, most = MEMBERS
    if not fewest <= asked.members <= most:
        raise OutOfRangeError(
            f"{asked.members} simulated colonies for each real one are too few or too many.",
            remedy=f"Give {fewest} to {most}; 200 is usual.",
        )
    if asked.seed < 0:
        raise OutOfRangeError(
            f"A seed cannot be negative, as {asked.seed} is.", remedy="Give 0 or more."
        )


def _check_yard(book: Book, asked: AskedRound) -> None:
    """Refuse a yard in which nothing stands before any colony is followed."""
    if asked.yard is None:
        return
    now = book.now()
    known = standings(known_on(now.entries, asked.on), now.kit, asked.on - timedelta(days=1))
    yards = sorted({each.yard for each in known.values() if each.ended is None})
    if asked.yard not in yards:
        raise NotFoundError(
            f"There is no yard “{asked.yard}” with colonies in the book on {dated(asked.on)}.",
            remedy=f"There are: {', '.join(yards)}." if yards else "",
        )


def _first_of_all(situations: Situations, progress: Progress, kept: KeptPlans) -> None:
    """Plan where the walk begins before all else, so that its sheet can be read meanwhile."""
    if progress is silent:
        return
    progress(Step(READY))
    make_ready()
    asked = situations.asked
    for name in situations.replay.colonies:
        one = or_left_out(
            name, partial(one_on_the_way, name, rests_on(name, situations), situations, kept), {}
        )
        if one is None or asked.yard not in {None, one.yard}:
            continue
        if not any(_last_of_all(one, situations)):
            make = partial(sheet_of, one, 1, situations, kept)
            progress(Step(READY, part=or_left_out(name, make, {})))
            return


def _sheets(
    ours: Sequence[OnTheWay],
    situations: Situations,
    progress: Progress,
    kept: KeptPlans,
    *,
    left_out: dict[str, str],
    beside: SecondPrograms,
) -> list[ColonySheet]:
    """Give the sheets of the colonies on the way, in the order of the walk."""
    yards = _yards(ours, situations)
    in_order = sorted(
        ours, key=lambda each: (yards.index(each.yard), *_last_of_all(each, situations))
    )

    def planned_one(numbered: tuple[int, OnTheWay]) -> ColonySheet | None:
        order, one = numbered
        make = partial(sheet_of, one, order, situations, kept, beside)
        return or_left_out(one.colony, make, left_out)

    def is_planned(numbered: tuple[int, OnTheWay]) -> bool:
        return isinstance(numbered[1].known, ColonySheet)

    numbered = list(enumerate(in_order, 1))
    planned = for_each(
        planned_one,
        numbered,
        doing=PLANNING,
        progress=progress,
        as_they_come=True,
        at_hand=is_planned,
    )
    return [
        each.model_copy(update={"last_visit": situations.asked.on})
        if each.colony in situations.newcomers
        else each
        for each in planned
        if each is not None
    ]


def _yards(ours: Sequence[OnTheWay], situations: Situations) -> list[str]:
    """Give the yards in the order of driving."""
    return sorted(dict.fromkeys(each.yard for each in ours), key=situations.driven_to)


def _sheet(
    ours: Sequence[OnTheWay],
    done: Sequence[ColonySheet],
    situations: Situations,
    left_out: Mapping[str, str],
) -> RoundSheet:
    asked, yards = situations.asked, _yards(ours, situations)
    frames = {each.colony: each.frame_mm for each in ours}
    handed = matched(done, frames, _spare_queens(situations))
    return RoundSheet(
        on=asked.on,
        version=__version__,
        seed=asked.seed,
        weather=situations.around.described(),
        yards=yards,
        colonies=told(done, handed),
        bench=bench(done, SYRUP_FRACTION, handed, situations.on_shelf),
        load=load(done, yards, SYRUP_FRACTION, handed),
        handed=handed,
        at_any_colony=at_any(asked.on, done),
        on_shelf=situations.on_shelf,
        notices=[
            *left_out.values(),
            *too_old_notices(situations.too_old),
            *unknown_places(situations.yards),
            *unknown_colony_notices(situations),
            *due(situations.entries, asked.on, asked.on + timedelta(days=asked.days)),
            *NOTICES,
        ],
    )


def _spare_queens(situations: Situations) -> list[SpareQueen]:
    """Name the queens that lay and head no colony."""
    before = [each for each in situations.entries if each.on < situations.asked.on]
    batches = known_batches(before)
    found = []
    for queen in known_queens(before).values():
        raised = batches.get(queen.batch or "")
        if queen.state == "laying" and queen.colony is None:
            found.append(SpareQueen(queen.queen, raised.colony if raised else None))
    return found


def _last_of_all(one: OnTheWay, situations: Situations) -> tuple[bool, bool]:
    """Put the sick last, and before them those that the book asks about: nothing is carried on."""
    return situations.is_suspected(one.colony), one.is_asked_about
