"""Orders, batches of cells, queens with names, and what can be promised."""

from datetime import date
from typing import Annotated, Final, get_args

from fastapi import APIRouter, Query, Request
from starlette.responses import Response

from combwright.records.notebook.day_cells import day
from combwright.services.book.own_words import own_words
from combwright.services.supply.asked import AskedSupply, WhatIf
from combwright.terms.entries import Priced
from combwright.web.desk import AtDesk
from combwright.web.showing import page

router = APIRouter(include_in_schema=False)

Weeks = Annotated[int, Query(ge=2, le=26)]
Hours = Annotated[float, Query(gt=0, le=100)]
Queens = Annotated[int, Query(ge=0, le=100)]
Price = Annotated[float | None, Query(ge=0, le=10000)]
PRICED: Final = [each for each in get_args(Priced) if each.startswith(("nuc", "mated"))]


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


@router.get("/supply/plan")
def plan(
    at: AtDesk,
    request: Request,
    on: date | None = None,
    weeks: Weeks = 12,
    hours: Hours = 12.0,
    queens: Queens = 0,
    cold_from: str = "",
    lost: str = "",
    price_of: str = "",
    price: Price = None,
) -> Response:
    """Show the plan of the season, or how far working it out has come."""
    otherwise = WhatIf(
        prices=((price_of, price),) if price_of and price is not None else (),
        lost_batches=frozenset([lost] if lost else []),
        cold_from=day(cold_from) if cold_from else None,
    )
    book = at.book.now()
    asked = AskedSupply(
        on or at.day_meant(request), weeks=weeks, hours=hours, queens_a_week=queens,
        what_if=otherwise,
    )  # fmt: skip
    working = at.supplies.begin(asked)
    if not working.future.done():
        return page(request, "supply_wait.html", status_code=202, step=working.step)
    sheet = working.future.result()
    shown = {
        "weeks": weeks, "hours": hours, "queens": queens, "cold_from": cold_from, "lost": lost,
        "price_of": price_of, "price": price,
    }  # fmt: skip
    return page(
        request, "supply_plan.html", sheet=sheet, asked=shown, batches=list(book.batches),
        priced=PRICED,
    )  # fmt: skip
