"""A spreadsheet of one's own: proposed, shown on ten lines, put right, taken."""

from base64 import b64decode, b64encode
from dataclasses import dataclass
from typing import get_args

from fastapi import APIRouter, Request
from starlette.concurrency import run_in_threadpool
from starlette.responses import Response

from combwright.records.notebook.headings import BY_WORD
from combwright.records.notebook.own_cells import DayOrder
from combwright.services.book.importing import Proposal, propose, take_sheet
from combwright.terms.errors import NotebookError
from combwright.web.desk import AtDesk, Desk
from combwright.web.showing import page
from combwright.web.size_limit import LARGEST
from combwright.web.uploads import plain_name

router = APIRouter(include_in_schema=False)
SAME = ("yard", "hive")


@dataclass(frozen=True)
class SentSheet:
    """What the form sent: the sheet, and what the keeper changed of the proposal."""

    data: bytes
    name: str
    changed: dict[str, str]
    fixed: dict[str, str]
    days: DayOrder | None
    is_taken: bool

    def proposal(self, at: Desk) -> Proposal:
        """Read the sheet so."""
        return propose(at.book, self.data, self.changed, self.fixed, self.days)


@router.get("/import")
def ask(request: Request) -> Response:
    """Ask for a sheet."""
    return page(request, "import.html", found=None, same={})


@router.post("/import")
async def take(at: AtDesk, request: Request) -> Response:
    """Show how a sheet would be read, or take it."""
    sent = await _sent(request)
    return await run_in_threadpool(_answer, at, request, sent)


def _answer(at: Desk, request: Request, sent: SentSheet) -> Response:
    found = sent.proposal(at)
    if sent.is_taken and found.is_ready:
        report = take_sheet(at.book, sent.data, sent.name, found)
        return page(request, "taken.html", report=report, name=sent.name)
    return page(
        request,
        "import.html",
        found=found,
        same=sent.fixed,
        name=sent.name,
        sheet=b64encode(sent.data).decode(),
        headings=list(BY_WORD),
        orders=get_args(DayOrder),
        hives=[each.key for each in at.book.kit.hives()],
    )


async def _sent(request: Request) -> SentSheet:
    async with request.form(max_part_size=LARGEST) as form:
        file = form.get("file")
        if file is not None and not isinstance(file, str):
            data, name = await file.read(), plain_name(file.filename, "sheet")
        else:
            data, name = _unpacked(str(form.get("sheet", ""))), str(form.get("name", "sheet"))
        told = {key: str(value).strip() for key, value in form.items() if key != "file"}
    columns = {key.removeprefix("column "): key for key in told if key.startswith("column ")}
    days = told.get("days", "")
    return SentSheet(
        data,
        name,
        {theirs: told[key] for theirs, key in columns.items()},
        {word: told[word] for word in SAME if told.get(word)},
        next((one for one in get_args(DayOrder) if one == days), None),
        "take" in told,
    )


def _unpacked(text: str) -> bytes:
    try:
        return b64decode(text, validate=True)
    except ValueError:
        raise NotebookError(
            "The sheet did not come whole.", remedy="Choose the file again."
        ) from None
