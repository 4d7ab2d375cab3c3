"""The studies of the belief, run side by side, and the page and figures that tell of them."""

from collections.abc import Callable, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from datetime import date
from functools import partial
from pathlib import Path
from typing import Final, TypeVar

import numpy as np
from tests.validation.belief.calibration import (
    BINS,
    LEADS,
    WATCHED,
    Rank,
    by_quantity,
    coverage,
    misfit,
    ranks_of,
    schedule,
)
from tests.validation.belief.detection import TROUBLES, Case, case, quiet_months
from tests.validation.belief.neighbours import Gain, gains_of
from tests.validation.belief.skill import Forecast, differing, forecasts_of, misled, skill

WORKERS: Final = 2
WORLDS: Final = {"differing": differing, "misled": misled}
Item = TypeVar("Item")


@dataclass(frozen=True)
class Found:
    """All that the studies found."""

    colonies: int
    ranks: list[Rank]
    too_narrow: list[Rank]
    forecasts: dict[str, list[Forecast]]
    cases: list[Case]
    months: list[tuple[bool, bool, bool]]
    gains: list[Gain]


def _calibrate(number: int, narrow: float = 1.0) -> list[Rank]:
    return ranks_of(number, schedule(number), narrow=narrow)


def _forecast(number: int, world: str) -> list[Forecast]:
    return forecasts_of(number, WORLDS[world](number))


def _each(work: Callable[[int], list[Item]], count: int) -> list[Item]:
    with ProcessPoolExecutor(WORKERS) as workers:
        return [item for found in workers.map(work, range(count), chunksize=4) for item in found]


def _case(number: int, trouble: str) -> list[Case]:
    return [case(trouble, number)]


