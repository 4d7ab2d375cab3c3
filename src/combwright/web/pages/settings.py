"""Settings: weather, files, calendar, theme, and who may come in."""

from dataclasses import asdict
from typing import Final

from fastapi import APIRouter, Request
from markupsafe import Markup
from starlette.responses import Response

from combwright.services.book.hive_form import counting_on
from combwright.services.rounds.price_list import price_list
from combwright.services.rounds.situations import limits_on
from combwright.services.weather.kept_weather import weather_places
from combwright.services.weather.known_places import climate_of
from combwright.services.worth import worth_on
from combwright.web.desk import AtDesk
from combwright.web.showing import page

router = APIRouter(include_in_schema=False)
ON_A_DESK: Final = 560  # px, without the axis
ON_A_PHONE: Final = 250


@router.get("/settings")
def show(at: AtDesk, request: Request) -> Response:
    """Show the settings."""
    book = at.book.now()
    return page(
        request,
        "settings.html",
        yards=book.yards,
        places=weather_places(at.book),
        today=at.today,
        limits=asdict(limits_on(book.entries, at.today)),
        prices=price_list(book.entries, at.today),
        place=f"“{book.place_word.word}”",
        counting=counting_on(book.entries, at.today),
        book=at.book.name,
        told=at.nightly.told,
        feed=f"{request.base_url}calendar/{at.access.calendar_key}.ics",
    )


@router.get("/worth")
def worth(at: AtDesk, request: Request) -> Response:
    """Show what things are worth by week, at the keeper's prices."""
    book = at.book.now()
    climate = climate_of(next(iter(book.yards.values()), None))
    found = worth_on(book.entries, at.today, climate.name)
    charts = [Markup(found.chart(width)) for width in (ON_A_DESK, ON_A_PHONE)]  # noqa: S704 - ours
    return page(request, "worth.html", worth=found, charts=charts)


@router.get("/more")
def more(request: Request) -> Response:
    """List the pages that are not in the line of pages."""
    return page(request, "more.html")
