"""The history: one line a visit, by colony, by yard, by year."""

from typing import Annotated, Final

from fastapi import APIRouter, Query, Request
from starlette.responses import Response

from combwright.services.book.history import visit_lines, years_of
from combwright.web.desk import AtDesk
from combwright.web.showing import page

router = APIRouter(include_in_schema=False)
SHOWN: Final = 200
Named = Annotated[str, Query(max_length=60)]
Year = Annotated[str, Query(pattern=r"^(\d{4})?$")]


@router.get("/history")
def show(
    at: AtDesk, request: Request, colony: Named = "", yard: Named = "", year: Year = ""
) -> Response:
    """Show what was seen and done, newest first."""
    now = at.book.now()
    all_years = visit_lines(at.book, colony=colony, yard=yard)
    lines = [line for line in all_years if year in {"", str(line.on.year)}]
    return page(
        request,
        "history.html",
        lines=lines[:SHOWN],
        number=len(lines),
        colony=colony,
        yard=yard,
        year=year,
        years=[str(one) for one in years_of(all_years)],
        yards=list(now.yards),
        colonies=sorted(now.standings),
    )
