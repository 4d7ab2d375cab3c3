"""The register of medicines, on the page, as PDF and for a spreadsheet."""

from fastapi import APIRouter, Request
from starlette.responses import Response

from combwright.paper.record_paper import record_pdf
from combwright.science.mites.medicine_law import DUTIES
from combwright.services.register.medicines import Register, register
from combwright.services.register.record import as_csv
from combwright.services.register.tables import as_record, tables
from combwright.web.desk import AtDesk, Desk
from combwright.web.showing import page

router = APIRouter(include_in_schema=False)
USUAL = "IE"


def _found(at: Desk, country: str, year: int | None) -> Register:
    return register(at.book, country, [year or at.today.year])


@router.get("/register")
def show(at: AtDesk, request: Request, country: str = USUAL, year: int | None = None) -> Response:
    """Show the register of a year, what is missing first."""
    found = _found(at, country, year)
    asked = f"country={country}&year={found.years[0]}"
    return page(
        request,
        "register.html",
        found=found,
        tables=tables(found),
        duties=DUTIES.values(),
        country=country,
        asked=asked,
    )


@router.get("/register.pdf")
def on_paper(at: AtDesk, country: str = USUAL, year: int | None = None) -> Response:
    """Give the register as PDF."""
    data = record_pdf(as_record(_found(at, country, year)), words=at.book.now().place_word)
    return Response(data, media_type="application/pdf")


@router.get("/register.csv")
def in_cells(at: AtDesk, country: str = USUAL, year: int | None = None) -> Response:
    """Give the register for a spreadsheet."""
    return Response(
        as_csv(as_record(_found(at, country, year))), media_type="text/csv; charset=utf-8"
    )
