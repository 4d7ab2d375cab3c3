"""One colony: how it stands, why it is advised so, what lies ahead, what if."""

from collections.abc import Mapping, Sequence
from datetime import date
from functools import lru_cache
from typing import Annotated, Final

from fastapi import APIRouter, Query, Request
from markupsafe import Markup
from starlette.responses import Response

from combwright.figures.bands import Course, Seen, season_chart
from combwright.planning.sheet import ColonySheet
from combwright.records.store.book_handle import Book
from combwright.services.beliefs.colony_history import TITLES, ColonyHistory, colony_history
from combwright.services.beliefs.score import ScoreLine, score_book
from combwright.services.book.entry_words import said, stands
from combwright.services.book.mending import mended
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
HARMS: Final = {"no room": "short of room", "sour": "soured syrup", "chilled": "chilled brood"}


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
        scores=_scores(at.book, name, day, mark),
    )


@lru_cache(maxsize=64)
def _history(
    book: Book, name: str, on: date, _mark: str
) -> tuple[ColonyHistory, list[tuple[Markup, Markup]]]:
    """Work it out and draw it, wide and narrow; once for as long as the notes before stand."""
    found = colony_history(book, name, on)
    return found, [
        (_chart(found, each, width=640, height=230), _chart(found, each, width=210, height=190))
        for each in CHARTS
    ]


@lru_cache(maxsize=64)
def _scores(book: Book, name: str, on: date, _mark: str) -> tuple[ScoreLine, ...]:
    try:
        return score_book(book, on, colony=name).together
    except NotFoundError:
        return ()  # the second visit is the first with a forecast


def _chart(found: ColonyHistory, each: str, *, width: int, height: int) -> Markup:
    title, unit = TITLES[each]
    series = found.series[each]
    drawn = season_chart(
        {"expected": Course(found.days, series.low, series.mid, series.high)},
        title=title,
        unit=unit,
        seen=[Seen(day, value) for day, value in found.notes.get(each, ())],
        today=found.on,
        width=width,
        height=height,
    )
    return Markup(drawn)  # noqa: S704  (our own drawing)


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
            compared = whatif(at.book, name, day, idea)
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
        problem=problem,
        harms=HARMS,
    )


def differing_first(ways: Sequence[Mapping[str, object]]) -> list[str]:
    """Put what the keeper's idea changes before what it leaves as the plan has it."""
    if not ways:
        return []
    return sorted(ways[0], key=lambda name: ways[0][name] == ways[1][name])


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
        mended=mended(book.history, name),
        part=part,
        on=newest.on if newest else at.day_meant(request),
    )
