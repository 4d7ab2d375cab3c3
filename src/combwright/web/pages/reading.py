"""What one can read up: evidence, assumptions, why, the words."""

from functools import cache
from itertools import groupby

from fastapi import APIRouter, Request
from starlette.responses import Response

from combwright.evidence import wording
from combwright.evidence.assumptions import Assumption, assumptions
from combwright.evidence.check_files import read_checks
from combwright.evidence.running import Finding, run_all
from combwright.terms.errors import NotFoundError
from combwright.terms.glossary import OF_THE_TRADE, OURS
from combwright.web.showing import page

router = APIRouter(include_in_schema=False)


@cache
def findings() -> tuple[Finding, ...]:
    """Run every check, once for as long as the program runs."""
    return tuple(run_all(read_checks()))


@cache
def numbers() -> tuple[Assumption, ...]:
    """List every number one could argue about."""
    return tuple(assumptions())


@router.get("/evidence")
def evidence(request: Request) -> Response:
    """Give an overview of what was checked against what is published."""
    topics = [
        (topic, list(group))
        for topic, group in groupby(findings(), key=lambda one: one.check.topic)
    ]
    rows = [
        (topic, len(group), sum(one.passes for one in group), sum(one.unexplained for one in group))
        for topic, group in topics
    ]
    return page(request, "evidence.html", rows=rows, summary=wording.summary(findings()))


@router.get("/evidence/{topic}")
def of_topic(request: Request, topic: str) -> Response:
    """Show the checks of one topic."""
    chosen = [one for one in findings() if one.check.topic == topic]
    if not chosen:
        raise NotFoundError(f"There is no evidence on “{topic}”.", remedy="Choose from the list.")
    shown = [
        (one, wording.verdict(one), wording.expected(one.check), wording.got(one)) for one in chosen
    ]
    return page(request, "evidence_topic.html", topic=topic, shown=shown, standing=wording.standing)


@router.get("/numbers")
def assumed(request: Request) -> Response:
    """List every number one could argue about, with its range and source."""
    groups = [
        (module, list(some)) for module, some in groupby(numbers(), key=lambda one: one.module)
    ]
    return page(request, "numbers.html", groups=groups)


@router.get("/why")
def why(request: Request) -> Response:
    """Say why it works this way."""
    return page(request, "why.html")


@router.get("/glossary")
def glossary(request: Request) -> Response:
    """List the words."""
    return page(request, "glossary.html", ours=OURS, trade=OF_THE_TRADE)
