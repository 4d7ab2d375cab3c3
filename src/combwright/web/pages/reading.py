"""What one can read up: evidence, assumptions, why, the words."""

from collections import Counter
from functools import cache
from typing import Final

from fastapi import APIRouter, Request
from starlette.responses import Response

from combwright.evidence import wording
from combwright.evidence.assumptions import Assumption, assumptions
from combwright.evidence.at_hand import AtHand
from combwright.terms.errors import NotFoundError
from combwright.terms.glossary import OF_THE_TRADE, OURS
from combwright.web.showing import page

router = APIRouter(include_in_schema=False)
AT_HAND: Final = AtHand()
PATIENCE_S: Final = 0.5  # after which a page shows what is worked out, and loads itself again


@cache
def numbers() -> tuple[Assumption, ...]:
    """List every number one could argue about."""
    return tuple(assumptions())


@router.get("/evidence")
def evidence(request: Request) -> Response:
    """Give an overview of what was checked against what is published."""
    found = AT_HAND.findings(PATIENCE_S)
    rows = [(topic, len(checks), found.get(topic)) for topic, checks in AT_HAND.topics.items()]
    every = [finding for some in found.values() for finding in some]
    summary = wording.summary(every) if len(found) == len(rows) else ""
    return page(request, "evidence.html", rows=rows, summary=summary)


@router.get("/evidence/{topic}")
def of_topic(request: Request, topic: str) -> Response:
    """Show the checks of one topic."""
    found = AT_HAND.findings(PATIENCE_S, topic)
    if topic not in AT_HAND.topics:
        raise NotFoundError(f"There is no evidence on “{topic}”.", remedy="Choose from the list.")
    shown = [
        (one, wording.verdict(one), wording.expected(one.check), wording.got(one))
        for one in found.get(topic, [])
    ]
    return page(request, "evidence_topic.html", topic=topic, shown=shown, standing=wording.standing)


@router.get("/numbers")
def assumed(request: Request) -> Response:
    """List where numbers stand that one could argue about."""
    return page(request, "numbers.html", rooms=Counter(one.module for one in numbers()))


@router.get("/numbers/{room}")
def of_room(request: Request, room: str) -> Response:
    """List the numbers of one room, with range and source."""
    chosen = [one for one in numbers() if one.module == room]
    if not chosen:
        raise NotFoundError(f"There are no numbers of “{room}”.", remedy="Choose from the list.")
    return page(request, "numbers_room.html", room=room, chosen=chosen)


@router.get("/why")
def why(request: Request) -> Response:
    """Say why it works this way."""
    return page(request, "why.html")


@router.get("/glossary")
def glossary(request: Request) -> Response:
    """List the words."""
    return page(request, "glossary.html", ours=OURS, trade=OF_THE_TRADE)
