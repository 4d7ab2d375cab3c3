"""Bees sold and moved: hand-over sheets, the sales register, what to report."""

from datetime import date
from typing import Annotated
from urllib.parse import urlencode

from fastapi import APIRouter, Query, Request
from starlette.responses import Response

from combwright.paper.hand_over_sheet import hand_over_pdf
from combwright.paper.record_paper import record_pdf
from combwright.services.bees_sold.hand_over import hand_over
from combwright.services.bees_sold.reporting import bees_page
from combwright.services.bees_sold.sales_register import sales_register
from combwright.services.register.record import Record, as_csv
from combwright.web.desk import AtDesk, Desk
from combwright.web.showing import page

router = APIRouter(include_in_schema=False)
Named = Annotated[str, Query(max_length=60)]


@router.get("/bees")
def show(at: AtDesk, request: Request) -> Response:
    """Show sales, standstills, and what must be reported to whom."""
    yards = list(at.book.now().yards)
    return page(request, "bees.html", found=bees_page(at.book), today=at.today, yards=yards)


@router.get("/bees/sheet")
def sheet(at: AtDesk, request: Request, sale: Named) -> Response:
    """Show the hand-over sheet of a sale."""
    return page(request, "hand_over.html", found=hand_over(at.book, sale))


@router.get("/bees/sheet.pdf")
def sheet_on_paper(at: AtDesk, sale: Named) -> Response:
    """Give the hand-over sheet of a sale as PDF."""
    return Response(
        hand_over_pdf(hand_over(at.book, sale), words=at.book.now().place_word),
        media_type="application/pdf",
    )


def _sold(at: Desk, since: date | None, until: date | None, yard: str) -> Record:
    return sales_register(
        at.book, since or at.today.replace(month=1, day=1), until or at.today, yard
    )


@router.get("/bees/register")
def register(
    at: AtDesk,
    request: Request,
    since: date | None = None,
    until: date | None = None,
    yard: Named = "",
) -> Response:
    """Show who got bees, what was moved and lost."""
    told = {"since": since, "until": until, "yard": yard}
    asked = urlencode({name: value for name, value in told.items() if value})
    return page(
        request,
        "record.html",
        record=_sold(at, since, until, yard),
        pdf=f"/bees/register.pdf?{asked}",
        csv=f"/bees/register.csv?{asked}",
    )


@router.get("/bees/register.pdf")
def register_on_paper(
    at: AtDesk, since: date | None = None, until: date | None = None, yard: Named = ""
) -> Response:
    """Give the sales register as PDF."""
    return Response(
        record_pdf(_sold(at, since, until, yard), words=at.book.now().place_word),
        media_type="application/pdf",
    )


@router.get("/bees/register.csv")
def register_in_cells(
    at: AtDesk, since: date | None = None, until: date | None = None, yard: Named = ""
) -> Response:
    """Give the sales register for a spreadsheet."""
    text = as_csv(_sold(at, since, until, yard))
    return Response(text, media_type="text/csv; charset=utf-8")
