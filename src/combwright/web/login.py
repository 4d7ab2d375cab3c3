"""The door: who may pass without a passphrase, and how one logs in and out."""

from asyncio import sleep, wrap_future
from typing import Annotated, Final
from urllib.parse import quote, urlsplit

from fastapi import APIRouter, Form, Request
from starlette.concurrency import run_in_threadpool
from starlette.responses import JSONResponse, PlainTextResponse, RedirectResponse, Response
from starlette.types import ASGIApp, Receive, Scope, Send

from combwright.services.access import SESSION
from combwright.services.login_tries import WITHIN
from combwright.web.desk import AtDesk, desk
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
)

router = APIRouter(include_in_schema=False)


class Door:
    """Let through who is logged in; without a passphrase only who sits at this machine."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Let a request through, or answer what is needed."""
        answer = refusal(Request(scope)) if scope["type"] == "http" else None
        await (answer or self.app)(scope, receive, send)


def refusal(request: Request) -> Response | None:
    """Say why a request may not pass, or nothing."""
    at = desk(request)
    path = request.url.path
    if not at.access.needs_passphrase:
        if is_from_this_machine(request):
            return None
        words = (
            "This book has no passphrase yet, so it opens only on the machine it lies on. "
            "Set one there with `combwright serve --set-passphrase`."
        )
        return PlainTextResponse(words, status_code=403)
    if path.startswith(OPEN_TO_ALL) or at.access.holds(token(request), at.clock()):
        return None
    if request.method == "GET" and "text/html" in request.headers.get("accept", ""):
        whole = path + (f"?{request.url.query}" if request.url.query else "")
        return RedirectResponse(f"/login?to={quote(whole)}", status_code=303)
    told = {"what": "The login has expired.", "remedy": "Log in again.", "problems": []}
    return JSONResponse(told, status_code=401)


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
def ask(request: Request, to: str = "/") -> Response:
    """Ask for the passphrase."""
    return page(request, "login.html", to=own_path(to))


@router.post("/login")
async def log_in(
    at: AtDesk,
    request: Request,
    passphrase: Annotated[str, Form()] = "",
    to: Annotated[str, Form()] = "/",
) -> Response:
    """Open a session for the right passphrase."""
    address = request.client.host if request.client else ""
    now = at.clock()
    if not at.access.tries.begin(address, now):
        told = "Too many wrong tries. Wait ten minutes."
        later = await run_in_threadpool(again, request, to, told, 429)
        later.headers["Retry-After"] = str(int(WITHIN.total_seconds()))
        return later
    await sleep(at.access.tries.pause_s)
    if not await wrap_future(at.access.weigh(passphrase)):
        told = "That is not the passphrase. Look at capitals and blanks."
        return await run_in_threadpool(again, request, to, told, 422)
    at.access.tries.succeed(address)
    answer = RedirectResponse(own_path(to), status_code=303)
    answer.set_cookie(
        cookie_name(request),
        await run_in_threadpool(at.access.begin, now),
        max_age=int(SESSION.total_seconds()),
        httponly=True,
        samesite="lax",
        secure=request.url.scheme == "https",
    )
    return answer


def again(request: Request, to: str, problem: str, status: int) -> Response:
    """Ask once more, and say why."""
    return page(request, "login.html", to=own_path(to), problem=problem, status_code=status)


@router.post("/logout")
def log_out(at: AtDesk, request: Request) -> Response:
    """End the session, and have the browser forget the pages that it kept."""
    at.access.end(token(request))
    answer = RedirectResponse("/login", status_code=303)
    answer.delete_cookie(cookie_name(request))
    answer.headers["Clear-Site-Data"] = '"cache"'  # not storage: notes wait there to be sent
    return answer
