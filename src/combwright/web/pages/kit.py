"""Kit: what the keeper owns."""

from fastapi import APIRouter, Request
from starlette.responses import Response

from combwright.web.desk import AtDesk
from combwright.web.showing import page

router = APIRouter(include_in_schema=False)


@router.get("/kit")
def show(at: AtDesk, request: Request) -> Response:
    """List what is owned, as last counted, and the hives that are known."""
    return page(request, "kit.html", owned=at.book.now().shelf, hives=at.book.kit.hives())
