"""Headers that narrow what a browser may do with our pages: nothing of the book stays in it."""

from typing import Final

from starlette.datastructures import MutableHeaders
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from combwright.web.login import OPEN_TO_ALL

POLICY: Final = (
    "default-src 'none'; "
    "object-src 'none'; "
    "script-src 'self'; "
    "style-src 'self'; "
    "font-src 'self'; "
    "img-src 'self' blob: data:; "
    "connect-src 'self'; "
    "manifest-src 'self'; "
    "worker-src 'self'; "
    "form-action 'self'; "
    "base-uri 'none'; "
    "frame-ancestors 'none'"
)
HEADERS: Final = {
    "Content-Security-Policy": POLICY,
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "same-origin",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Permissions-Policy": "geolocation=(), microphone=(), camera=(self)",
}
FOR_A_YEAR: Final = "max-age=31536000; includeSubDomains"


class SafeHeaders:
    """Add the headers to every answer."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass a request on and add to its answer."""

        async def with_headers(message: Message) -> None:
            if message["type"] == "http.response.start":
                headers = MutableHeaders(scope=message)
                for name, value in HEADERS.items():
                    headers.setdefault(name, value)
                if scope["scheme"] == "https":
                    headers.setdefault("Strict-Transport-Security", FOR_A_YEAR)
                of_all = scope["path"].startswith(OPEN_TO_ALL)
                headers.setdefault("Cache-Control", "private, no-cache" if of_all else "no-store")
            await send(message)

        await self.app(scope, receive, with_headers if scope["type"] == "http" else send)
