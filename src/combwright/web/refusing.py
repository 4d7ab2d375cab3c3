"""What a person can put right, and what passes by itself, as an answer."""

from typing import Final

from fastapi import Request
from fastapi.exception_handlers import http_exception_handler
from fastapi.exceptions import RequestValidationError
from starlette.concurrency import run_in_threadpool
from starlette.exceptions import HTTPException
from starlette.responses import JSONResponse, Response

from combwright.services.book.field_words import FieldProblem
from combwright.services.book.notes import NoteError
from combwright.services.book.place_words import place_word
from combwright.terms.errors import (
    CombwrightError,
    NotAllowedError,
    NotFoundError,
    PassingError,
)
from combwright.web.showing import page

PASSING: Final = 503
FORBIDDEN: Final = 403
MOST_TOLD: Final = 20
RETRY_AFTER_S: Final = 10
MISSING: Final = 404
UNREADABLE: Final = CombwrightError(
    "The address of this page cannot be read.", remedy="Go back, or begin at the round."
)
NO_PAGE: Final = NotFoundError("There is no such page.", remedy="Go back, or begin at the round.")


async def show_error(request: Request, error: Exception) -> Response:
    """Show what a person can put right."""
    status = status_of(error)
    later = {"Retry-After": str(RETRY_AFTER_S)} if status == PASSING else {}
    if status == FORBIDDEN:
        await run_in_threadpool(note_refusal, request)
    if "text/html" in request.headers.get("accept", ""):
        shown = page(request, "error.html", status_code=status, error=error)
        shown.headers.update(later)
        return shown
    words = place_word(request.app.state.desk.book)
    return JSONResponse(words.into_data(told(error)), status_code=status, headers=later)


def note_refusal(request: Request) -> None:
    """Write into the log of the door who asked for what they may not have."""
    at, caller = request.app.state.desk, getattr(request.state, "caller", None)
    if caller is not None:
        who = caller.person.id if caller.person else None
        what = getattr(request.scope.get("route"), "path", "") or "a page for keepers"
        at.access.note(at.clock(), who, f"was refused: {request.method} {what}")


async def show_unreadable(request: Request, error: Exception) -> Response:
    """Say what of a request cannot be read, without sending it back: it may hold anything."""
    if "text/html" in request.headers.get("accept", ""):
        return await show_error(request, UNREADABLE)
    found = error.errors() if isinstance(error, RequestValidationError) else []
    problems = [
        FieldProblem(".".join(str(part) for part in one["loc"]), f"{one['msg']}.", "Correct it.")
        for one in found[:MOST_TOLD]
    ]
    return await show_error(request, NoteError(problems))


async def show_missing(request: Request, error: Exception) -> Response:
    """Say that there is no such page, to a person as to a program."""
    if isinstance(error, HTTPException) and error.status_code != MISSING:
        return await http_exception_handler(request, error)
    return await show_error(request, NO_PAGE)


async def gone(_: Request, __: Exception) -> Response:
    """Answer whoever broke off in the middle: nobody reads it."""
    return Response(status_code=400)


def status_of(error: Exception) -> int:
    """Tell what does not exist, and what may be asked again as it is, from what must be changed."""
    if isinstance(error, PassingError):
        return PASSING
    if isinstance(error, NotAllowedError):
        return FORBIDDEN
    return 404 if isinstance(error, NotFoundError) else 422


def by_field(error: Exception | None) -> dict[str, str]:
    """Give what stands beside each field of a form; a field may have several faults."""
    found: dict[str, str] = {}
    for one in error.problems if isinstance(error, NoteError) else ():
        said = f"{one.what} {one.remedy}".strip()
        if said not in found.get(one.field, ""):
            found[one.field] = f"{found.get(one.field, '')} {said}".strip()
    return found


def told(error: Exception) -> dict[str, object]:
    """Give an error as plain data."""
    problems = error.problems if isinstance(error, NoteError) else ()
    return {
        "what": getattr(error, "what", str(error)),
        "remedy": getattr(error, "remedy", ""),
        "problems": [
            {"field": one.field, "what": one.what, "remedy": one.remedy} for one in problems
        ],
    }
