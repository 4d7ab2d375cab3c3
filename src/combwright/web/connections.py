"""Connections that bring a request too slowly are closed, and there are never too many of them.

uvicorn itself waits for ever for the rest of a request, and for whoever does not take the answer.
All bounds are judgement.
"""

from asyncio import TimerHandle
from typing import Any, ClassVar, Final

import h11
from uvicorn.protocols.http.h11_impl import H11Protocol

HEAD_S: Final = 10.0  # for a request up to its body, from the connection or its first byte on
BODY_S: Final = 20.0  # for its body, and a second more for each:
SLOWEST_BYTES: Final = 2000  # so that a photo of 400 kB may take three minutes
TAKING_S: Final = 60.0  # for taking what waits of an answer
MOST: Final = 400  # requests that are awaited; of more, the one awaited longest is given up


class Punctual(H11Protocol):
    """One connection, with a time until which its request has to be there."""

    awaited: ClassVar[dict["Punctual", None]] = {}  # those awaited longest first
    began, brought = 0.0, 0
    until: TimerHandle | None = None

    def connection_made(self, transport: Any) -> None:  # noqa: ANN401  (as uvicorn declares it)
        """Begin to wait for a request."""
        super().connection_made(transport)
        self.began = self.loop.time()
        self.wait_for_the_rest()

    def data_received(self, data: bytes) -> None:
        """Take what came, and wait for the rest if there is more to come."""
        if self not in self.awaited:
            self.began, self.brought = self.loop.time(), 0
        self.brought += len(data)
        super().data_received(data)
        self.wait_for_the_rest()

    def connection_lost(self, exc: Exception | None) -> None:
        """Wait no longer."""
        self.wait_no_more()
        super().connection_lost(exc)

    def pause_writing(self) -> None:
        """Give whoever takes an answer slowly a time for it."""
        super().pause_writing()
        self.close_after(TAKING_S)

    def resume_writing(self) -> None:
        """Go on with the answer."""
        self.wait_no_more()
        super().resume_writing()

    def wait_for_the_rest(self) -> None:
        """Set the time anew; a request that is there whole is waited for no more."""
        state = self.conn.their_state
        if state not in {h11.IDLE, h11.SEND_BODY} or self.transport.is_closing():
            self.wait_no_more()
            return
        allowed = HEAD_S if state is h11.IDLE else BODY_S + self.brought / SLOWEST_BYTES
        self.close_after(self.began + allowed - self.loop.time())
        self.awaited.setdefault(self)
        if len(self.awaited) > MOST:
            next(iter(self.awaited)).give_up()

    def close_after(self, seconds: float) -> None:
        """Give the connection up after a time."""
        if self.until is not None:
            self.until.cancel()
        self.until = self.loop.call_later(max(0.0, seconds), self.give_up)

    def wait_no_more(self) -> None:
        """Let the connection take its time again."""
        self.awaited.pop(self, None)
        if self.until is not None:
            self.until.cancel()
            self.until = None

    def give_up(self) -> None:
        """Close the connection at once."""
        self.wait_no_more()
        self.transport.abort()
