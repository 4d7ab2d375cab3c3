"""The round of a day: the sheet in working order, with what was noted so far."""

from datetime import date, timedelta
from typing import Annotated, Final, Literal

from fastapi import APIRouter, Query, Request
from starlette.responses import JSONResponse, RedirectResponse, Response

from combwright.planning.at_every_colony import everywhere
from combwright.services.rounds.at_a_glance import glance, minutes_in_words
from combwright.services.rounds.feed_left import feed_left
from combwright.services.rounds.from_book import NOTICES
from combwright.services.rounds.kept_rounds import of_yard
from combwright.services.rounds.own_minutes import own_minutes
from combwright.services.rounds.to_say_more import to_say_more
from combwright.services.weather.day_weather import weather_lines
from combwright.terms.entries import Visit
from combwright.web.desk import AtDesk
from combwright.web.showing import page
from combwright.web.wait import lines_ready, worked_out

router = APIRouter(include_in_schema=False)

CARRIED: Final = 40  # hives whose pages a phone takes along; of more, it does so yard by yard
Days = Annotated[int, Query(ge=1, le=60)]


@router.get("/")
@router.get("/round")
def newest(
    at: AtDesk, request: Request, on: Annotated[date | Literal[""] | None, Query()] = None
) -> Response:
    """Lead to the round of a day, to the one that comes next, or to where a book begins."""
    if not at.book.now().living:
        return RedirectResponse("/begin", status_code=303)
    wanted = on or at.day_meant(request)
    return RedirectResponse(f"/round/{wanted}", status_code=303)


@router.get("/round/{on}")
def show(at: AtDesk, request: Request, on: date, yard: str = "", days: Days = 7) -> Response:
    """Show the round, or how far working it out has come."""
    book = at.book.now()
    sheet = worked_out(at, on, days)
    noted = {each.colony for each in book.on(on) if isinstance(each, Visit)}
    own = own_minutes(book.entries, on)
    rows = [(each, glance(each, own)) for each in sheet.colonies]
    yards = [(name, [row for row in rows if row[0].yard == name]) for name in sheet.yards]
    shown = of_yard(sheet, yard) if yard else sheet
    answer = page(
        request,
        "round.html",
        sheet=shown,
        wanted=to_say_more(shown, book.entries),
        to_put_right=[
            *at.nightly.told,
            *(each for each in sheet.notices if each not in NOTICES),
        ],
        usual=NOTICES,
        yards=yards,
        yard=yard,
        said=everywhere(sheet),
        minutes=lambda rows: minutes_in_words([its for _, its in rows]),
        carries=len(shown.colonies) <= CARRIED,
        noted=noted,
        left=feed_left(shown, book.on(on)),
        weather=weather_lines(at.book, book.yards, on, shown.yards),
        on=on,
        days=days,
        before=on - timedelta(days=1),
        after=on + timedelta(days=1),
        today=at.today,
    )
    at.remember_day(request, answer, on)
    return answer


@router.get("/round/{on}/found")
def found(at: AtDesk, request: Request, on: date, days: Days = 7) -> Response:
    """Show what to do where something else is found, which is the same at any colony."""
    branches = everywhere(worked_out(at, on, days)).branches
    return page(request, "found.html", on=on, branches=branches)


@router.get("/key")
def what_patterns_mean(request: Request) -> Response:
    """Show the key to the comb strip."""
    return page(request, "key.html")


@router.get("/round/{on}/progress")
def progress(at: AtDesk, on: date, days: Days = 7) -> Response:
    """Tell how far the working out of a round is."""
    working = at.rounds.begin(on, days)
    step, ready = working.step, working.future.done()
    told = {"doing": step.doing, "done": step.done, "total": step.total, "counted": step.counted}
    planned = [] if ready else lines_ready(at, on, days)
    return JSONResponse({**told, "ready": ready, "planned": planned})
