"""Templates: how data becomes a page."""

from collections.abc import Iterable
from datetime import date
from functools import cache, lru_cache
from hashlib import sha256
from importlib.resources import files
from pathlib import Path
from typing import Any, Final

from fastapi import Request
from jinja2 import Environment, PackageLoader, StrictUndefined
from markupsafe import Markup
from starlette.responses import HTMLResponse

from combwright import __version__
from combwright.advice.words.wording import many
from combwright.figures.comb_legend import legend
from combwright.figures.comb_strip import comb_stack
from combwright.paper.sheet_words import seen_words
from combwright.planning.sheet import Band
from combwright.science.queens.mark_colour import mark_colour
from combwright.services.access import Caller
from combwright.services.book.place_words import place_word
from combwright.terms.combs import StackView
from combwright.terms.dated import dated, in_days
from combwright.terms.person import Role
from combwright.web.addresses import segment

HARMS: Final = {"no room": "short of room", "sour": "soured syrup", "chilled": "chilled brood"}
STATIC: Final = Path(str(files("combwright.web").joinpath("static")))


@cache
def environment() -> Environment:
    """Give the one environment of all templates."""
    made = Environment(
        loader=PackageLoader("combwright.web"),
        auto_reload=False,  # the files of the package do not change under a running page
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    made.filters |= {
        "day": day,
        "short": short,
        "dated": dated,
        "in_days": in_days,
        "span": span,
        "halves": halves,
        "slug": slug,
        "many": many,
        "segment": segment,
        "seen": seen_words,
        "harm": harm,
        "mark": mark_colour,
    }
    made.globals |= {"strip": strip, "key": key, "version": __version__}
    return made


def compile_templates() -> None:
    """Compile every template now, rather than while the first who wants its page waits."""
    for name in environment().list_templates():
        environment().get_template(name)


def page(request: Request, template: str, *, status_code: int = 200, **shown: Any) -> HTMLResponse:  # noqa: ANN401
    """Show a page."""
    at = request.app.state.desk
    made = at.clock()
    caller: Caller | None = getattr(request.state, "caller", None)
    role = caller.role if caller else Role.KEEPER
    words = place_word(at.book)
    html = (
        environment()
        .get_template(template)
        .render(
            path=request.url.path,
            made=made.isoformat(timespec="seconds"),
            made_words=f"{made:%H:%M}, {made.day} {made:%b}",
            is_demo=at.is_demo,
            me=caller,
            role=role,
            **shown,
        )
    )
    return HTMLResponse(words.into_page(html), status_code=status_code)


@lru_cache(maxsize=4096)
def strip(before: StackView, after: StackView, name: str) -> tuple[Markup, ...]:
    """Draw a stack as expected and as it should be left, or once where nothing changes."""
    if before == after:
        shown = [(before, before, "leave as it is")]
    else:
        shown = [(before, before, "expected"), (after, before, "leave it so")]
    return tuple(
        Markup(comb_stack(stack, earlier, caption=caption, title=f"{name}, {caption}"))  # noqa: S704
        for stack, earlier, caption in shown
    )


@cache
def key() -> Markup:
    """Draw what the signs of a comb strip mean."""
    return Markup(legend(columns=2))  # noqa: S704  (ours)


@cache
def edition() -> str:
    """Name this state of everything that a phone keeps: it changes when any of it does."""
    digest = sha256(__version__.encode())
    for folder in ("static", "templates"):
        for path in sorted(STATIC.parent.joinpath(folder).iterdir()):
            digest.update(path.name.encode() + path.read_bytes())
    return digest.hexdigest()[:16]


def static_names() -> Iterable[str]:
    """Name the files that a phone keeps."""
    return sorted(path.name for path in STATIC.iterdir() if path.name != "sw.js")


def day(value: date | None) -> str:
    """Write a day in full: Saturday 24 April 2027."""
    return "never" if value is None else f"{value:%A} {value.day} {value:%B %Y}"


def short(value: date | None) -> str:
    """Write a day briefly: 24 Apr."""
    return "never" if value is None else f"{value.day} {value:%b}"


def span(band: Band) -> str:
    """Write a band: 5½ to 7 (6 most likely) is too long at arm's length, so 5½–7."""
    low, high = halves(band.low), halves(band.high)
    return low if low == high else f"{low}–{high}"


def halves(value: float) -> str:
    """Write a number of frames to the nearest half: 5½.

    Examples
    --------
    >>> halves(5.4), halves(0.3), halves(12.0), halves(0.1)
    ('5½', '½', '12', '0')

    """
    whole, half = divmod(round(2 * value), 2)
    return (str(whole) if whole or not half else "") + ("½" if half else "")


def harm(name: str) -> str:
    """Say a harm as a keeper would.

    Examples
    --------
    >>> harm("no_room"), harm("swarm")
    ('short of room', 'swarm')

    """
    plain = name.replace("_", " ")
    return HARMS.get(plain, plain)


def slug(name: str) -> str:
    """Make a name that can stand in an address and as an id."""
    kept = "".join(sign if sign.isalnum() else "-" for sign in name)
    return f"c-{kept}-{sha256(name.encode()).hexdigest()[:4]}"
