"""The page of the fit: what each target says about each number, and what no world can meet."""

from datetime import date
from pathlib import Path
from typing import Final

import altair as alt
import numpy as np
import vl_convert
from numpy.typing import NDArray
from tests.validation.simulation.emulating import Emulator
from tests.validation.simulation.searching import EDGE, FITS, RULED_OUT, WorldsTried
from tests.validation.simulation.trying import (
    COLONIES,
    EACH,
    FREE,
    OTHERS,
    PLACES,
    SPELLS,
    cells_of,
    ends,
    free_of,
    over_years,
    tolerance,
)

from combwright.evidence.simulated_lives import CLOSED, live
from combwright.evidence.targets import Target, targets
from combwright.simulation.biology import BIOLOGY
from combwright.simulation.worlds import worlds
from combwright.weather.climates import climates

Floats = NDArray[np.float64]
Everywhere = dict[str, Floats]  # by target: what is seen, [spell of years, climate, world]
DOCS: Final = Path(__file__).parents[3] / "docs" / "validation"
SAYS_MOST = 3  # targets named beside a number
MISSED_MOST = 8  # targets told as missed
OTHER_SEED: Final = 20280801
RARELY = 0.5  # share of the worlds below which a target is told as missed in a climate

ABOUT = """\
The colony model has {free} numbers that publications leave open within a range and on which the
year hangs. No one set of them is right: this page tells how a *set of worlds* was found that
nothing published rules out, and what each target says about each number. A belief lets each of its
members live in one of these worlds.

The method is history matching. {tried} worlds were tried, the first evenly over the whole ranges
that the [data file](../numbers.md) gives; each later wave was drawn around the best so far and
chosen by a quick stand-in for the model (a quadratic in each number, with its error). In each
world {colonies} colonies lived in {places}, each in weather of its own, from 1 August for three
years under the careful keeper; they are the same in all worlds, and what luck brought them in one
and the same world, beside {lots} other lots of colonies, is taken off.
A cell is a target in a climate, in the first year, from a colony as a beginner may describe it, or
on average over years 2 and 3, which begin with the model's own winter. Its implausibility is the
distance from the middle of the target's band over the root of the target's and the colonies' chance
added in squares; the band's edge stands for {edge:g} standard deviations. A world fits when
{fits:.0%} of the cells lie below {edge:g} and none above {ruled:g}. Targets, bands and sources
stand in [`targets.toml`](../../src/combwright/evidence/targets.toml); those held out were named
before and played no part.

**{fitting} of the {tried} worlds fit; the best {kept} are kept.** The numbers of `biology.toml`
themselves were chosen by hand and search before, with all targets in view: only the worlds know
nothing of the targets held out.

Made on {today} by `make fit` with {how}."""


