"""The round of a day: the sheet in working order, with what was noted so far."""

from collections.abc import Mapping
from dataclasses import asdict
from datetime import date, timedelta
from typing import Annotated, Final

from fastapi import APIRouter, Query, Request
from starlette.responses import JSONResponse, RedirectResponse, Response

from combwright.records.store.contents import Contents
from combwright.services.rounds.from_book import NOTICES
from combwright.services.rounds.kept_rounds import of_yard
from combwright.services.rounds.planned_note import as_advised
from combwright.services.rounds.syrup_left import syrup_left
from combwright.services.rounds.to_say_more import to_say_more
from combwright.services.weather.day_weather import day_weather
from combwright.terms.entries import Visit, Yard
from combwright.web.desk import AtDesk, Desk
from combwright.web.showing import page
from combwright.web.wait import worked_out

router = APIRouter(include_in_schema=False)

WHOLE: Final = 24  # colonies on one page; more are shown yard by yard
Days = Annotated[int, Query(ge=1, le=60)]


@router.get("/")
@router.get("/round")
def newest(at: AtDesk, request: Request, on: date | None = None) -> Response:
    """Lead to the round of a day, to the one that comes next, or to where a book begins."""
    if not at.book.now().living:
        return RedirectResponse("/begin", status_code=303)
    wanted = on or at.day_meant(request)
    return RedirectResponse(f"/round/{wanted}", status_code=303)


@router.get("/round/{on}")
def show(at: AtDesk, request: Request, on: date, yard: str = "", days: Days = 7) -> Response:
    """Show the round, or how far working it out has come."""
    book = at.book.now()
    if not book.living or on < book.entries[0].on:
        return page(request, "empty.html", on=on, first=first_day(book))
    sheet = worked_out(at, on, days)
    noted = {each.colony for each in book.on(on) if isinstance(each, Visit)}
    yards = [(name, [each for each in sheet.colonies if each.yard == name]) for name in sheet.yards]
    chosen = yard or ("" if len(sheet.colonies) <= WHOLE else None)
    shown = sheet if not chosen else of_yard(sheet, chosen)
    answer = page(
        request,
        "round.html",
        sheet=shown,
        wanted=to_say_more(shown, book.entries),
        to_put_right=[each for each in sheet.notices if each not in NOTICES],
        usual=NOTICES,
        yards=yards,
        yard=yard,
        is_overview=chosen is None,
        noted=noted,
        planned=lambda each: as_advised(each, on),
        left=syrup_left(shown, book.on(on)),
        weather=weather_told(at, book.yards, on, shown.yards),
        on=on,
        days=days,
        before=on - timedelta(days=1),
        after=on + timedelta(days=1),
        today=at.today,
    )
    at.remember_day(answer, on)
    return answer


def first_day(book: Contents) -> date | None:
    """Give the day of the first note, if there is one."""
    return book.entries[0].on if book.entries else None


def weather_told(at: Desk, known: Mapping[str, Yard], on: date, yards: list[str]) -> list[str]:
    """Say the weather of the day once for all yards that share it."""
    mine = {name: known[name] for name in yards if name in known}
    told: dict[str, list[str]] = {}
    for each in day_weather(at.book, mine, on):
        told.setdefault(each.in_words, []).append(each.yard)
    return [
        f"{', '.join(names) if len(told) > 1 else 'Weather'}: {words}."
        for words, names in told.items()
    ]


@router.get("/round/{on}/progress")
def progress(at: AtDesk, on: date, days: Days = 7) -> Response:
    """Tell how far the working out of a round is."""
    working = at.rounds.begin(on, days)
    step = working.step
    return JSONResponse({**asdict(step), "counted": step.counted, "ready": working.future.done()})
