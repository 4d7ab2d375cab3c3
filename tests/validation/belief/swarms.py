"""Swarms seen coming: the chance of each week against what came, on colonies not used to fit it.

Colonies live for years under the careful keeper, in the model's own worlds and under other rules,
then a season in which their keeper looks every week, for cells too, and holds no swarm back.
"""

import itertools
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import timedelta
from typing import Final

import altair as alt
import numpy as np
import vl_convert
from tests.validation.belief.elsewhere import season_of
from tests.validation.belief.grown import EVERY, VISITS, Untold
from tests.validation.belief.keeper import ahead, believed

from combwright.advice.swarm_chance import calibrated
from combwright.simulation.columns import LAYING

MEMBERS: Final = 100
SEASON: Final = (100, 215)  # days of the year
EDGES: Final = (0.0, 0.01, 0.05, 0.2, 0.5, 1.0)
FLAGGED: Final = 0.2


@dataclass(frozen=True)
class Week:
    """One week of a colony with a laying queen: its chance of a swarm, and whether one left."""

    chance: float
    swarmed: bool


def weeks_of(number: int, untold: Untold) -> list[Week]:
    """Follow a colony from week to week up to its swarm."""
    season = season_of(number, untold)
    if season is None:
        return []
    truth, found = season.truth, []
    until = truth.first + timedelta(days=EVERY * VISITS)
    book, years = believed(truth, until, members=MEMBERS)
    swarms = [float(state["swarmed"][0]) for state in season.past]
    for visit in range(1, VISITS - 1):
        on = truth.first + timedelta(days=EVERY * visit + 1)
        if season.past[visit]["queen"][0] != LAYING or swarms[visit] > swarms[0]:
            break
        if SEASON[0] <= on.timetuple().tm_yday <= SEASON[1]:
            followed = book.follow(truth.name, on)
            assert followed is not None
            before = followed.belief.colonies["swarmed"]
            later = ahead(book, years, truth.name, on, days=EVERY)
            share = float(np.mean(later["swarmed"] > before))
            left = swarms[visit + 1] > swarms[visit]
            found.append(Week(calibrated(share, MEMBERS), left))
    return found


@dataclass(frozen=True)
class Bin:
    """Weeks of about the same chance: how many, their mean chance, and the swarms that came."""

    weeks: int
    chance: float
    swarms: int

    @property
    def often(self) -> float:
        """Share of the weeks in which a swarm left."""
        return self.swarms / self.weeks


def bins_of(weeks: Sequence[Week]) -> list[Bin]:
    """Sort weeks by their chance."""
    pairs = itertools.pairwise(EDGES)
    sorted_in = [[each for each in weeks if low <= each.chance < high] for low, high in pairs]
    return [
        Bin(len(each), float(np.mean([w.chance for w in each])), sum(w.swarmed for w in each))
        for each in sorted_in
        if each
    ]


def page(by_world: dict[str, list[Week]]) -> str:
    """Write the page of the study."""
    lines = [
        "# Swarms seen coming",
        "",
        "A chance of a swarm within the week, from what the book knows, against what came.",
        "Colonies live two or three years in the model's own worlds or under other rules, then",
        "a season in which the keeper looks every week, for queen cells too, and holds no swarm",
        "back. None of these colonies was used to fit the line that calibrates the chance",
        "(`swarm.toml`). Seen coming: 20 % or more at the last look before.",
    ]
    for world, weeks in by_world.items():
        came = [each for each in weeks if each.swarmed]
        flags = sum(each.chance >= FLAGGED for each in weeks)
        seen = sum(each.chance >= FLAGGED for each in came)
        lines += [
            "",
            f"## {world}",
            "",
            (
                f"{len(weeks)} weeks, {len(came)} swarms, {seen} of them seen coming; {flags} "
                f"weeks flagged. Mean chance {np.mean([w.chance for w in weeks]):.1%}, "
                f"came {len(came) / len(weeks):.1%}."
            ),
            "",
            "| chance | weeks | mean chance | came |",
            "| --- | --- | --- | --- |",
            *(
                f"| {low:.0%} to {high:.0%} | {_row(weeks, low, high)} |"
                for low, high in itertools.pairwise(EDGES)
            ),
        ]
    return "\n".join([*lines, "", "![Reliability](swarm-reliability.svg)", ""])


def _row(weeks: Sequence[Week], low: float, high: float) -> str:
    found = bins_of([each for each in weeks if low <= each.chance < high])
    if not found:
        return "0 | |"
    return f"{found[0].weeks} | {found[0].chance:.1%} | {found[0].often:.1%}"


def figure(by_world: dict[str, list[Week]]) -> str:
    """Draw how often swarms came against their chance, with the line on which all should lie."""
    rows = [
        {"world": world, "chance": each.chance, "came": each.often, "weeks": each.weeks}
        for world, weeks in by_world.items()
        for each in bins_of(weeks)
    ]
    axis = alt.Scale(domain=[0, 1])
    line = (
        alt.Chart(alt.InlineData([{"a": 0, "b": 0}, {"a": 1, "b": 1}]))
        .mark_line(color="#999", strokeDash=[4, 4])
        .encode(x=alt.X("a:Q", scale=axis), y=alt.Y("b:Q", scale=axis))
    )
    points = (
        alt.Chart(alt.InlineData(rows))
        .mark_point(filled=True)
        .encode(
            x=alt.X("chance:Q", title="chance of a swarm within the week", scale=axis),
            y=alt.Y("came:Q", title="share of such weeks in which one left", scale=axis),
            size=alt.Size("weeks:Q", title="weeks"),
            color=alt.Color("world:N", title=""),
        )
    )
    chart = (line + points).properties(width=320, height=320)
    return str(vl_convert.vegalite_to_svg(chart.to_dict()))
