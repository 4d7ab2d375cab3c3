"""Noting at the hive: one screen a colony, and what it sends."""

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Final
from uuid import UUID

from fastapi import APIRouter, Request
from starlette.concurrency import run_in_threadpool
from starlette.datastructures import UploadFile
from starlette.responses import JSONResponse, RedirectResponse, Response

from combwright.planning.sheet import Branch, ColonySheet, RoundSheet
from combwright.services.book.hive_form import counting_on, sections, unasked
from combwright.services.book.notes import NoteError, TakenNote, take_note, undo_note
from combwright.services.book.photos import LARGEST, plain_picture
from combwright.services.rounds.asked_first import MITES, asked_first, frames_of_stores, is_shut
from combwright.services.rounds.planned_note import as_advised
from combwright.terms.dated import dated
from combwright.terms.errors import CombwrightError, NotFoundError, PassingError
from combwright.web.addresses import ColonyName, segment
from combwright.web.desk import AtDesk, Desk
from combwright.web.pages.sheet import Days
from combwright.web.refusing import by_field, status_of
from combwright.web.showing import page
from combwright.web.wait import worked_out

router = APIRouter(include_in_schema=False)
PLACES: Final = ("seen", "more")


@dataclass(frozen=True)
class Sent:
    """What a form brought."""

    fields: Mapping[str, str]
    photo: bytes


async def sent(request: Request, *, most: int = 100) -> Sent:
    """Read a form of so many fields at most, one value a field."""
    async with request.form(max_files=1, max_fields=most) as form:
        upload = form.get("photo")
        photo = await upload.read(LARGEST + 1) if isinstance(upload, UploadFile) else b""
        fields = {name: value for name, value in form.items() if isinstance(value, str)}
    return Sent(fields, photo)


@router.get("/round/{on}/note/{colony:path}")
def ask(
    at: AtDesk,
    request: Request,
    on: date,
    colony: ColonyName,
    days: Days = 7,
    found: int | None = None,
) -> Response:
    """Show the form for a colony, with what the round advised filled in."""
    sheet = worked_out(at, on, days)
    advised = of_colony(sheet, colony)
    branch = None
    if found is not None and 0 <= found < len(advised.branches):
        branch = advised.branches[found]
    return form(
        request, at, sheet, advised, as_advised(advised, on, branch), branch=branch, days=days
    )


def of_colony(sheet: RoundSheet, colony: str) -> ColonySheet:
    """Find a colony's part of the round."""
    for each in sheet.colonies:
        if each.colony == colony:
            return each
    raise NotFoundError(
        f"“{colony}” is not on the round of {dated(sheet.on)}.", remedy="Choose one from the round."
    )


def form(
    request: Request,
    at: Desk,
    sheet: RoundSheet,
    advised: ColonySheet,
    values: Mapping[str, str],
    error: CombwrightError | None = None,
    *,
    branch: Branch | None = None,
    days: int = 7,
) -> Response:
    """Show the form with values, and what is wrong beside its field."""
    mine = [each for each in sheet.colonies if each.yard == advised.yard]
    later = [each for each in mine if each.order > advised.order]
    counting = counting_on(at.book.now().entries, sheet.on)
    seen, more = ([one for some in sections(counting)[place] for one in some] for place in PLACES)
    known = {one.name: one for one in (*seen, *(one for one in more if one.name in MITES))}
    shown = [one for place in sections(counting).values() for some in place for one in some]
    first = [known[name] for name in asked_first(advised) if name in known]
    return page(
        request,
        "note.html",
        status_code=status_of(error) if error else 200,
        colony=advised,
        sheet=sheet,
        values=values,
        first=first,
        rest=[one for one in seen if one not in first],
        sections=sections(counting),
        is_shut=is_shut(advised),
        asks_counting=counting is None,
        unasked=unasked(values),
        beside=beside(advised, values),
        wrong=by_field(error),
        places=[*(one.name for one in shown), "photo"],
        error=error,
        following=later[0] if later else None,
        branch=branch,
        instead=[instead(advised, sheet.on, each) for each in advised.branches],
        days=days,
        earlier=[each for each in at.book.now().of(advised.colony) if each.on == sheet.on],
    )


