"""Notes found again by their words, their day or their photo."""

from typing import Annotated, Final

from fastapi import APIRouter, Query, Request
from starlette.responses import Response

from combwright.records.notebook.day_cells import day
from combwright.services.book.finding import find
from combwright.web.desk import AtDesk
from combwright.web.showing import page

router = APIRouter(include_in_schema=False)
SHOWN: Final = 100


@router.get("/find")
def show(
    at: AtDesk,
    request: Request,
    words: Annotated[str, Query(max_length=200)] = "",
    on: Annotated[str, Query(pattern=r"^(\d{4}-\d{2}-\d{2})?$")] = "",
    photos: bool = False,
) -> Response:
    """Show the notes in which some words stand, those of a day, or those with a photo."""
    wanted = day(on) if on else None
    found = find(at.book, words, on=wanted, only_photos=photos)
    return page(
        request,
        "find.html",
        words=words,
        on=on,
        photos=photos,
        asked=bool(words or on or photos),
        found=found[:SHOWN],
        number=len(found),
    )
