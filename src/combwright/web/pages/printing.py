"""The round as PDF, one tap away from every page that prints."""

from datetime import date
from typing import Annotated, Literal

from fastapi import APIRouter, Query, Request
from starlette.responses import Response

from combwright.paper.pocket_card import card_pdf
from combwright.paper.round_sheet import round_pdf
from combwright.planning.short_day import short_day
from combwright.services.rounds.at_a_glance import glance
from combwright.services.rounds.kept_rounds import of_yard
from combwright.services.rounds.own_minutes import own_minutes
from combwright.services.weather.day_weather import weather_lines
from combwright.web.desk import AtDesk
from combwright.web.pages.sheet import Days
from combwright.web.showing import page
from combwright.web.wait import worked_out

router = APIRouter(include_in_schema=False)
Papers = Annotated[Literal["a4", "a5", "large", "card"], Query()]
Minutes = Annotated[float | None, Query(gt=0, le=1440)]


@router.get("/round/{on}/sheet.pdf")
def as_pdf(
    at: AtDesk,
    on: date,
    paper: Papers = "a4",
    yard: str = "",
    days: Days = 7,
    minutes: Minutes = None,
) -> Response:
    """Give the round as PDF: the sheet in one of its sizes, or the card of a yard.

    With fewer ``minutes`` than it takes, it says what to leave for another day.
    """
    sheet = worked_out(at, on, days)
    shown = of_yard(sheet, yard) if yard else sheet
    book = at.book.now()
    weather = weather_lines(at.book, book.yards, on, shown.yards)
    own = own_minutes(book.entries, on)
    if minutes is not None:
        shown = short_day(shown, minutes, own)
    if paper == "card":
        lines = {each.colony: glance(each, own).line for each in shown.colonies}
        content = card_pdf(shown, lines, day_weather=weather, words=book.place_word)
    else:
        content = round_pdf(shown, paper=paper, day_weather=weather, words=book.place_word)
    name = f'inline; filename="round-{on}-{paper}.pdf"'
    return Response(content, media_type="application/pdf", headers={"Content-Disposition": name})


@router.get("/round/{on}/papers")
def papers(at: AtDesk, request: Request, on: date, days: Days = 7) -> Response:
    """List the papers of a round."""
    yards = worked_out(at, on, days).yards
    return page(request, "papers.html", on=on, days=days, yards=yards)
