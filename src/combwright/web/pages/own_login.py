"""One's own login: passphrase, second factor, sessions; and coming in by an invitation."""

from typing import Annotated

from fastapi import APIRouter, Form, Request
from starlette.concurrency import run_in_threadpool
from starlette.responses import RedirectResponse, Response

from combwright.services.access import Caller
from combwright.services.people.second_factor import confirm, end_second_factor, offer
from combwright.services.people.sharing import invited_by, join, set_own_passphrase
from combwright.terms.errors import NotAllowedError, OutOfRangeError
from combwright.terms.person import Person
from combwright.web.desk import AtDesk
from combwright.web.login import caller_of, let_in, refuse_another
from combwright.web.pages.people import Words, end_all
from combwright.web.showing import page

router = APIRouter(include_in_schema=False)


def person_in(request: Request) -> Person:
    """Give who is logged in by name."""
    caller = caller_of(request)
    if caller is None or caller.person is None:
        raise NotAllowedError("This is for people with names.", remedy="Begin under People.")
    return caller.person


@router.get("/own-login")
def show(at: AtDesk, request: Request) -> Response:
    """Show one's own login."""
    caller = caller_of(request)
    going = at.access.going(at.clock())
    return page(
        request, "own_login.html", sessions=[one for one, theirs in going if theirs == caller]
    )


@router.post("/own-login/passphrase")
async def change(at: AtDesk, request: Request, passphrase: Words, new: Words) -> Response:
    """Set another passphrase; all sessions end but a new one here."""
    await refuse_another(request, passphrase)
    caller = caller_of(request)
    if caller is None or caller.person is None:
        await run_in_threadpool(at.access.set_passphrase, new)
        at.access.note(at.clock(), None, "has a new passphrase")
    else:
        await run_in_threadpool(set_own_passphrase, at.access.book, caller.person, new, at.clock())
    return await run_in_threadpool(let_in, request, caller or Caller(), "/own-login")


@router.post("/own-login/sessions")
async def end_sessions(
    at: AtDesk,
    request: Request,
    passphrase: Words,
    session: Annotated[list[str], Form()] = [],  # noqa: B006  (never changed)
) -> Response:
    """End sessions of one's own."""
    await refuse_another(request, passphrase)
    caller, now = caller_of(request), at.clock()
    own = {one.key for one, theirs in at.access.going(now) if theirs == caller}
    by = caller.person if caller else None
    await run_in_threadpool(end_all, at, own & set(session), by, now)
    return RedirectResponse("/own-login", status_code=303)


@router.post("/own-login/factor")
async def begin_factor(at: AtDesk, request: Request, passphrase: Words) -> Response:
    """Show a seed for an authenticator."""
    await refuse_another(request, passphrase)
    offered = await run_in_threadpool(offer, at.access.book, person_in(request), at.clock())
    return page(request, "factor.html", offered=offered)


@router.post("/own-login/factor/confirm")
def end_begun(at: AtDesk, request: Request, code: Annotated[str, Form(max_length=60)]) -> Response:
    """Take the seed into use, and show the codes for when it is lost, once."""
    codes = confirm(at.access.book, person_in(request), code, at.clock())
    return page(request, "codes.html", codes=codes)


@router.post("/own-login/factor/end")
async def end_factor(at: AtDesk, request: Request, passphrase: Words) -> Response:
    """Log in by the passphrase alone from now on."""
    await refuse_another(request, passphrase)
    person = person_in(request)
    await run_in_threadpool(end_second_factor, at.access.book, person, at.clock(), person)
    return RedirectResponse("/own-login", status_code=303)


@router.get("/join/{token}")
def ask(at: AtDesk, request: Request, token: str) -> Response:
    """Ask who was invited for a passphrase."""
    person = invited_by(at.access.book, token, at.clock())
    shown = page(request, "join.html", person=person, problem="")
    shown.headers["Cache-Control"] = "no-store"
    return shown


@router.post("/join/{token}")
def come_in(at: AtDesk, request: Request, token: str, passphrase: Words) -> Response:
    """Set the passphrase; who has no second factor is in, and the link is used up."""
    person = invited_by(at.access.book, token, at.clock())
    try:
        person = join(at.access.book, token, passphrase, at.clock())
    except OutOfRangeError as error:
        return page(request, "join.html", person=person, problem=str(error), status_code=422)
    if person.has_second_factor:
        return RedirectResponse("/login", status_code=303)
    return let_in(request, Caller(person), "/")