def study(colonies: int) -> Found:
    """Run all studies, with so many colonies for the calibration and a third for each other."""
    third = max(10, colonies // 3)
    return Found(
        colonies,
        _each(_calibrate, colonies),
        _each(partial(_calibrate, narrow=0.7), colonies),
        {world: _each(partial(_forecast, world=world), third) for world in WORLDS},
        [one for name in TROUBLES for one in _each(partial(_case, trouble=name), third)],
        _each(quiet_months, third),
        _each(gains_of, max(4, colonies // 10)),
    )


def suspected_share(found: Found, trouble: str) -> tuple[int, float, float, float]:
    """Count cases of a trouble; shares suspected at the first visit, within two, and by name."""
    mattered = [one for one in found.cases if one.trouble == trouble and one.mattered]
    shares = np.array([(one.first, one.second, one.by_name) for one in mattered]).mean(axis=0)
    return len(mattered), float(shares[0]), float(shares[1]), float(shares[2])


def page(found: Found, today: date) -> str:
    """Write the page that tells of the studies."""
    parts = [HEAD.format(today=today, colonies=found.colonies), _calibration_table(found)]
    parts += [_schedule_table(found.ranks), WORLD]
    parts += [_skill_table(world, found.forecasts[world]) for world in WORLDS]
    parts += [_trouble_table(found), _gain_table(found.gains)]
    return "\n".join(parts)


def _table(headings: Sequence[str], rows: Sequence[Sequence[object]]) -> str:
    lines = [headings, ["---"] * len(headings), *rows]
    return "\n".join("| " + " | ".join(map(str, line)) + " |" for line in lines) + "\n"


def _calibration_table(found: Found) -> str:
    rows = []
    narrow = by_quantity(found.too_narrow)
    for (quantity, lead), shares in by_quantity(found.ranks).items():
        chi, p = misfit(shares)
        control = misfit(narrow[quantity, lead])[0]
        when = "now" if lead == LEADS[0] else f"{lead} days ahead"
        name = quantity.replace("_", " ")
        bands = [f"{coverage(shares, band):.1%}" for band in (0.5, 0.9)]
        rows.append([name, when, *bands, f"{chi:.1f}", f"{p:.2f}", f"{control:.1f}"])
    headings = ["quantity", "when", "in 50 %", "in 90 %", "χ² (9)", "p", "χ² of the control"]
    return _table(headings, rows)


def _schedule_table(ranks: Sequence[Rank]) -> str:
    rows = []
    for every in sorted({rank.every_days for rank in ranks}):
        for missing in (0.0, 0.3):
            some = [r for r in ranks if r.every_days == every and r.missing == missing]
            cells = [
                f"{coverage(np.array([r.share for r in some if r.lead == lead]), 0.9):.1%}"
                for lead in LEADS[1:]
            ]
            rows.append([f"every {every} days", f"{missing:.0%} missing", *cells])
    return "Coverage of the 90 % band by schedule, all four quantities together:\n\n" + _table(
        ["notes", "values", "7 days ahead", "21 days ahead"], rows
    )


def _skill_table(world: str, forecasts: list[Forecast]) -> str:
    rows = [
        [
            quantity.replace("_", " "),
            against,
            int(row["forecasts"]),
            f"{row['crps']:.2f}",
            f"{row['better than last time']:.0%}",
            f"{row['better than trend']:.0%}",
            f"{row['better than last time with a spread']:.0%}",
            f"{row['within 50 %']:.0%}",
            f"{row['within 90 %']:.0%}",
        ]
        for (against, quantity), row in skill(forecasts).items()
    ]
    headings = ["quantity", "against the", "forecasts", "CRPS", "saved of last time"]
    headings += ["of trend", "of last time with a spread", "in 50 %", "in 90 %"]
    return f"### {TITLES[world]}\n\n" + _table(headings, rows)


def _trouble_table(found: Found) -> str:
    rows = []
    for trouble in TROUBLES:
        count, first, second, named = suspected_share(found, trouble)
        rows.append([trouble, count, f"{first:.0%}", f"{second:.0%}", f"{named:.0%}"])
    months = np.array(found.months)
    wrong, asked, slipped = months.mean(axis=0)
    unslipped = months[~months[:, 2], 1].mean()
    said = TROUBLE.format(
        months=len(months), wrong=wrong, asked=asked, slipped=slipped, unslipped=unslipped
    )
    return said + _table(["trouble", "cases", "first visit", "within two", "by its name"], rows)


def _gain_table(gains: Sequence[Gain]) -> str:
    rows = []
    for quantity in dict.fromkeys(gain.quantity for gain in gains):
        pairs = np.array([(g.alone, g.together) for g in gains if g.quantity == quantity])
        alone, together = pairs.mean(axis=0)
        error = (pairs[:, 1] - pairs[:, 0]).std() / len(pairs) ** 0.5
        name, saved = quantity.replace("_", " "), f"{1.0 - together / alone:.1%}"
        rows.append([name, len(pairs), f"{alone:.2f}", f"{together:.2f}", saved, f"{error:.3f}"])
    headings = ["quantity", "colonies", "CRPS alone", "with neighbours", "saved", "standard error"]
    return GAIN + _table(headings, rows)


def rank_figure(ranks: Sequence[Rank], lead: int) -> str:
    """Draw the rank histograms of one lead as SVG."""
    import altair as alt
    import vl_convert

    rows = []
    for quantity in WATCHED:
        shares = by_quantity(list(ranks))[quantity, lead]
        counts, _ = np.histogram(shares, BINS, (0.0, 1.0))
        rows += [
            {"quantity": quantity.replace("_", " "), "tenth": place + 1, "colonies": int(count)}
            for place, count in enumerate(counts)
        ]
    expected = len(shares) / BINS
    bars = (
        alt.Chart()
        .mark_bar(color="#0b5a8f")
        .encode(x=alt.X("tenth:O", axis=alt.Axis(labelAngle=0)), y="colonies:Q")
        .properties(width=200, height=130)
    )
    rule = alt.Chart().mark_rule(strokeDash=[4, 3]).encode(y=alt.datum(expected))
    layers = alt.layer(bars, rule, data=alt.InlineData(rows))
    chart = layers.facet(alt.Facet("quantity:N", title=None), columns=2)
    drawn: str = vl_convert.vegalite_to_svg(chart.to_dict())
    return drawn


def write(found: Found, folder: Path, today: date) -> None:
    """Write page and figures."""
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "belief.md").write_text(page(found, today), "utf-8")
    for lead in LEADS:
        path = folder / f"belief-ranks-{lead}-days.svg"
        path.write_text(rank_figure(found.ranks, lead), "utf-8")


TITLES: Final = {
    "differing": "Colonies that differ more than the belief expects",
    "misled": "A world outside the central half of the prior",
}
HEAD: Final = """# How good is the belief?

Measured on {today} with `make validate`, {colonies} simulated colonies, fixed seeds: colony *n* has
seed 700000 + *n* in the calibration, 730000 + *n* in the forecasts, 760000 + *n* in the troubles,
820000 + *n* in the quiet months; no choice was made by looking at these. How the
studies are made is told in [the page on the belief](../models/belief.md#how-it-is-checked).

## Calibration

Each colony is drawn from the prior, noted with the errors that the belief takes for granted, and
ranked among the 200 members that stand for it at one visit of its season: now, and 7 and 21 days
ahead under sampled weather. Here the truth lives exactly by the model, which the belief takes to be
never quite right: its bands are too wide by that doubt, and hold at least what they say in
[another world](belief-elsewhere.md). A belief without it gives flat histograms (χ² below 21.7 in
99 of 100 such tables) and covers what it says. The control is the same belief with its spread
shrunk to 0.7.

![Ranks today](belief-ranks-1-days.svg)
![Ranks a week ahead](belief-ranks-7-days.svg)
![Ranks three weeks ahead](belief-ranks-21-days.svg)
"""
WORLD: Final = """## Skill a week ahead

Forecasts a week ahead under sampled weather, by weekly notes rounded to halves, against the hidden
truth and against the keeper's next note. “Saved” is the share of a rule's error that the forecast
saves: of “same as last time”, of a straight line through the last two notes, and of “same as last
time” given a spread from its own errors in all these colonies, which no keeper has.

In the first world the colonies' own parameters are drawn 1.5 times as widely as the belief
expects. In the second, forager deaths lie 1.5 standard deviations off, the flow comes two weeks
early or late, and the laying curve ten days and 15 %.
"""
TROUBLE: Final = """## Troubles that nobody noted

Weekly notes. A swarm takes six in ten bees; a queen dies and emergency cells are raised; robbers
leave a tenth of at least 4 kg. False alarms: in {wrong:.1%} of {months} quiet colony-months a
trouble was suspected. In {asked:.1%} the keeper was asked anything at all, miscounts included: a
value had indeed slipped by more than 3.5 standard deviations in {slipped:.1%} of the months, as one
value in fifty does here; in the months without such a slip something was asked in {unslipped:.1%}.

"""
GAIN: Final = """## Neighbours

A colony with two notes, three weeks ahead, alone and after twenty neighbours under the same flow
and keeper have taught it.

"""