def write(known: WorldsTried, kept: WorldsTried, how: str) -> None:
    """Write the page and its figure."""
    near = known.some(known.best_first()[: len(known.unit) // 2])
    effects = {name: effects_on(near, name) for name in targets()}
    seen = everywhere()
    lines = [
        "# Worlds that fit",
        "",
        *ABOUT.format(
            free=len(FREE),
            tried=len(known.unit),
            colonies=COLONIES,
            lots=OTHERS,
            places=" and ".join(PLACES),
            edge=EDGE,
            fits=FITS,
            ruled=RULED_OUT,
            fitting=int(known.fits().sum()),
            kept=len(kept.unit),
            today=f"{date.today():%d %B %Y}",  # noqa: DTZ011  (the day on which it was made)
            how=how,
        ).splitlines(),
        "",
        "## What the worlds hold",
        "",
        f"The worlds in all {len(climates())} built-in climates, in year 1 and over years 2 to 4:",
        "share of worlds and climates within the band, and where 90 % of them lie.",
        "",
        *held(seen),
        "",
        "## What the targets say about each number",
        "",
        "The range that the worlds leave is that of nine in ten of them. Beside it, the targets",
        "that the number moves most: by how many standard deviations of the target's band when the",
        "number goes through its whole range, all else as in the better half of the worlds tried.",
        "",
        *numbers(kept, effects),
        "",
        "![What moves what](fit.svg)",
        "",
        "## What no world can meet",
        "",
        *missed(seen, near),
    ]
    (DOCS / "fit.md").write_text("\n".join(lines) + "\n", encoding="utf-8")
    (DOCS / "fit.svg").write_text(figure(effects), encoding="utf-8")


def effects_on(near: WorldsTried, name: str) -> Floats:
    """How far each number moves a target, in standard deviations of its band, [number]."""
    moved = [
        Emulator.learned(near.unit, near.found[cell]).coefficients[1 : len(FREE) + 1]
        for cell in cells_of(name)
    ]
    return np.asarray(2.0 * np.mean(moved, axis=0) / tolerance(targets()[name]))


def everywhere() -> Everywhere:
    """Let other colonies than those of the search live in the kept worlds in every climate."""
    found = {name: np.empty((2, len(climates()), len(worlds()))) for name in targets()}
    for there, place in enumerate(climates()):
        for one, life in enumerate(live(place, worlds=worlds(), seed=OTHER_SEED, **EACH)):
            for spell, years in enumerate((SPELLS[0], CLOSED)):
                for name, value in over_years(life, years).items():
                    found[name][spell, there, one] = value
    return found


def holding(target: Target, values: Floats) -> Floats:
    return np.asarray((target.low <= values) & (values <= target.high))


def held(seen: Everywhere) -> list[str]:
    rows = [
        "| target | band | | year 1 | worlds | later | worlds |",
        "|---|---|---|---|---|---|---|",
    ]
    for name, target in targets().items():
        cells = [
            f"{share:.0%} | {ninety(v)}" for share, v in zip(*by_spell(seen, name), strict=True)
        ]
        rows.append(
            f"| {target.says} [{target.unit}] | {target.low:g} to {target.high:g} |"
            f" {'held out' if target.held_out else 'fitted'} | {' | '.join(cells)} |"
        )
    for held_out, says in ((False, "fitted"), (True, "held out")):
        first, later = shares(seen, held_out=held_out)
        rows.append(f"| *all {says}* | | | {first:.0%} | | {later:.0%} | |")
    return rows


def by_spell(seen: Everywhere, name: str) -> tuple[Floats, Floats]:
    """Share of worlds and climates in which a target holds, and what they have, by spell."""
    return holding(targets()[name], seen[name]).mean(axis=(1, 2)), seen[name]


def shares(seen: Everywhere, *, held_out: bool) -> Floats:
    """Share of targets, climates and worlds that hold, in year 1 and over the later years."""
    names = [name for name, target in targets().items() if target.held_out == held_out]
    return np.asarray(np.mean([by_spell(seen, name)[0] for name in names], axis=0))


def ninety(values: Floats) -> str:
    low, high = np.nanquantile(values, (0.05, 0.95))
    return f"{shown(low)} to {shown(high)}"


def shown(value: float) -> str:
    return f"{value:.3g}" if abs(value) < 1000.0 else f"{value:.0f}"


def numbers(kept: WorldsTried, effects: dict[str, Floats]) -> list[str]:
    low, high = ends()
    base = free_of(BIOLOGY)
    left = low + (high - low) * np.quantile(kept.unit, (0.05, 0.95), axis=0)
    rows = ["| number | range | here | worlds | left | moves most |", "|---|---|---|---|---|---|"]
    for place, name in enumerate(FREE):
        share = (left[1, place] - left[0, place]) / (high[place] - low[place])
        top = sorted(effects, key=lambda target: -abs(effects[target][place]))[:SAYS_MOST]
        moved = ", ".join(f"`{target}` {effects[target][place]:+.1f}" for target in top)
        rows.append(
            f"| `{name}` | {low[place]:g} to {high[place]:g} | {base[place]:g} |"
            f" {left[0, place]:.3g} to {left[1, place]:.3g} | {share:.0%} | {moved} |"
        )
    return rows


def missed(seen: Everywhere, near: WorldsTried) -> list[str]:
    """Targets that worlds miss most, which other one stands against each; and where all miss."""
    shares = {name: holding(target, seen[name]).mean() for name, target in targets().items()}
    worst = sorted(shares, key=lambda name: shares[name])[:MISSED_MOST]
    told = [
        f"- {targets()[name].says}: {shares[name]:.0%} of worlds and climates."
        f" {conflict(name, near)}"
        for name in worst
    ]
    nowhere = [
        f"- {target.says}, {place}, {when}: {there.mean():.0%}; it must lie from {target.low:g} to"
        f" {target.high:g}, and the middle world has {shown(float(np.nanmedian(values)))}."
        for name, target in targets().items()
        for when, spell in zip(("year 1", "later"), seen[name], strict=True)
        for place, values in zip(climates(), spell, strict=True)
        if (there := holding(target, values)).mean() < RARELY
    ]
    return [
        "No target is missed by all. Those missed most, and what stands against each:",
        "",
        *told,
        "",
        f"Climates in which fewer than {RARELY:.0%} of the worlds meet a target:",
        "",
        *(nowhere or ["- none"]),
    ]


def conflict(name: str, near: WorldsTried) -> str:
    """Say which target holds less often where this one does."""
    meets = {
        other: np.all([holding(target, near.found[cell]) for cell in cells_of(other)], axis=0)
        for other, target in targets().items()
    }
    where = meets.pop(name)
    if not where.any():
        return "None of the better half of the worlds tried met it in both climates and spells."
    fall = {other: holds.mean() - holds[where].mean() for other, holds in meets.items()}
    worst = max(fall, key=lambda other: fall[other])
    return (
        f"Where it holds ({where.mean():.0%} of the better half of the worlds tried),"
        f" “{targets()[worst].says}” holds in {meets[worst][where].mean():.0%} instead of"
        f" {meets[worst].mean():.0%}."
    )


def figure(effects: dict[str, Floats]) -> str:
    """A panel of squares: how far each number moves each target."""
    rows = [
        {"number": number, "target": target, "moves": float(np.clip(moved[place], -4.0, 4.0))}
        for target, moved in effects.items()
        for place, number in enumerate(FREE)
    ]
    chart = (
        alt.Chart(alt.InlineData(rows))
        .mark_rect()
        .encode(
            x=alt.X("target:N", sort=list(effects), title=None),
            y=alt.Y("number:N", sort=list(FREE), title=None),
            color=alt.Color(
                "moves:Q",
                title="standard deviations",
                scale=alt.Scale(scheme="purpleorange", domain=[-4, 4]),
            ),
        )
        .properties(width=620, height=560)
    )
    return str(vl_convert.vegalite_to_svg(chart.to_dict()))
