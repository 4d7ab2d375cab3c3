"""Waiting for a round that is still being worked out, on whatever page needs it."""

from datetime import date

from fastapi import Request
from starlette.responses import Response

from combwright.planning.sheet import RoundSheet
from combwright.services.progress import Step
from combwright.web.desk import Desk
from combwright.web.showing import page


class StillWorking(Exception):  # noqa: N818  (no error: the page says how far it is, and goes on)
    """A page needs a round that is not ready."""

    def __init__(self, on: date, days: int, step: Step) -> None:
        self.on, self.days, self.step = on, days, step


def worked_out(at: Desk, on: date, days: int = 7) -> RoundSheet:
    """Give a round if it is ready; if not, begin it and let the page wait."""
    working = at.rounds.begin(on, days)
    if not working.future.done():
        raise StillWorking(on, days, working.step)
    return working.future.result()


async def show_wait(request: Request, waiting: Exception) -> Response:
    """Say how far it is, in place of the page."""
    return page(request, "wait.html", status_code=202, **vars(waiting))
