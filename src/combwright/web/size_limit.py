"""No request may be larger than a notebook with a photo can be."""

from typing import Final

from starlette.responses import JSONResponse
from starlette.types import ASGIApp, Message, Receive, Scope, Send

LARGEST: Final = 12_000_000
REFUSAL: Final = {
    "what": "This is more than 12 MB.",
    "remedy": "Send the notebook in parts, or a smaller photo.",
    "problems": [],
}


class TooLargeError(Exception):
    """The body goes on beyond the limit."""


class SizeLimit:
    """Refuse what is too large: by its announced size, or where it goes on too long."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Let a request through up to the limit."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        headers = dict(scope["headers"])
        refusal = JSONResponse(REFUSAL, status_code=413)
        announced = headers.get(b"content-length", b"0")
        if not announced.isdigit() or int(announced) > LARGEST:
            await refusal(scope, receive, send)
            return
        taken, is_answered = 0, False

        async def counted() -> Message:
            nonlocal taken
            message = await receive()
            taken += len(message.get("body", b""))
            if taken > LARGEST:
                raise TooLargeError
            return message

        async def watched(message: Message) -> None:
            nonlocal is_answered
            is_answered = True
            await send(message)

        try:
            await self.app(scope, counted, watched)
        except TooLargeError:
            if not is_answered:
                await refusal(scope, receive, send)
