"""No token is needed to know who asks: the browser says whether our own page does.

After F. Valsorda, https://words.filippo.io/csrf/. Pages kept for work without signal stay valid.
Another site may neither write nor have anything worked out: where it leads a person here, that
person opens the page.
"""

from urllib.parse import urlsplit

from starlette.requests import Request
from starlette.responses import PlainTextResponse, Response
from starlette.types import ASGIApp, Receive, Scope, Send

from combwright.web.login import OPEN_TO_ALL, own_path
from combwright.web.showing import page


class SameOriginOnly:
    """Refuse what another site's page asks a browser for."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Let a request through, or answer that it is not allowed."""
        answer = refusal_of(Request(scope)) if scope["type"] == "http" else None
        await (answer or self.app)(scope, receive, send)


def refusal_of(request: Request) -> Response | None:
    """Say why a request may not be answered, or nothing."""
    is_reading = request.method in {"GET", "HEAD"}
    if is_own(request) or (is_reading and request.url.path.startswith(OPEN_TO_ALL)):
        return None
    if is_reading and request.headers.get("sec-fetch-mode") == "navigate":
        path = request.url.path + (f"?{request.url.query}" if request.url.query else "")
        return page(request, "led_here.html", to=own_path(path))
    return PlainTextResponse("This was asked for by another site.", status_code=403)


def is_own(request: Request) -> bool:
    """Tell whether a request comes from our own page, from the person, or from no browser."""
    site, origin = request.headers.get("sec-fetch-site"), request.headers.get("origin")
    if site is not None:
        return site in {"same-origin", "none"}
    if request.method in {"GET", "HEAD"}:
        return True
    return origin is None or urlsplit(origin).netloc == request.headers.get("host")
