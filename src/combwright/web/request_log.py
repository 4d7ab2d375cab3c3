"""A log that tells what the page does, in lines of JSON, and nothing of whom or of which bees.

Neither address, name, query nor content of a request stands in it: of an address only its pattern.
"""

import json
import logging
from time import perf_counter
from typing import Final

from starlette.types import ASGIApp, Message, Receive, Scope, Send

from combwright.web.measures import Measures

LOG: Final = logging.getLogger("combwright.page")


class RequestLog:
    """Write a line for each request that was answered, and count it, where that is wished."""

    def __init__(self, app: ASGIApp, measures: Measures | None = None) -> None:
        self.app, self._measures = app, measures

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass a request on, and note what came of it."""
        if scope["type"] != "http" or not (self._measures or LOG.isEnabledFor(logging.INFO)):
            await self.app(scope, receive, send)
            return
        began, status = perf_counter(), 500

        async def noted(message: Message) -> None:
            nonlocal status
            if message["type"] == "http.response.start":
                status = message["status"]
            await send(message)

        try:
            await self.app(scope, receive, noted)
        finally:
            took = perf_counter() - began
            method, route = scope["method"], getattr(scope.get("route"), "path", "")
            told = {"method": method, "route": route, "status": status, "ms": round(1000 * took)}
            LOG.info(json.dumps(told))
            if self._measures:
                self._measures.answered(method, route, status, took)
