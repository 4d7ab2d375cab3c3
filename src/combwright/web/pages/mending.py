"""A note that is put right or struck out, with the reason."""

from collections.abc import Mapping
from uuid import UUID, uuid4

from fastapi import APIRouter, Request
from starlette.concurrency import run_in_threadpool
from starlette.responses import RedirectResponse, Response

from combwright.services.book.entry_words import said
from combwright.services.book.mending import as_written, entry_named, mend, mend_fields, strike
from combwright.services.book.notes import NoteError
from combwright.services.people.sharing import whose_notes
from combwright.terms.entries import Noted
from combwright.web.addresses import segment
from combwright.web.desk import AtDesk, Desk
from combwright.web.pages.note import sent
from combwright.web.pages.yards import known_names
from combwright.web.refusing import by_field
from combwright.web.showing import page

router = APIRouter(include_in_schema=False)


@router.get("/mend/{entry}")
def ask(at: AtDesk, request: Request, entry: UUID) -> Response:
    """Show a note as it stands, to be put right."""
    found = entry_named(at.book, str(entry))
    return form(request, at, found, as_written(found) | {"id": str(uuid4())})


def form(
    request: Request,
    at: Desk,
    entry: Noted,
    values: Mapping[str, str],
    error: NoteError | None = None,
) -> Response:
    """Show the form, and what is wrong beside its field."""
    return page(
        request,
        "mend.html",
        status_code=422 if error else 200,
        entry=entry,
        said=said(entry),
        noted_by=whose_notes(at.book, [entry.id]).get(entry.id, ""),
        fields=mend_fields(entry, known_names(at)),
        values=values,
        wrong=by_field(error),
        back=where(entry),
        has_photo=bool(at.photos.among([entry.id])),
    )


def where(entry: Noted) -> str:
    """Give the page that shows a note."""
    colony = getattr(entry, "colony", None)
    return f"/colony/{segment(colony)}" if colony else "/yards"


@router.post("/mend/{entry}")
async def take(at: AtDesk, request: Request, entry: UUID) -> Response:
    """Put a note right, or strike it out."""
    fields = (await sent(request)).fields
    found = await run_in_threadpool(entry_named, at.book, str(entry))
    try:
        await run_in_threadpool(_change, at, found, fields)
    except NoteError as error:
        return await run_in_threadpool(form, request, at, found, fields, error)
    return RedirectResponse(where(found), status_code=303)


def _change(at: Desk, entry: Noted, fields: Mapping[str, str]) -> None:
    change, reason = UUID(fields["id"]), fields.get("reason", "")
    if "strike" in fields:
        strike(at.book, entry, change=change, on=at.today, reason=reason)
    else:
        mend(at.book, entry, fields, change=change, on=at.today, reason=reason)
