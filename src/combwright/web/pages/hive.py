"""One hive of a round: what to do first, then the rest; one tap to the next, and back."""

from datetime import date

from fastapi import APIRouter, Request
from starlette.responses import Response

from combwright.planning.at_every_colony import everywhere
from combwright.services.rounds.at_a_glance import glance
from combwright.services.rounds.own_minutes import own_minutes
from combwright.services.rounds.planned_note import as_advised
from combwright.services.weather.day_weather import TOO_COLD, is_too_cold
from combwright.terms.entries import Visit
from combwright.web.addresses import ColonyName
from combwright.web.desk import AtDesk
from combwright.web.pages.note import of_colony
from combwright.web.pages.sheet import Days
from combwright.web.showing import page
from combwright.web.wait import worked_out_for

router = APIRouter(include_in_schema=False)


@router.get("/round/{on}/hive/{colony:path}")
def show(at: AtDesk, request: Request, on: date, colony: ColonyName, days: Days = 7) -> Response:
    """Show one colony's part of the round, with its yard in working order beside it."""
    sheet = worked_out_for(at, on, days, colony)
    mine = of_colony(sheet, colony)
    book = at.book.now()
    own = own_minutes(book.entries, on)
    beside = [each for each in sheet.colonies if each.yard == mine.yard]
    place = sheet.colonies.index(mine)
    answer = page(
        request,
        "hive.html",
        on=on,
        days=days,
        each=mine,
        line=glance(mine, own).line,
        said=everywhere(sheet),
        beside=[(one, glance(one, own)) for one in beside],
        noted={one.colony for one in book.on(on) if isinstance(one, Visit)},
        planned=as_advised(mine, on),
        too_cold=TOO_COLD if is_too_cold(at.book, mine.yard, on) else "",
        before=sheet.colonies[place - 1].colony if place else None,
        after=sheet.colonies[place + 1].colony if place + 1 < len(sheet.colonies) else None,
    )
    at.remember_day(request, answer, on)
    return answer
