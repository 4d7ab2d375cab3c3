"""One colony: how it stands, why it is advised so, what lies ahead, what if."""

from collections.abc import Mapping, Sequence
from datetime import date
from functools import lru_cache
from typing import Annotated, Final

from fastapi import APIRouter, Query, Request
from markupsafe import Markup
from starlette.responses import Response

from combwright.figures.bands import Course, season_chart
from combwright.planning.sheet import ColonySheet
from combwright.records.store.book_handle import Book
from combwright.services.beliefs.branching import Series
from combwright.services.beliefs.colony_history import TITLES, ColonyHistory, colony_history
from combwright.services.beliefs.history_chart import history_chart, signs_used
from combwright.services.beliefs.score import ScoreLine, score_book
from combwright.services.book.entry_words import said, stands
from combwright.services.book.mending import mended
from combwright.services.people.sharing import whose_notes
from combwright.services.rounds.whatif import Compared, Idea, whatif
from combwright.services.rounds.why import LESSONS
from combwright.terms.errors import CombwrightError, NotFoundError
from combwright.web.addresses import ColonyName
from combwright.web.desk import AtDesk, Desk
from combwright.web.pages.note import of_colony
from combwright.web.showing import page
from combwright.web.wait import worked_out

router = APIRouter(include_in_schema=False)

SHOWN: Final = 60  # entries on the page; the whole history is in the export
CHARTS: Final = ("frames_of_bees", "frames_of_brood", "stores_kg", "mites")
DRAWN: Final = 4  # quantities of a what if
SIZES: Final = ((640, 230), (210, 190))  # of a chart on a desk and on a phone [px]
BESIDE_SLIDERS: Final = ((420, 200), SIZES[1])


def advised(at: Desk, request: Request, name: str, on: date | None) -> tuple[date, ColonySheet]:
    """Give a colony's part of the round of a day, or of the one that comes next."""
    book = at.book.now()
    book.colony(name)
    day = on or at.day_meant(request)
    return day, of_colony(worked_out(at, day), name)


@router.get("/colony/{name:path}/why")
def why(at: AtDesk, request: Request, name: ColonyName, on: date | None = None) -> Response:
    """Tell the chain of decisions."""
    day, part = advised(at, request, name, on)
    return page(request, "colony_why.html", name=name, part=part, on=day, lessons=LESSONS)


@router.get("/colony/{name:path}/ahead")
def ahead(at: AtDesk, request: Request, name: ColonyName, on: date | None = None) -> Response:
    """Show past forecasts beside what was seen, and the weeks ahead."""
    book = at.book.now()
    book.colony(name)
    day = on or at.day_meant(request)
    mark = book.mark(before=day)
    found, charts = _history(at.book, name, day, mark)
    return page(
        request,
        "colony_ahead.html",
        name=name,
        on=day,
        found=found,
        charts=charts,
        signs=signs_used(found),
        scores=_scores(at.book, name, day, mark),
    )


@lru_cache(maxsize=64)
def _history(
    book: Book, name: str, on: date, _mark: str
) -> tuple[ColonyHistory, list[tuple[Markup, ...]]]:
    """Work it out and draw it, wide and narrow; once for as long as the notes before stand."""
    found = colony_history(book, name, on)
    return found, [
        tuple(
            Markup(history_chart(found, each, width=width, height=height))  # noqa: S704 - ours
            for width, height in SIZES
        )
        for each in CHARTS
    ]


@lru_cache(maxsize=64)
def _scores(book: Book, name: str, on: date, _mark: str) -> tuple[ScoreLine, ...]:
    try:
        return score_book(book, on, colony=name).together
    except NotFoundError:
        return ()  # the second visit is the first with a forecast


Grams = Annotated[int | None, Query(ge=0, le=20000)]
Count = Annotated[int | None, Query(ge=0, le=36)]
Few = Annotated[int | None, Query(ge=0, le=8)]


