"""A chart of what things are worth week by week: one line below the other, each with its scale."""

from collections.abc import Mapping, Sequence
from datetime import date
from html import escape
from textwrap import wrap
from typing import Any, Final

from combwright.figures.bands import GRID, INK, LOOKS
from combwright.terms.errors import OutOfRangeError

LETTER_PX: Final = 8  # of a title, on average


def worth_chart(
    weeks: Sequence[date],
    curves: Mapping[str, Sequence[float]],
    *,
    title: str,
    width: int = 560,
) -> str:
    """Draw what each thing is worth in each week as SVG, with a description in words.

    Equal data give equal bytes. Letters keep their size: a narrow one is drawn for a telephone.
    """
    if not weeks or any(len(values) != len(weeks) for values in curves.values()):
        raise OutOfRangeError(
            "Weeks and worths do not match, or there are none.",
            remedy="Give one worth of each thing for each week.",
        )
    import altair as alt
    import vl_convert

    plots = [
        _plot(name, weeks, values).properties(width=width, height=90)  # px, without its axes
        for name, values in curves.items()
    ]
    chart = (
        alt.vconcat(*plots)
        .properties(
            title=alt.TitleParams(wrap(title, width // LETTER_PX), anchor="start"),
            background="transparent",
        )
        .configure_view(stroke=None)
        .configure_axis(labelFontSize=12, gridColor=GRID, labelColor=INK, domainColor=INK)
        .configure_title(fontSize=14, color=INK)
    )
    drawn = vl_convert.vegalite_to_svg(chart.to_dict())
    opening = f'<svg role="img" aria-label="{escape(title)}" '
    drawn = drawn.replace("<svg ", opening, 1).replace('class="marks"', 'class="season"', 1)
    head, rest = drawn.split(">", 1)
    words = escape(describe_worth(weeks, curves, title=title))
    return f"{head}><title>{escape(title)}</title><desc>{words}</desc>{rest}"


def describe_worth(
    weeks: Sequence[date], curves: Mapping[str, Sequence[float]], *, title: str
) -> str:
    """Say in words what such a chart shows: the first week of each month.

    Examples
    --------
    >>> days = [date(2027, 4, 5), date(2027, 4, 12), date(2027, 5, 3)]
    >>> describe_worth(days, {"a super today": [0.2, 1, 4.26]}, title="Worth")
    'Worth. a super today: April 0.2, May 4.3.'

    """
    firsts = [i for i, day in enumerate(weeks) if i == 0 or weeks[i - 1].month != day.month]
    parts = [
        f"{name}: {', '.join(f'{weeks[i]:%B} {values[i]:.1f}' for i in firsts)}."
        for name, values in curves.items()
    ]
    return " ".join([f"{title}.", *parts])


def _plot(name: str, weeks: Sequence[date], values: Sequence[float]) -> Any:  # noqa: ANN401 - Altair's
    import altair as alt

    rows = [
        {"on": f"{day.isoformat()}T12:00:00", "worth": round(float(value), 3)}
        for day, value in zip(weeks, values, strict=True)
    ]
    return (
        alt.Chart(alt.InlineData(rows), title=alt.TitleParams(name, anchor="start"))
        .mark_line(color=LOOKS[0][0], strokeWidth=2.6)
        .encode(
            x=alt.X("on:T", title=None, axis=alt.Axis(format="%b", tickCount="month")),
            y=alt.Y("worth:Q", title=None, axis=alt.Axis(tickCount=4)),
        )
    )
