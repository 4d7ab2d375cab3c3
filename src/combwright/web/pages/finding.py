"""Notes found again by their words."""

from typing import Annotated, Final

from fastapi import APIRouter, Query, Request
from starlette.responses import Response

from combwright.services.book.finding import find
from combwright.web.desk import AtDesk
from combwright.web.showing import page

router = APIRouter(include_in_schema=False)
SHOWN: Final = 100


@router.get("/find")
def show(
    at: AtDesk, request: Request, words: Annotated[str, Query(max_length=200)] = ""
) -> Response:
    """Show the notes in which some words stand."""
    found = find(at.book, words)
    return page(request, "find.html", words=words, found=found[:SHOWN], number=len(found))