@router.get("/colony/{name:path}/what-if")
def what_if(
    at: AtDesk,
    request: Request,
    name: ColonyName,
    on: date | None = None,
    feed_g: Grams = None,
    frames: Count = None,
    dummy_boards: Annotated[int | None, Query(ge=0, le=2)] = None,
    supers: Few = None,
) -> Response:
    """Set the keeper's idea beside the plan, under the same luck."""
    day, part = advised(at, request, name, on)
    idea = Idea(feed_g=feed_g, frames=frames, dummy_boards=dummy_boards, supers=supers)
    compared: Compared | None = None
    problem = ""
    if idea != Idea():
        try:
            compared = whatif(at.book, name, day, idea, with_courses=True)
        except CombwrightError as error:
            problem = str(error)
    ways = compared.outcomes if compared else ()
    return page(
        request,
        "what_if.html",
        status_code=422 if problem else 200,
        name=name,
        on=day,
        part=part,
        idea=chosen(part, idea),
        plan=chosen(part, Idea()),
        rows=differing_first([each.expected for each in ways]),
        harms_in_order=differing_first([each.chances for each in ways]),
        compared=compared,
        charts=drawn_ways(compared) if compared else (),
        problem=problem,
    )


def differing_first(ways: Sequence[Mapping[str, object]]) -> list[str]:
    """Put what the keeper's idea changes before what it leaves as the plan has it."""
    if not ways:
        return []
    return sorted(ways[0], key=lambda name: ways[0][name] == ways[1][name])


def drawn_ways(compared: Compared) -> list[tuple[Markup, ...]]:
    """Draw plan and idea as two bands, wide and narrow: first what the idea changes most."""
    most = sorted(compared.courses, key=lambda name: -parted(compared.courses[name]))
    return [
        tuple(
            Markup(  # noqa: S704 - ours
                season_chart(
                    {
                        way: Course(compared.days, each.low, each.mid, each.high)
                        for way, each in compared.courses[name].items()
                    },
                    title=TITLES[name][0],
                    unit=TITLES[name][1],
                    width=width,
                    height=height,
                )
            )
            for width, height in BESIDE_SLIDERS
        )
        for name in most[:DRAWN]
    ]


def parted(courses: Mapping[str, Series]) -> float:
    """Tell how far the middles of two courses end apart, in widths of their bands."""
    plan, idea = courses.values()
    wide = max(plan.high[-1] - plan.low[-1], idea.high[-1] - idea.low[-1])
    return abs(plan.mid[-1] - idea.mid[-1]) / wide if wide else 0.0


def chosen(part: ColonySheet, idea: Idea) -> dict[str, int]:
    """Where the sliders stand: at the idea, or at the plan."""
    planned = {
        "feed_g": part.portion.syrup_g,
        "frames": part.set_up.frames,
        "dummy_boards": part.set_up.dummy_boards,
        "supers": part.set_up.supers,
    }
    asked = {name: getattr(idea, name) for name in planned}
    return {name: planned[name] if asked[name] is None else asked[name] for name in planned}


# last, for every other address of a colony begins as this one does
@router.get("/colony/{name:path}")
def show(at: AtDesk, request: Request, name: ColonyName) -> Response:
    """Show how a colony stands and what was noted."""
    book = at.book.now()
    standing = book.colony(name)
    entries = book.of(name)[::-1]
    newest = at.rounds.newest()
    part = next((each for each in newest.colonies if each.colony == name), None) if newest else None
    return page(
        request,
        "colony.html",
        name=name,
        standing=standing,
        stands=stands(standing),
        entries=[(each, said(each)) for each in entries[:SHOWN]],
        more=max(0, len(entries) - SHOWN),
        photos=at.photos.among([each.id for each in entries]),
        authors=whose_notes(at.book, [each.id for each in entries[:SHOWN]]),
        mended=mended(book.history, name),
        part=part,
        on=newest.on if newest else at.day_meant(request),
    )
