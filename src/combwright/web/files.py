"""What comes and goes as a file: the whole book, notebooks, photos, the calendar feed."""

from typing import Annotated, Literal
from uuid import UUID

from fastapi import APIRouter, File, Request, UploadFile
from starlette.responses import Response

from combwright.services.book.book import add_notebook, export, export_sheet
from combwright.services.rounds.visits_calendar import visits_calendar
from combwright.services.supply.batch_days import supply_days
from combwright.terms.errors import NotebookError, NotFoundError
from combwright.web.desk import AtDesk
from combwright.web.showing import page
from combwright.web.uploads import on_disk, plain_name

router = APIRouter(include_in_schema=False)
MEDIA = {
    "csv": "text/csv; charset=utf-8",
    "json": "application/json",
    "xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
}


@router.get("/book.{form}")
def download(at: AtDesk, form: Literal["csv", "json", "xlsx"]) -> Response:
    """Give every entry of the book."""
    name = f'attachment; filename="combwright-{at.today}.{form}"'
    return Response(
        export_sheet(at.book) if form == "xlsx" else export(at.book, form),
        media_type=MEDIA[form],
        headers={"Content-Disposition": name},
    )


@router.post("/book/add")
def upload(at: AtDesk, request: Request, file: Annotated[UploadFile, File()]) -> Response:
    """Take in a notebook or an export: all of it, or nothing."""
    content = file.file.read()
    if not content.strip() or b"\x00" in content:
        raise NotebookError(
            "This is not a notebook.",
            where=plain_name(file.filename, ""),
            remedy="Choose a CSV or JSON file.",
        )
    with on_disk(content, file, "notebook.csv") as path:
        try:
            report = add_notebook(at.book, path)
        except NotebookError as error:
            error.where = path.name
            raise
    return page(request, "taken.html", report=report, name=path.name)


@router.get("/photo/{visit}")
def photo(at: AtDesk, visit: UUID) -> Response:
    """Give the photo of a visit."""
    content, media = at.photos.of(visit)
    return Response(content, media_type=media)


@router.get("/calendar/{key}.ics")
def calendar(at: AtDesk, key: str) -> Response:
    """Give the planned visits, to whoever knows the secret address."""
    if not at.access.opens_calendar(key):
        raise NotFoundError("There is no such calendar.", remedy="Copy the address from Settings.")
    book = at.book.now()
    sheet = at.rounds.newest()
    shown = sheet if book.living else None
    content = visits_calendar(shown, made=at.clock(), own=supply_days(book.entries))
    return Response(content, media_type="text/calendar; charset=utf-8")
