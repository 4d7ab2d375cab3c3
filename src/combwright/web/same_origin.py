"""No token is needed to know that a form came from our own page: the browser says so.

After F. Valsorda, https://words.filippo.io/csrf/. Pages kept for work without signal stay valid.
"""

from urllib.parse import urlsplit

from starlette.requests import Request
from starlette.responses import PlainTextResponse
from starlette.types import ASGIApp, Receive, Scope, Send


class SameOriginOnly:
    """Refuse to write when another site's page asks a browser to."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Let a request through, or answer that it is not allowed."""
        if scope["type"] == "http" and not is_own(Request(scope)):
            refusal = PlainTextResponse("This form came from another site.", status_code=403)
            await refusal(scope, receive, send)
        else:
            await self.app(scope, receive, send)


def is_own(request: Request) -> bool:
    """Tell whether a request only reads, or comes from our own page, or from no browser."""
    site, origin = request.headers.get("sec-fetch-site"), request.headers.get("origin")
    if request.method in {"GET", "HEAD"}:
        return True
    if site is not None:
        return site in {"same-origin", "none"}
    return origin is None or urlsplit(origin).netloc == request.headers.get("host")
