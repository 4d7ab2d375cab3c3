"""What was written on paper, entered at the desk: one page, in the paper's order, by keyboard."""

from collections.abc import Mapping, Sequence
from datetime import date
from typing import Final
from uuid import uuid4

from fastapi import APIRouter, Request
from starlette.concurrency import run_in_threadpool
from starlette.responses import RedirectResponse, Response

from combwright.services.book.field_words import FieldProblem
from combwright.services.book.hive_form import counting_on
from combwright.services.book.notes import NoteError
from combwright.services.rounds.from_paper import paper_fields, take_written
from combwright.terms.entries import Visit
from combwright.terms.errors import CombwrightError
from combwright.web.desk import AtDesk, Desk
from combwright.web.pages.note import sent
from combwright.web.pages.sheet import Days
from combwright.web.refusing import by_field
from combwright.web.showing import page
from combwright.web.wait import worked_out

router = APIRouter(include_in_schema=False)
MOST: Final = 5000  # fields of a page: three hundred hives


@router.get("/round/{on}/written")
def ask(at: AtDesk, request: Request, on: date, days: Days = 7) -> Response:
    """Show the rows, empty."""
    return form(request, at, on, days, {"id": str(uuid4())})


def form(
    request: Request,
    at: Desk,
    on: date,
    days: int,
    values: Mapping[str, str],
    problems: Sequence[FieldProblem] = (),
) -> Response:
    """Show the rows with values, and what is wrong beside its field."""
    book = at.book.now()
    return page(
        request,
        "written.html",
        status_code=422 if problems else 200,
        on=on,
        days=days,
        colonies=worked_out(at, on, days).colonies,
        fields=paper_fields(counting_on(book.entries, on)),
        noted={each.colony for each in book.on(on) if isinstance(each, Visit)},
        values=values,
        wrong=by_field(NoteError(problems)),
    )


@router.post("/round/{on}/written")
async def take(at: AtDesk, request: Request, on: date, days: Days = 7) -> Response:
    """Take the rows; those that are right are kept, and the others are shown again."""
    fields = (await sent(request, most=MOST)).fields
    sheet = await run_in_threadpool(at.rounds.sheet, on, days)
    try:
        _, problems = await run_in_threadpool(take_written, at.book, sheet, fields)
    except (KeyError, ValueError):
        raise CombwrightError("This page has no id.", remedy="Open it again.") from None
    if problems:
        return await run_in_threadpool(form, request, at, on, days, fields, problems)
    return RedirectResponse(f"/round/{on}", status_code=303)
