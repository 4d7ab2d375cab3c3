"""Yards and their colonies, and the forms for what changes them."""

import math
from collections.abc import Callable, Mapping, Sequence
from itertools import groupby
from typing import Final
from urllib.parse import urlencode
from uuid import uuid4

from fastapi import APIRouter, Request
from starlette.concurrency import run_in_threadpool
from starlette.responses import RedirectResponse, Response

from combwright.records.replay.known_medicines import known_products
from combwright.records.replay.on_shelf import FONDANT, SUGAR, jar_item
from combwright.records.store.contents import Contents
from combwright.services.book.beginning import hive_used_last
from combwright.services.book.entry_form import form_fields, form_of, take_entry
from combwright.services.book.notes import NoteError
from combwright.services.book.photos import plain_picture
from combwright.terms.entries import Kit, Visit
from combwright.weather.climates import climates
from combwright.weather.forage import districts
from combwright.web.desk import AtDesk, Desk
from combwright.web.pages.note import Sent, sent
from combwright.web.refusing import by_field
from combwright.web.showing import page

OWN = ("order", "order news", "batch", "batch counts", "own queen", "own queen news")
MEDICINES = ("product", "purchase", "disposal")
HONEY = ("honey batch", "honey source", "jar run", "jar weights", "honey sale", "keeper")
ANEW: Final = {"id", "kind", "on", "remark"}  # of a form that changes what is known
BEES = ("bees sold", "movement", "suspicion")
USUAL_JARS: Final = (227.0, 340.0, 454.0)  # common practice
PHOTO_OF: Final = {
    "product": "of the label",
    "purchase": "of the receipt",
    "disposal": "of the paper",
    "suspicion": "of the sign",
}
router = APIRouter(include_in_schema=False)


@router.get("/yards")
def show(at: AtDesk, request: Request) -> Response:
    """List the yards and the colonies in them."""
    book = at.book.now()
    seen = {each.colony: each.on for each in book.entries if isinstance(each, Visit)}
    here = {name: list(some) for name, some in groupby(book.living, key=lambda one: one.yard)}
    yards = {name: here.get(name, []) for name in sorted({*here, *book.yards}, key=stop_at(book))}
    change = {name: urlencode(each.model_dump(exclude=ANEW, exclude_none=True))
              for name, each in book.yards.items()}  # fmt: skip
    return page(
        request,
        "yards.html",
        yards=yards,
        known=book.yards,
        seen=seen,
        change=change,
        today=at.today,
    )


def stop_at(book: Contents) -> Callable[[str], tuple[float, str]]:
    """Put yards in the keeper's own order of driving, the others after them by name."""
    stops = {name: each.stop or math.inf for name, each in book.yards.items()}
    return lambda name: (stops.get(name, math.inf), name)


@router.get("/enter/{kind}")
def ask(at: AtDesk, request: Request, kind: str) -> Response:
    """Show the form of one kind of entry; what it is about may stand in the address."""
    about = {name: value for name, value in request.query_params.items() if value}
    usual = {"hive": hive_used_last(at.book, kind)} if kind in {"colony", "split"} else {}
    own = {"id": str(uuid4()), "on": str(at.day_meant(request))}
    return form(request, at, kind, usual | about | own)


BACK = {
    "kit": "/kit", **dict.fromkeys(("limit", "price", "aim", "counting", "wording"), "/settings"),
    **dict.fromkeys(OWN, "/supply"), **dict.fromkeys(MEDICINES, "/register"),
    **dict.fromkeys(HONEY, "/honey"), **dict.fromkeys(BEES, "/bees"),
}  # fmt: skip


def form(
    request: Request,
    at: Desk,
    kind: str,
    values: Mapping[str, str],
    error: NoteError | None = None,
) -> Response:
    """Show a form with values, and what is wrong beside its field."""
    return page(
        request,
        "enter.html",
        status_code=422 if error else 200,
        kind=kind,
        title=form_of(kind).TITLE,
        fields=form_fields(kind, known_names(at)),
        values=values,
        wrong=by_field(error),
        back=BACK.get(kind, "/yards"),
        takes_photo=PHOTO_OF.get(kind, ""),
    )


def known_names(at: Desk) -> dict[str, Sequence[str]]:
    """Give the names that fields of forms are chosen from."""
    book = at.book.now()
    return {
        "colony": [each.colony for each in book.living],
        "yard": list(book.yards),
        "hive": [each.key for each in at.book.kit.hives()],
        "climate": climates(),
        "district": districts(),
        "item": items(at),
        "order": [name for name, each in book.orders.items() if each.open],
        "batch": list(book.batches),
        "honey": list(book.honey),
        "lot": list(book.lots),
        "product": list(known_products(book.entries)),
        "own queen": [name for name, each in book.queens.items() if not each.is_gone],
    }


def items(at: Desk) -> list[str]:
    """Name what can be counted: what the book counts already, and the catalogue."""
    counted = [each.item for each in at.book.now().entries if isinstance(each, Kit)]
    usual = ["drawn frame", "foundation frame", "dummy board", "super", "queen excluder"]
    used = [SUGAR, FONDANT, *(jar_item(size) for size in USUAL_JARS)]
    return list(dict.fromkeys([*counted, *usual, *used, *sorted(at.book.kit.items)]))


@router.post("/enter/{kind}")
async def take(at: AtDesk, request: Request, kind: str) -> Response:
    """Take an entry."""
    brought = await sent(request)
    try:
        await run_in_threadpool(keep, at, kind, brought)
    except NoteError as error:
        return await run_in_threadpool(form, request, at, kind, brought.fields, error)
    return RedirectResponse(BACK.get(kind, "/yards"), status_code=303)


def keep(at: Desk, kind: str, brought: Sent) -> None:
    """Put an entry into the book, and its photo beside it; one that is no photo stops both."""
    has_photo = bool(brought.photo and kind in PHOTO_OF)
    if has_photo:
        plain_picture(brought.photo)
    entry = take_entry(at.book, kind, brought.fields)
    if has_photo:
        at.photos.keep_of(entry, brought.photo)
