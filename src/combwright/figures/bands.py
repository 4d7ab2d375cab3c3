"""Charts of what is expected over a season: a line in its band, and dots for what was noted."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from html import escape
from itertools import pairwise
from typing import Any

from combwright.terms.dated import dated
from combwright.terms.errors import OutOfRangeError

INK = "#111111"
GRID = "#c8c8c8"
DOT = "#ffffff"
# Each variant has its own colour, line and edge, so that colour is never the only sign.
LOOKS = (("#0b5a8f", [1, 0]), ("#a34a00", [7, 4]), ("#5c1a4c", [2, 3]))


@dataclass(frozen=True, slots=True)
class Course:
    """What is expected on each of some days: 5, 50 and 95 % quantiles."""

    days: Sequence[date]
    low: Sequence[float]
    mid: Sequence[float]
    high: Sequence[float]


@dataclass(frozen=True, slots=True)
class Seen:
    """A value that was noted on a day."""

    on: date
    value: float


@dataclass(frozen=True, slots=True)
class Mark:
    """Something that was done on a day: a sign over the plot, and what it means."""

    on: date
    sign: str
    means: str


def season_chart(
    series: Mapping[str, Course],
    *,
    title: str,
    unit: str,
    seen: Sequence[Seen] = (),
    marks: Sequence[Mark] = (),
    today: date | None = None,
    width: int = 640,
    height: int = 260,
) -> str:
    """Draw one course, or variants of it together, as SVG.

    An ``svg`` element with a description in words; equal data give equal bytes.

    One to three courses by their names, each over days of its own; a name is written at the end of
    its line. What was seen is drawn as dots, what was done as signs over the plot, today as an
    upright line with its date; width and height are those of the plot without its axes. [px]
    """
    _check(series, seen)
    chart = _chart(series, title, unit, [*_dots(seen), *_signs(marks), *_today(today)])
    import vl_convert

    drawn = vl_convert.vegalite_to_svg(chart.properties(width=width, height=height).to_dict())
    words = describe_season(series, title=title, unit=unit, seen=seen, marks=marks)
    name = escape(f"{title}, {unit}" if unit else title)
    opening = f'<svg role="img" aria-label="{name}" '
    drawn = drawn.replace("<svg ", opening, 1).replace('class="marks"', 'class="season"', 1)
    head, rest = drawn.split(">", 1)
    return f"{head}><title>{name}</title><desc>{escape(words)}</desc>{rest}"


def describe_season(
    series: Mapping[str, Course],
    *,
    title: str,
    unit: str,
    seen: Sequence[Seen] = (),
    marks: Sequence[Mark] = (),
) -> str:
    """Say in words what a season chart shows.

    Examples
    --------
    >>> course = Course([date(2026, 4, 1), date(2026, 5, 1)], [3, 5], [4, 7], [5, 9])
    >>> describe_season({"as advised": course}, title="Bees", unit="frames")
    'Bees in frames. as advised: from 4 (3 to 5) on 1 April 2026 to 7 (5 to 9) on 1 May 2026.'

    """
    parts = [f"{title} in {unit}." if unit else f"{title}."]
    for name, course in series.items():
        ends = [
            f"{course.mid[i]:.3g} ({course.low[i]:.3g} to {course.high[i]:.3g}) "
            f"on {dated(course.days[i])}"
            for i in (0, -1)
        ]
        parts.append(f"{name}: from {ends[0]} to {ends[1]}.")
    if seen:
        last = max(seen, key=lambda dot: dot.on)
        parts.append(f"Noted {len(seen)} times, last {last.value:.3g} on {dated(last.on)}.")
    for means in dict.fromkeys(mark.means for mark in marks):
        days = [dated(mark.on) for mark in marks if mark.means == means]
        parts.append(f"{means.capitalize()}: {', '.join(days)}.")
    return " ".join(parts)


def theme_css() -> str:
    """Return style rules by which a page can give every part of a chart another colour.

    Examples
    --------
    >>> '.season [stroke="#111111"]{stroke:var(--chart-ink,#111111)}' in theme_css()
    True

    """
    names = {"ink": INK, "grid": GRID, "dot": DOT}
    names |= {f"course-{i + 1}": colour for i, (colour, _) in enumerate(LOOKS)}
    rules = [
        f'.season [{part}="{colour}"]{{{part}:var(--chart-{name},{colour})}}'
        for name, colour in names.items()
        for part in ("fill", "stroke")
    ]
    return "\n".join(rules) + "\n"


def _check(series: Mapping[str, Course], seen: Sequence[Seen]) -> None:
    if not 1 <= len(series) <= len(LOOKS):
        raise OutOfRangeError(
            f"A chart holds 1 to {len(LOOKS)} courses, not {len(series)}.",
            remedy="Choose which to compare.",
        )
    for name, course in series.items():
        _check_course(name, course)
    if not all(math.isfinite(dot.value) for dot in seen):
        raise OutOfRangeError("A noted value is not a number.", remedy="Leave it out.")


def _check_course(name: str, course: Course) -> None:
    lengths = {len(part) for part in (course.days, course.low, course.mid, course.high)}
    if len(lengths) > 1 or 0 in lengths:
        raise OutOfRangeError(
            "Days and values of a course do not match, or there are none.",
            where=name,
            remedy="Give one low, mid and high value for each day.",
        )
    if not all(a < b for a, b in pairwise(course.days)):
        raise OutOfRangeError("Days are not in order.", where=name, remedy="Sort them.")
    for day, low, mid, high in zip(course.days, course.low, course.mid, course.high, strict=True):
        if not -math.inf < low <= mid <= high < math.inf:
            raise OutOfRangeError(
                f"{low}, {mid}, {high} on {dated(day)} are not a low, mid and high value.",
                where=name,
                remedy="Give numbers in rising order.",
            )


def _chart(
    series: Mapping[str, Course],
    title: str,
    unit: str,
    over: Sequence[Any],
) -> Any:  # noqa: ANN401 - Altair's layered chart; naming its class would import it for everyone
    import altair as alt

    layers: list[Any] = []
    shifts = _shifts(series)
    for (name, course), look in zip(series.items(), LOOKS, strict=False):
        layers += [*_course(course, *look), _name_at_the_end(name, course, look[0], shifts[name])]
    heading = alt.TitleParams(f"{title} [{unit}]" if unit else title, anchor="start", offset=18)
    padding = {"left": 5, "top": 5, "bottom": 5, "right": 10 + 3 * max(map(len, series))}
    return (
        alt.layer(*layers, *over)
        .properties(title=heading, background="transparent", padding=padding)
        .configure_view(stroke=None)
        .configure_axis(labelFontSize=13, gridColor=GRID, labelColor=INK, domainColor=INK)
        .configure_title(fontSize=15, color=INK)
    )


def _x() -> Any:  # noqa: ANN401 - as above
    import altair as alt

    return alt.X("on:T", title=None, axis=alt.Axis(format="%-d %b", tickCount=8))


def _course(course: Course, colour: str, dash: list[int]) -> list[Any]:
    import altair as alt

    base = alt.Chart(alt.InlineData(_rows(course))).encode(x=_x())
    band = base.mark_area(color=colour, opacity=0.22)
    edge = base.mark_line(color=colour, strokeWidth=0.8, strokeDash=dash)
    line = base.mark_line(color=colour, strokeWidth=2.6, strokeDash=dash)
    return [
        band.encode(y=alt.Y("low:Q", title=None), y2="high:Q"),
        edge.encode(y="low:Q"),
        edge.encode(y="high:Q"),
        line.encode(y="mid:Q"),
    ]


def _dots(seen: Sequence[Seen]) -> list[Any]:
    import altair as alt

    rows = alt.InlineData([{"on": _noon(dot.on), "value": dot.value} for dot in seen])
    mark = alt.Chart(rows).mark_point(color=INK, fill=DOT, size=70, strokeWidth=2, opacity=1)
    return [mark.encode(x=_x(), y="value:Q")] if seen else []


def _signs(marks: Sequence[Mark]) -> list[Any]:
    """Write what was done on a day over the plot, so that no band lies under it."""
    signs: dict[date, str] = {}
    for mark in marks:
        signs[mark.on] = signs.get(mark.on, "") + mark.sign * (
            mark.sign not in signs.get(mark.on, "")
        )
    return _over([{"on": _noon(on), "words": words} for on, words in sorted(signs.items())])


def _today(today: date | None) -> list[Any]:
    import altair as alt

    if today is None:
        return []
    rows = [{"on": _noon(today), "words": f"{today.day} {today:%b}"}]
    rule = alt.Chart(alt.InlineData(rows)).mark_rule(color=INK, strokeDash=[1, 3])
    return [rule.encode(x=_x()), *_over(rows, align="left", dx=-3)]


def _over(rows: list[dict[str, str]], **place: Any) -> list[Any]:  # noqa: ANN401 - Altair's
    import altair as alt

    chart = alt.Chart(alt.InlineData(rows))
    mark = chart.mark_text(color=INK, fontSize=12, fontWeight="bold", **place)
    return [mark.encode(x=_x(), y=alt.value(-8), text="words:N")] if rows else []


def _shifts(series: Mapping[str, Course]) -> dict[str, float]:
    """Return how far each name moves down, so that names of lines that end together stay apart."""
    from_the_top = sorted(series, key=lambda name: -series[name].mid[-1])
    return {name: 18 * (i - (len(series) - 1) / 2) for i, name in enumerate(from_the_top)}


def _name_at_the_end(name: str, course: Course, colour: str, shift: float) -> Any:  # noqa: ANN401 - as above
    import altair as alt

    end = alt.InlineData([{"on": _noon(course.days[-1]), "mid": course.mid[-1], "name": name}])
    mark = alt.Chart(end).mark_text(
        align="left", dx=6, dy=shift, color=colour, fontSize=13, fontWeight="bold"
    )
    return mark.encode(x=_x(), y="mid:Q", text="name:N")


def _rows(course: Course) -> list[dict[str, Any]]:
    return [
        {"on": _noon(day), "low": float(low), "mid": float(mid), "high": float(high)}
        for day, low, mid, high in zip(
            course.days, course.low, course.mid, course.high, strict=True
        )
    ]


def _noon(day: date) -> str:
    """Write a day so that no time zone can move it to its neighbour."""
    return f"{day.isoformat()}T12:00:00"
