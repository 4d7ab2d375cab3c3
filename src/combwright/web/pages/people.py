"""Who shares the book: people, links, sessions, and the log of the door. For keepers."""

from datetime import datetime
from typing import Annotated, Final, Literal
from uuid import UUID

from fastapi import APIRouter, Form, Request
from starlette.concurrency import run_in_threadpool
from starlette.responses import RedirectResponse, Response

from combwright.services.people.second_factor import end_second_factor
from combwright.services.people.sharing import (
    change_role,
    door_lines,
    end_person,
    invite,
    invite_again,
    people_of,
)
from combwright.terms.errors import NotFoundError
from combwright.terms.person import Person, Role
from combwright.web.desk import AtDesk, Desk
from combwright.web.login import caller_of, let_in, refuse_another
from combwright.web.showing import page

router = APIRouter(prefix="/people", include_in_schema=False)
LINES: Final = 100
Words = Annotated[str, Form(max_length=1000)]
PersonChange = Literal["keeper", "helper", "reader", "link", "factor", "end"]


@router.get("")
def show(at: AtDesk, request: Request) -> Response:
    """Show who shares the book, where they are logged in, and what happened at the door."""
    return page(
        request,
        "people.html",
        people=[one for one in people_of(at.access.book) if one.ended is None],
        sessions=at.access.going(at.clock()),
        log=door_lines(at.access.book, LINES),
        roles=list(Role),
    )


@router.post("/begin")
async def begin(
    at: AtDesk, request: Request, name: Annotated[str, Form()], passphrase: Words
) -> Response:
    """Give the keeper of the book a name, so that others can be invited."""
    if await run_in_threadpool(lambda: at.access.needs_passphrase):
        await refuse_another(request, passphrase)
    caller = await run_in_threadpool(at.access.begin_people, name, passphrase, at.clock())
    return await run_in_threadpool(let_in, request, caller, "/people")


@router.post("/invite")
async def add(
    at: AtDesk,
    request: Request,
    name: Annotated[str, Form()],
    role: Annotated[Role, Form()],
    passphrase: Words,
) -> Response:
    """Invite somebody, and show the link once."""
    await refuse_another(request, passphrase)
    by = _who(request)
    token = await run_in_threadpool(invite, at.access.book, name, role, at.clock(), by)
    return await run_in_threadpool(_link, request, name, token)


@router.post("/change")
async def change(
    at: AtDesk,
    request: Request,
    person: Annotated[UUID, Form()],
    what: Annotated[PersonChange, Form()],
    passphrase: Words,
) -> Response:
    """Change what somebody may do, or let them in anew, or no longer."""
    await refuse_another(request, passphrase)
    whom = await run_in_threadpool(_found, at, person)
    return await run_in_threadpool(_change, at, request, whom, what)


def _change(at: Desk, request: Request, whom: Person, what: PersonChange) -> Response:
    book, now, by = at.access.book, at.clock(), _who(request)
    if what == "link":
        return _link(request, whom.name, invite_again(book, whom, now, by))
    if what == "end":
        end_person(book, whom, now, by)
    elif what == "factor":
        end_second_factor(book, whom, now, by)
    else:
        change_role(book, whom, Role(what), now, by)
    return RedirectResponse("/people", status_code=303)


@router.post("/sessions")
async def end_sessions(
    at: AtDesk,
    request: Request,
    passphrase: Words,
    session: Annotated[list[str], Form()] = [],  # noqa: B006  (never changed)
) -> Response:
    """End sessions from afar, whosever they are."""
    await refuse_another(request, passphrase)
    await run_in_threadpool(end_all, at, set(session), _who(request), at.clock())
    return RedirectResponse("/people", status_code=303)


def end_all(at: Desk, keys: set[str], by: Person | None, now: datetime) -> None:
    """End sessions by their keys; others than those that go on are passed over."""
    for one, caller in at.access.going(now):
        if one.key in keys:
            at.access.sessions.end(one.key)
            name = caller.person.name if caller.person else "the keeper"
            at.access.note(now, by and by.id, f"ended a session of {name} ({one.device})")


def _link(request: Request, name: str, token: str) -> Response:
    return page(request, "link.html", name=name, link=f"{request.base_url}join/{token}")


def _who(request: Request) -> Person | None:
    caller = caller_of(request)
    return caller.person if caller else None


def _found(at: Desk, key: UUID) -> Person:
    for one in people_of(at.access.book):
        if one.id == key and one.ended is None:
            return one
    raise NotFoundError("Nobody of that name shares this book.", remedy="Open the page again.")
