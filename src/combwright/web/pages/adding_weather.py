"""Weather into the book: a file, or the forecast of an open service for a yard."""

from typing import Annotated

from fastapi import APIRouter, File, Form, Request, UploadFile
from starlette.responses import Response

from combwright.services.weather.kept_weather import add_file, add_forecast
from combwright.sources.forecast import Forecast
from combwright.sources.forecast import forecast as fetched
from combwright.terms.errors import SourceError
from combwright.web.desk import AtDesk
from combwright.web.showing import page
from combwright.web.uploads import on_disk

router = APIRouter(prefix="/weather", include_in_schema=False)


@router.post("/add")
def add(
    at: AtDesk,
    request: Request,
    file: Annotated[UploadFile, File()],
    yard: Annotated[str, Form(max_length=60)] = "",
) -> Response:
    """Keep the weather of a file for a yard."""
    with on_disk(file.file.read(), file, "weather.csv") as path:
        kept = add_file(at.book, path, None, yard or None, "Dublin Airport")
    return page(request, "weather_kept.html", kept=kept)


@router.post("/forecast")
def forecast(
    at: AtDesk,
    request: Request,
    yard: Annotated[str, Form(max_length=60)] = "",
    contact: Annotated[str, Form(max_length=200)] = "",
) -> Response:
    """Fetch the forecast of a yard; the last one is used, with its age, where there is none."""
    if not at.may_fetch:
        raise SourceError(
            "Fetching forecasts is switched off on this machine.", remedy="Add a file of weather."
        )
    now = at.clock()
    folder = at.book.beside("forecasts")
    folder.mkdir(mode=0o700, exist_ok=True)

    def fetch(latitude: float, longitude: float) -> Forecast:
        name = folder / f"{latitude:.2f} {longitude:.2f}.json"
        return fetched(latitude, longitude, contact=contact, cache=name, now=now)

    kept = add_forecast(at.book, yard, fetch, now)
    return page(request, "weather_kept.html", kept=kept)
