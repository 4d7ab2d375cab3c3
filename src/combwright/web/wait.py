"""Waiting for a round that is still being worked out, on whatever page needs it."""

from datetime import date

from fastapi import Request
from starlette.responses import Response

from combwright.planning.sheet import RoundSheet
from combwright.services.progress import Step
from combwright.services.rounds.at_a_glance import glance
from combwright.services.rounds.kept_rounds import part_of_round
from combwright.services.rounds.own_minutes import own_minutes
from combwright.web.desk import Desk
from combwright.web.showing import page


class StillWorking(Exception):  # noqa: N818  (no error: the page says how far it is, and goes on)
    """A page needs a round that is not ready."""

    def __init__(self, on: date, days: int, step: Step, ready: list[tuple[str, str]]) -> None:
        self.on, self.days, self.step, self.ready = on, days, step, ready


class NothingToPlan(Exception):  # noqa: N818  (no error either: the page says from when on)
    """A page needs the round of a day on which no colony was noted yet."""

    def __init__(self, on: date, first: date | None) -> None:
        self.on, self.first = on, first


def worked_out(at: Desk, on: date, days: int = 7) -> RoundSheet:
    """Give a round if it is ready; if not, begin it and let the page wait."""
    working = at.rounds.begin(on, days)
    if working.future.done() and working.future.exception() is None:
        return working.future.result()
    book = at.book.now()
    if not book.living or book.first_note is None or on < book.first_note:
        raise NothingToPlan(on, book.first_note)
    if not working.future.done():
        raise StillWorking(on, days, working.step, lines_ready(at, on, days))
    return working.future.result()


def lines_ready(at: Desk, on: date, days: int) -> list[tuple[str, str]]:
    """Give the colonies of a round in work that are planned, each with its one line."""
    own = own_minutes(at.book.now().entries, on)
    return [(each.colony, glance(each, own).line) for each in at.rounds.so_far(on, days)]


def worked_out_for(at: Desk, on: date, days: int, colony: str) -> RoundSheet:
    """Give a round as far as one colony's page needs it: what is ready, if that colony is."""
    working = at.rounds.begin(on, days)
    ready = [] if working.future.done() else at.rounds.so_far(on, days)
    if all(each.colony != colony for each in ready):
        return worked_out(at, on, days)
    return part_of_round(on, ready)


async def show_nothing(request: Request, asked: Exception) -> Response:
    """Say from when on a round can be planned, in place of the page."""
    return page(request, "empty.html", **vars(asked))


async def show_wait(request: Request, waiting: Exception) -> Response:
    """Say how far it is, in place of the page."""
    return page(request, "wait.html", status_code=202, **vars(waiting))
