"""Honey: tanks, lots, labels, and the trace both ways."""

from typing import Annotated
from urllib.parse import quote

from fastapi import APIRouter, Query, Request
from starlette.responses import Response

from combwright.paper.label_sheet import SHEETS, label_pdf
from combwright.paper.record_paper import record_pdf
from combwright.services.honey.labels import labels_of
from combwright.services.honey.tanks import honey_now, keeper_of
from combwright.services.honey.tracing import recall, trace
from combwright.services.register.record import Record, as_csv
from combwright.web.desk import AtDesk, Desk
from combwright.web.showing import page

router = APIRouter(include_in_schema=False)
Named = Annotated[str, Query(max_length=300)]


@router.get("/honey")
def show(at: AtDesk, request: Request) -> Response:
    """Show tanks and lots, newest first."""
    found = honey_now(at.book, at.today)
    return page(request, "honey.html", found=found, keeper=keeper_of(at.book))


@router.get("/honey/trace")
def both_ways(at: AtDesk, request: Request, of: Named) -> Response:
    """Show where honey came from, its jars, and who has them."""
    asked = f"?of={quote(of)}"
    return page(
        request,
        "record.html",
        record=_recall(at, of),
        pdf=f"/honey/trace.pdf{asked}",
        csv=f"/honey/trace.csv{asked}",
    )


@router.get("/honey/trace.pdf")
def trace_on_paper(at: AtDesk, of: Named) -> Response:
    """Give the list for a recall as PDF."""
    return Response(
        record_pdf(_recall(at, of), words=at.book.now().place_word), media_type="application/pdf"
    )


@router.get("/honey/trace.csv")
def trace_in_cells(at: AtDesk, of: Named) -> Response:
    """Give the list for a recall for a spreadsheet."""
    return Response(as_csv(_recall(at, of)), media_type="text/csv; charset=utf-8")


def _recall(at: Desk, of: str) -> Record:
    return recall(trace(at.book, of), at.today)


@router.get("/honey/labels")
def label(at: AtDesk, request: Request, lot: Named) -> Response:
    """Show what the label of a lot says, and what it lacks."""
    return page(request, "labels.html", found=labels_of(at.book, lot), lot=lot, sheets=SHEETS)


@router.get("/honey/labels.pdf")
def label_sheet(
    at: AtDesk,
    lot: Named,
    sheet: int = 21,
    used: Annotated[int, Query(ge=0, le=23)] = 0,
) -> Response:
    """Give the labels of a lot as PDF."""
    made = label_pdf(labels_of(at.book, lot), sheet=sheet, used=used)
    return Response(made, media_type="application/pdf")
