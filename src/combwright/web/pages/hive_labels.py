"""Labels for hives with a code, and where the code leads."""

from typing import Annotated
from urllib.parse import quote

from fastapi import APIRouter, Query, Request
from starlette.responses import RedirectResponse, Response

from combwright.paper.hive_labels import USUAL, hive_label_pdf
from combwright.web.desk import AtDesk

router = APIRouter(include_in_schema=False)
Named = Annotated[str, Query(max_length=60)]


@router.get("/hive")
def opened(at: AtDesk, colony: Named) -> Response:
    """Lead from the code on a hive to its note."""
    book = at.book.now()
    book.colony(colony)
    on = book.next_round(at.today)
    return RedirectResponse(f"/round/{on}/note/{quote(colony, safe='')}", status_code=303)


@router.get("/hive/labels.pdf")
def on_paper(at: AtDesk, request: Request, yard: Named = "", sheet: int = USUAL) -> Response:
    """Give the labels of a yard's hives, or of all."""
    hives = [(each.colony, each.yard) for each in at.book.now().living if yard in {"", each.yard}]
    made = hive_label_pdf(hives, str(request.base_url), at.today, sheet=sheet)
    return Response(made, media_type="application/pdf")
