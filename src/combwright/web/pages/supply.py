"""Orders, batches of cells, queens with names, and what can be promised."""

from fastapi import APIRouter, Request
from starlette.responses import Response

from combwright.services.book.own_words import own_words
from combwright.web.desk import AtDesk
from combwright.web.showing import page

router = APIRouter(include_in_schema=False)


@router.get("/supply")
def show(at: AtDesk, request: Request) -> Response:
    """Show what is ordered, what is being raised, and which queens have names."""
    book = at.book.now()
    return page(
        request,
        "supply.html",
        orders=book.orders.values(),
        batches=book.batches.values(),
        queens=[each for each in book.queens.values() if not each.is_gone],
        said=own_words,
    )
