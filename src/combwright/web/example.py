"""An example to look around in, beside an empty book of the keeper's own."""

from dataclasses import replace
from threading import Lock

from fastapi import APIRouter, Request
from starlette.responses import RedirectResponse, Response

from combwright.records.store.book_handle import Book
from combwright.services.demo import write_demo
from combwright.terms.errors import CombwrightError
from combwright.web.desk import AtDesk, Desk, lay_out

router = APIRouter(prefix="/example", include_in_schema=False)
WRITING = Lock()


@router.post("")
def look_around(at: AtDesk, request: Request) -> Response:
    """Lay an invented keeper's book on the desk; the own one waits as it is."""
    state = request.app.state
    with WRITING:
        if state.desk is at and not at.is_demo:
            if at.book.now().entries:
                raise CombwrightError(
                    "Your own book is not empty.", remedy="“combwright demo” writes an example."
                )
            state.desk = beside(at)
    return RedirectResponse("/", status_code=303)


def beside(own: Desk) -> Desk:
    """Write the example beside the own book; whoever may see that one may see it."""
    folder = own.book.beside("example")
    book = folder / "demo.book"
    if not book.exists():
        write_demo(folder)
    made = lay_out(Book(book, kit=own.book.kit), clock=own.clock, is_demo=True)
    return replace(made, access=own.access, own=own)


@router.post("/leave")
def leave(at: AtDesk, request: Request) -> Response:
    """Lay the own book on the desk again."""
    if at.own is not None:
        request.app.state.desk = at.own
        at.close()
    return RedirectResponse("/begin", status_code=303)
