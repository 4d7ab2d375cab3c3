"""The JSON API: the same entries, through the same gate, as every other way into the book."""

from asyncio import wrap_future
from datetime import date
from typing import Annotated
from uuid import UUID

from fastapi import APIRouter, Body, Query
from pydantic import BaseModel
from starlette.concurrency import run_in_threadpool

from combwright.planning.sheet import RoundSheet
from combwright.records.replay.colonies import KnownColony
from combwright.services.book.book import RefusedError, add_entries
from combwright.services.book.field_words import FieldProblem
from combwright.services.book.notes import NoteError
from combwright.services.calculators.syrup_batch import Wanted
from combwright.services.calculators.syrup_mixing import Mix, mix
from combwright.services.people.sharing import whose_notes
from combwright.terms.entries import AnyEntry, Noted
from combwright.web.desk import AtDesk


class Refusal(BaseModel):
    """Why something was not done, and what to do."""

    what: str
    remedy: str
    problems: list[dict[str, str]]


router = APIRouter(
    prefix="/api",
    responses={
        400: {"description": "The request cannot be read."},
        401: {"model": Refusal, "description": "Log in first."},
        404: {"model": Refusal, "description": "The book does not know it."},
        413: {"model": Refusal, "description": "More than 12 MB."},
        503: {
            "model": Refusal,
            "description": "Busy, or the disk is full: ask again.",
        },
        422: {"description": "Impossible values, or a clash with the book: nothing was stored."},
    },
)


class Stored(BaseModel):
    """What became of entries: new ones, and those that the book had already."""

    new: int
    known: int
    odd: list[str]


@router.get("/entries")
def read_entries(
    at: AtDesk,
    colony: Annotated[str | None, Query(max_length=60)] = None,
    since: date | None = None,
) -> list[Noted]:
    """Give the entries that stand, of one colony or all, from a day on."""
    book = at.book.now()
    found = book.entries if colony is None else book.of(colony)
    return [each for each in found if since is None or each.on >= since]


@router.get("/noted-by")
def read_authors(
    at: AtDesk, colony: Annotated[str | None, Query(max_length=60)] = None
) -> dict[UUID, str]:
    """Name who noted the entries that stand, where people share the book."""
    book = at.book.now()
    found = book.entries if colony is None else book.of(colony)
    return dict(whose_notes(at.book, [each.id for each in found]))


@router.post("/entries", status_code=200)
def write_entries(at: AtDesk, entries: Annotated[list[AnyEntry], Body(max_length=5000)]) -> Stored:
    """Put entries into the book, all of them or none; the same ids again change nothing."""
    try:
        report = add_entries(at.book, entries)
    except RefusedError as error:
        told = [FieldProblem(one.column, one.what, one.remedy) for one in error.problems]
        raise NoteError(told) from error
    return Stored(new=report.new, known=report.known, odd=[str(one) for one in report.problems])


@router.get("/colonies")
def read_colonies(at: AtDesk) -> list[KnownColony]:
    """Give every colony that has not left the book."""
    return at.book.now().living


@router.get("/colonies/{colony:path}")
def read_colony(at: AtDesk, colony: str) -> KnownColony:
    """Give one colony."""
    return at.book.now().colony(colony)


@router.get("/round/{on}")
async def read_round(
    at: AtDesk, on: date, days: Annotated[int, Query(ge=1, le=60)] = 7
) -> RoundSheet:
    """Give the sheet of a round, working it out if need be."""
    working = await run_in_threadpool(at.rounds.begin, on, days)
    return await wrap_future(working.future)


@router.get("/syrup")
def read_syrup(
    ratio: Annotated[float | None, Query(description="Sugar to water by weight.")] = None,
    litres: Annotated[float | None, Query(description="Syrup wanted, in litres.")] = None,
    sugar_kg: float | None = None,
    water_l: float | None = None,
) -> Mix:
    """Work out a batch of syrup."""
    wanted = Wanted(ratio=ratio, litres=litres, sugar_kg=sugar_kg, water_l=water_l)
    return mix(wanted)
