"""Beginning a book of one's own, or a yard with its colonies in one table; or looking around."""

from collections.abc import Mapping
from typing import Annotated, Final
from uuid import uuid4

from fastapi import APIRouter, Query, Request
from starlette.concurrency import run_in_threadpool
from starlette.responses import JSONResponse, RedirectResponse, Response

from combwright.services.book.beginning import (
    MOST_ROWS,
    begin_yard,
    hive_used_last,
    table_fields,
)
from combwright.services.book.notes import NoteError
from combwright.terms.errors import CombwrightError
from combwright.weather.places import find_places
from combwright.web.desk import AtDesk, Desk
from combwright.web.pages.note import second_look, sent
from combwright.web.refusing import by_field
from combwright.web.showing import page

ROWS: Final = 3
router = APIRouter(include_in_schema=False)


@router.get("/begin")
def ask(at: AtDesk, request: Request) -> Response:
    """Ask for a yard and its colonies; with an empty book, offer an example as well."""
    yards = list(at.book.now().yards)
    values = {"id": str(uuid4()), "yard": yards[-1] if yards else ""}
    return form(request, at, values, ROWS)


def form(
    request: Request,
    at: Desk,
    values: Mapping[str, str],
    rows: int,
    error: NoteError | None = None,
) -> Response:
    """Show the table with values, and what is wrong beside its field."""
    hives = [each.key for each in at.book.kit.hives()]
    return page(
        request,
        "begin.html",
        status_code=422 if error else 200,
        is_first=not at.book.now().entries,
        yards=list(at.book.now().yards),
        fields=table_fields(hives),
        usual_hive=hive_used_last(at.book),
        rows=range(1, rows + 1),
        most=MOST_ROWS,
        values=values,
        wrong=by_field(error),
        today=at.today,
    )


@router.post("/begin")
async def take(at: AtDesk, request: Request) -> Response:
    """Take the yard and its colonies, and lead to their sheet of the same day."""
    fields = (await sent(request, most=20 * MOST_ROWS)).fields
    if (more := fields.get("more", "")).isdecimal():
        return await run_in_threadpool(form, request, at, fields, min(int(more), MOST_ROWS))
    try:
        begun = await run_in_threadpool(begin_yard, at.book, fields, at.today)
    except NoteError as error:
        numbers = [number for one in fields if (number := one.rpartition("-")[2]).isdecimal()]
        rows = min(max(map(int, numbers), default=ROWS), MOST_ROWS)
        return await run_in_threadpool(form, request, at, fields, rows, error)
    except (KeyError, ValueError):
        raise CombwrightError(
            "This table has no id.", remedy="Open the page again and fill it in."
        ) from None
    onward = f"/round/{at.today}"
    if begun.odd:
        return second_look(request, fields["yard"], begun.odd, onward)
    return RedirectResponse(onward, status_code=303)


@router.get("/places")
def found_places(words: Annotated[str, Query(max_length=80)] = "") -> Response:
    """Find places while their name is typed; nothing leaves this machine."""
    return JSONResponse([place.label for place in find_places(words)])
