"""The history: one line a visit, by colony, by yard, by year."""

from collections.abc import Sequence
from typing import Annotated, Final
from uuid import UUID

from fastapi import APIRouter, Query, Request
from starlette.responses import Response

from combwright.records.store.book_handle import Book
from combwright.services.book.history import VisitLine, visit_lines, years_of
from combwright.services.people.sharing import whose_notes
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
        whose=whose(at.book, lines[:SHOWN]),
        colony=colony,
        yard=yard,
        year=year,
        years=[str(one) for one in years_of(all_years)],
        yards=list(now.yards),
        colonies=sorted(now.standings),
    )


def whose(book: Book, lines: Sequence[VisitLine]) -> dict[UUID, str]:
    """Name who noted each line, by its first note."""
    authors = whose_notes(book, [one for line in lines for one in line.entries])
    told = {line.entries[0]: [authors.get(one, "") for one in line.entries] for line in lines}
    return {
        key: ", ".join(dict.fromkeys(filter(None, all_of)))
        for key, all_of in told.items()
        if any(all_of)
    }
