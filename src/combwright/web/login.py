"""The door: who may pass without a passphrase, and how one logs in and out."""

from asyncio import sleep, wrap_future
from typing import Annotated, Final
from urllib.parse import quote, urlsplit

from fastapi import APIRouter, Form, Request
from starlette.concurrency import run_in_threadpool
from starlette.responses import JSONResponse, PlainTextResponse, RedirectResponse, Response
from starlette.types import ASGIApp, Receive, Scope, Send

from combwright.records.store.authorship import written_by
from combwright.services.access import SESSION, Caller
from combwright.services.login_tries import WITHIN
from combwright.terms.errors import CombwrightError, NotAllowedError, PassingError
from combwright.web.desk import AtDesk, desk
from combwright.web.device import device_of
from combwright.web.refusing import show_error
from combwright.web.roles import refuse_beyond_role
from combwright.web.showing import page
from combwright.web.this_machine import is_from_this_machine

OPEN_TO_ALL: Final = (
    *(
        "/static/",
        "/login",
        "/sw.js",
        "/figures.css",
        "/manifest.webmanifest",
        "/without-signal",
        "/health",
        "/waiting",
    ),
    "/calendar/",  # has a key of its own
    "/measures",  # likewise
    "/join/",  # whose address is secret, and used up at once
)

router = APIRouter(include_in_schema=False)


class Door:
    """Let through who is logged in; without a passphrase only who sits at this machine.

    What is written meanwhile bears the name of who came in.
    """

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Let a request through, or answer what is needed."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        request = Request(scope)
        try:
            answer = await run_in_threadpool(refusal, request)
        except CombwrightError as error:
            answer = await show_error(request, error)
        if answer is not None:
            await answer(scope, receive, send)
            return
        caller = caller_of(request)
        with written_by(caller and caller.hand(desk(request).clock())):
            await self.app(scope, receive, send)


def caller_of(request: Request) -> Caller | None:
    """Tell who is logged in; nobody has to at the machine of a book without passphrase."""
    found: Caller | None = getattr(request.state, "caller", None)
    return found


def refusal(request: Request) -> Response | None:
    """Say why a request may not pass, or nothing."""
    at, path = desk(request), request.url.path
    request.state.caller = at.access.who(token(request), at.clock())
    if request.state.caller is not None:
        refuse_beyond_role(request.state.caller.role, request.method, path)
        return None
    if path.startswith(OPEN_TO_ALL) and (is_from_this_machine(request) or is_locked(request)):
        return None
    if not at.access.needs_passphrase:
        if is_from_this_machine(request):
            return None
        words = (
            "This book has no passphrase yet, so it opens only on the machine it lies on. "
            "Set one there with “combwright serve --set-passphrase”."
        )
        return PlainTextResponse(words, status_code=403)
    if request.method == "GET" and "text/html" in request.headers.get("accept", ""):
        whole = path + (f"?{request.url.query}" if request.url.query else "")
        return RedirectResponse(f"/login?to={quote(whole)}", status_code=303)
    told = {"what": "The login has expired.", "remedy": "Log in again.", "problems": []}
    return JSONResponse(told, status_code=401)


def is_locked(request: Request) -> bool:
    """Tell whether one has to log in; what nobody can tell is locked."""
    try:
        return desk(request).access.needs_passphrase
    except CombwrightError:
        return True


def cookie_name(request: Request) -> str:
    """Name the session's cookie; over HTTPS the browser itself ties it to this host."""
    return "__Host-combwright" if request.url.scheme == "https" else "combwright"


def token(request: Request) -> str:
    """Take the session's token from its cookie."""
    return request.cookies.get(cookie_name(request), "")


def own_path(wanted: str) -> str:
    """Keep a place to go to within this site."""
    parts = urlsplit(wanted)
    is_own = not parts.scheme and not parts.netloc and wanted.startswith("/")
    return wanted if is_own and not wanted.startswith(("//", "/\\")) else "/"


@router.get("/login")
def ask(at: AtDesk, request: Request, to: str = "/") -> Response:
    """Ask for the passphrase, and for a name where people share the book."""
    return page(request, "login.html", to=own_path(to), has_people=at.access.has_people)


@router.post("/login")
async def log_in(
    at: AtDesk,
    request: Request,
    passphrase: Annotated[str, Form()] = "",
    name: Annotated[str, Form(max_length=60)] = "",
    code: Annotated[str, Form(max_length=60)] = "",
    to: Annotated[str, Form()] = "/",
) -> Response:
    """Open a session for the right passphrase."""
    now = at.clock()
    try:
        await may_try(request)
    except PassingError as error:
        later = await run_in_threadpool(again, request, to, str(error), 429)
        later.headers["Retry-After"] = str(int(WITHIN.total_seconds()))
        return later
    caller = await wrap_future(at.access.weigh(name, passphrase, code, now))
    if caller is None:
        told = "That is not the passphrase. Look at capitals and blanks."
        if await run_in_threadpool(lambda: at.access.has_people):
            told = "Name, passphrase or code do not fit. Look at capitals and blanks."
        return await run_in_threadpool(again, request, to, told, 422)
    at.access.tries.succeed(address_of(request))
    return await run_in_threadpool(let_in, request, caller, own_path(to))


async def may_try(request: Request) -> None:
    """Count a try at a passphrase, and refuse it where there were too many."""
    at = desk(request)
    if not at.access.tries.begin(address_of(request), at.clock()):
        raise PassingError("Too many wrong tries.", remedy="Wait ten minutes.")
    await sleep(at.access.tries.pause_s)


async def refuse_another(request: Request, passphrase: str) -> None:
    """Before something that matters, refuse who does not know the passphrase of the session."""
    at, caller = desk(request), caller_of(request)
    if caller is None:  # at the machine of a book that has no passphrase
        return
    await may_try(request)
    if not await wrap_future(at.access.confirm(caller, passphrase)):
        raise NotAllowedError("That is not your passphrase.", remedy="Go back, and try again.")
    at.access.tries.succeed(address_of(request))


def address_of(request: Request) -> str:
    """Give the address that a try comes from."""
    return request.client.host if request.client else ""


def let_in(request: Request, caller: Caller, to: str) -> Response:
    """Begin a session of a new token, end the one there was, and lead on."""
    at = desk(request)
    end_session(request)
    answer = RedirectResponse(to, status_code=303)
    answer.set_cookie(
        cookie_name(request),
        at.access.begin(at.clock(), caller, device_of(request.headers.get("user-agent", ""))),
        max_age=int(SESSION.total_seconds()),
        httponly=True,
        samesite="lax",
        secure=request.url.scheme == "https",
    )
    return answer


def end_session(request: Request) -> None:
    """End the session of a request, if it has one."""
    if session := desk(request).access.sessions.whose(token(request), desk(request).clock()):
        desk(request).access.sessions.end(session.key)


def again(request: Request, to: str, problem: str, status: int) -> Response:
    """Ask once more, and say why."""
    return page(
        request,
        "login.html",
        to=own_path(to),
        problem=problem,
        has_people=desk(request).access.has_people,
        status_code=status,
    )


@router.post("/logout")
def log_out(request: Request) -> Response:
    """End the session, and have the browser forget the pages that it kept."""
    at, caller = desk(request), caller_of(request)
    end_session(request)
    if caller is not None:
        at.access.note(at.clock(), caller.person and caller.person.id, "logged out")
    answer = RedirectResponse("/login", status_code=303)
    answer.delete_cookie(cookie_name(request))
    answer.headers["Clear-Site-Data"] = '"cache"'  # not storage: notes wait there to be sent
    return answer
