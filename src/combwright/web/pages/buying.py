"""Buyers: whom the book names and for how long, and deleting it after a warning."""

from typing import Annotated

from fastapi import APIRouter, Query, Request
from starlette.concurrency import run_in_threadpool
from starlette.responses import RedirectResponse, Response

from combwright.services.book.buyers import WARNING, buyer, buyers, delete_buyer
from combwright.web.desk import AtDesk
from combwright.web.pages.note import sent
from combwright.web.showing import page

router = APIRouter(include_in_schema=False)
Named = Annotated[str, Query(max_length=300)]


@router.get("/buyers")
def show(at: AtDesk, request: Request) -> Response:
    """List buyers, and how long their names are kept."""
    return page(request, "buyers.html", found=buyers(at.book), chosen=None, today=at.today)


@router.get("/buyers/delete")
def warn(at: AtDesk, request: Request, name: Named) -> Response:
    """Say what goes, what stays, and that it cannot be undone."""
    found = buyer(at.book, name)
    return page(
        request, "buyers.html", found=[found], chosen=found, today=at.today, warning=WARNING
    )


@router.post("/buyers/delete")
async def take(at: AtDesk, request: Request) -> Response:
    """Delete what the book says of a buyer."""
    name = (await sent(request)).fields.get("name", "")
    await run_in_threadpool(delete_buyer, at.book, name, at.today)
    return RedirectResponse("/buyers", status_code=303)
