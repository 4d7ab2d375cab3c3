"""What to prepare indoors and what to load, to be ticked off; and the syrup calculator."""

from datetime import date
from typing import Annotated, Final

from fastapi import APIRouter, Query, Request
from starlette.responses import RedirectResponse, Response

from combwright.services.book.form_fields import FormField
from combwright.services.calculators.syrup_batch import Wanted
from combwright.services.calculators.syrup_mixing import mix
from combwright.services.rounds.kept_rounds import of_yard
from combwright.terms.errors import CombwrightError
from combwright.web.desk import AtDesk
from combwright.web.pages.sheet import Days
from combwright.web.showing import page
from combwright.web.wait import worked_out

router = APIRouter(include_in_schema=False)


@router.get("/bench")
def newest(at: AtDesk, request: Request) -> Response:
    """Lead to the lists of the round that comes next."""
    return RedirectResponse(f"/bench/{at.day_meant(request)}", status_code=303)


@router.get("/bench/{on}")
def show(at: AtDesk, request: Request, on: date, yard: str = "", days: Days = 7) -> Response:
    """Show bench list and load list."""
    sheet = worked_out(at, on, days)
    shown = of_yard(sheet, yard) if yard else sheet
    return page(request, "bench.html", sheet=shown, yards=sheet.yards, yard=yard, on=on, days=days)


RATIO: Final = FormField("ratio", "Sugar to one part of water, by weight", "line", type="number")
AMOUNT: Final = FormField("amount", "How much", "line", type="number")


@router.get("/syrup")
def syrup(
    request: Request,
    ratio: Annotated[str, Query(max_length=20)] = "1.5",
    of: Annotated[str, Query(pattern="^(litres|sugar_kg|water_l)$")] = "litres",
    amount: Annotated[str, Query(max_length=20)] = "10",
) -> Response:
    """Work out a batch of syrup."""
    values = {"ratio": ratio, "of": of, "amount": amount}
    made, wrong = None, {}
    numbers = {}
    for name in ("ratio", "amount"):
        try:
            numbers[name] = float(values[name].replace(",", "."))
        except ValueError:
            wrong[name] = f"“{values[name]}” is not a number. Give one such as 1.5."
    if not wrong:
        try:
            made = mix(Wanted(ratio=numbers["ratio"], **{of: numbers["amount"]}))
        except CombwrightError as error:
            wrong["amount"] = str(error)
    return page(
        request,
        "syrup.html",
        status_code=422 if wrong else 200,
        values=values,
        ratio=RATIO,
        amount=AMOUNT,
        made_of=made,
        wrong=wrong,
    )