def instead(advised: ColonySheet, on: date, branch: Branch) -> str:
    """Give the fields as a branch fills them, for a page that is kept on the phone as planned."""
    told = as_advised(advised, on, branch)
    return json.dumps({name: value for name, value in told.items() if name != "note"})


def beside(advised: ColonySheet, values: Mapping[str, str]) -> dict[str, tuple[str, float | None]]:
    """Say beside fields what is meant, and what is expected: where their steps begin."""
    seen = advised.expected
    return {
        "frames_of_bees": ("", to_halves(seen.frames_of_bees.mid)),
        "frames_of_brood": ("", to_halves(seen.frames_of_brood.mid)),
        "frames_of_stores": ("", to_halves(frames_of_stores(advised.before))),
        "feed_g": (f"of {values.get('feed') or advised.portion.feed}", None),
    }


def to_halves(frames: float) -> float:
    """Round to half frames, as they are noted."""
    return round(2 * frames) / 2


@router.post("/note")
async def take(at: AtDesk, request: Request) -> Response:
    """Take a note: from the outbox of a phone as JSON, from a plain form with a page."""
    brought = await sent(request)
    wants_page = "text/html" in request.headers.get("accept", "")
    try:
        noted = await run_in_threadpool(keep, at, brought)
    except (NoteError, PassingError) as error:
        if not wants_page:
            raise
        return await run_in_threadpool(again, request, at, brought.fields, error)
    if not wants_page:
        return JSONResponse({"new": noted.new, "odd": noted.odd, "at": said_at(at)})
    on, colony = brought.fields["on"], brought.fields["colony"]
    following = brought.fields.get("following", colony)
    onward = f"/round/{on}/hive/{segment(following)}" if following else f"/round/{on}"
    if noted.odd:
        return second_look(request, colony, noted.odd, onward, undo=(noted.note, on))
    return RedirectResponse(onward, status_code=303)


def second_look(
    request: Request,
    about: str,
    odd: Sequence[str],
    onward: str,
    undo: tuple[UUID, str] | None = None,
) -> Response:
    """Say what of a note is odd; what cannot be undone at once is put right in the history."""
    return page(request, "second_look.html", about=about, odd=odd, onward=onward, undo=undo)


def keep(at: Desk, brought: Sent) -> TakenNote:
    """Put a note into the book, and its photo beside it."""
    if brought.photo:
        plain_picture(brought.photo)
    noted = take_note(at.book, brought.fields)
    if brought.photo:
        at.photos.keep(noted.note, brought.photo)
    return noted


def again(
    request: Request, at: Desk, fields: Mapping[str, str], error: CombwrightError
) -> Response:
    """Show the form again as it was sent, with what is wrong."""
    try:
        on = date.fromisoformat(fields.get("on", ""))
        sheet = at.rounds.sheet(on, 7)
        advised = of_colony(sheet, fields.get("colony", ""))
    except (ValueError, CombwrightError):
        return page(request, "error.html", status_code=status_of(error), error=error)
    return form(request, at, sheet, advised, as_sent(fields, advised, on), error)


def as_sent(fields: Mapping[str, str], advised: ColonySheet, on: date) -> dict[str, str]:
    """Keep what was sent; a field that was emptied stays empty."""
    return {**dict.fromkeys(as_advised(advised, on), ""), **fields}


@router.post("/note/undo")
async def undo(at: AtDesk, request: Request) -> Response:
    """Strike a note out."""
    fields = (await sent(request)).fields
    try:
        note, on = UUID(fields.get("undoes", "")), date.fromisoformat(fields.get("on", ""))
    except ValueError:
        raise CombwrightError("This names no note.", remedy="Go back to the round.") from None
    struck = await run_in_threadpool(undo_note, at.book, note, on)
    if "text/html" in request.headers.get("accept", ""):
        return RedirectResponse(f"/round/{on}", status_code=303)
    return JSONResponse({"struck": struck, "at": said_at(at)})


def said_at(at: Desk) -> str:
    """Give the time by which a page that was made later knows of the note itself."""
    return at.clock().isoformat(timespec="seconds")
