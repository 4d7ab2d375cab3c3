"""Which numbers of the model matter: Morris screening over all of them within their ranges.

Writes ``docs/validation/sensitivity.md`` and its figure. Each parameter is varied alone along
random paths through the box of all ranges (Morris 1991; SALib); the mean size of its effect over
the whole range says how much it matters, in the unit of the result.
"""

from datetime import date
from pathlib import Path
from typing import Any

import altair as alt
import numpy as np
import pytest
import vl_convert
from numpy.typing import NDArray
from SALib.analyze import morris as analysis
from SALib.sample import morris as sampling

from combwright.evidence import simulated_seasons as seasons
from combwright.simulation import observe
from combwright.simulation.biology import BIOLOGY, PARAMETERS
from combwright.simulation.hands.keeper import Keeping

DOCS = Path(__file__).parents[3] / "docs" / "validation"
SEED, PATHS, COLONIES, SHOWN = 7, 24, 60, 9
NEAR = 1 / 3  # of the way to each end of the range: at the ends together most colonies die
VARIED = [name for name, p in PARAMETERS.items() if p.high > p.low]
PROBLEM = {
    "num_vars": len(VARIED),
    "names": VARIED,
    "bounds": [
        [p.value + NEAR * (p.low - p.value), p.value + NEAR * (p.high - p.value)]
        for p in (PARAMETERS[name] for name in VARIED)
    ],
}
RESULTS = {
    "frames of bees on 15 May": "frames",
    "honey above the excluder on 31 July": "kg",
    "mites on 15 August": "log",
    "alive next 20 March without feeding": "share",
}
COMMAND = "python -m pytest -m validation tests/validation/simulation/test_sensitivity.py"

ABOUT = """\
Morris screening of {varied} numbers of the colony model, each from a third of the way to the
lower end of its range to a third of the way to the upper (at the ends together most colonies die,
and nothing else would show): {paths} random paths, {colonies} colonies near Dublin, each in its
own year, from six and a half frames of bees on 20 March. The size is the mean change of the result
when one number goes through that part of its range while all others stand anywhere in theirs: wide
ranges matter as much as strong effects. Numbers at the top are worth measuring; those far down may
be guessed. An effect no larger than its ± is not told apart from the noise of the screening."""

pytestmark = pytest.mark.validation


def outcome(values: NDArray[np.float64]) -> list[float]:
    """The four results of one set of numbers: medians over colonies, each in its own year."""
    biology = BIOLOGY._replace(**dict(zip(VARIED, values.tolist(), strict=True)))
    _, kept = seasons.season(days=150, biology=biology, number=COLONIES)
    frames = kept.trace["adults"] - observe.AWAY_AT_NOON * kept.trace["foragers"]
    left, _ = seasons.season(
        keeping=Keeping(feeding="none"), days=365, biology=biology, number=COLONIES
    )
    return [
        float(np.median(frames[seasons.day(5, 15)])) / 1800.0,
        float(np.median(kept.trace["super_sugar_g"][seasons.day(7, 31)])) / 800.0,
        float(np.log(np.median(kept.trace["mites"][seasons.day(8, 15)]) + 1.0)),
        float(np.mean(observe.adults(left) > seasons.DEAD)),
    ]


@pytest.fixture(scope="module")
def effects() -> dict[str, dict[str, tuple[float, float]]]:
    """Mean size of each parameter's effect on each result, and its confidence."""
    sample = sampling.sample(PROBLEM, PATHS, num_levels=6, seed=SEED)
    found = np.array([outcome(values) for values in sample])
    table: dict[str, dict[str, tuple[float, float]]] = {}
    for place, result in enumerate(RESULTS):
        told: Any = analysis.analyze(PROBLEM, sample, found[:, place], num_levels=6, seed=SEED)
        sizes = zip(told["mu_star"].tolist(), told["mu_star_conf"].tolist(), strict=True)
        table[result] = dict(zip(VARIED, sizes, strict=True))
    write(table)
    return table


def most(effects: dict[str, tuple[float, float]], number: int) -> list[str]:
    return sorted(effects, key=lambda name: -effects[name][0])[:number]


def write(table: dict[str, dict[str, tuple[float, float]]]) -> None:
    """Write the page and its figure."""
    today = date.today()  # noqa: DTZ011  (the day on which it was made)
    lines = [
        "# Which numbers matter",
        "",
        *ABOUT.format(varied=len(VARIED), paths=PATHS, colonies=COLONIES).splitlines(),
        "",
        f"Made on {today:%d %B %Y} with seed {SEED} by `{COMMAND}`.",
        "",
        "![Sizes of effects](sensitivity.svg)",
    ]
    for result, unit in RESULTS.items():
        shown = "logarithm" if unit == "log" else unit
        lines += [
            "",
            f"## {result[0].upper()}{result[1:]}",
            "",
            f"| number | effect [{shown}] | ± | its whole range |",
        ]
        lines += ["|---|---|---|---|"]
        for name in most(table[result], SHOWN):
            size, unsure = table[result][name]
            p = PARAMETERS[name]
            lines.append(
                f"| `{name}` | {size:.2f} | {unsure:.2f} | {p.low:g} to {p.high:g} {p.unit} |"
            )
    (DOCS / "sensitivity.md").write_text("\n".join(lines) + "\n", encoding="utf-8")
    (DOCS / "sensitivity.svg").write_text(figure(table), encoding="utf-8")


def figure(table: dict[str, dict[str, tuple[float, float]]]) -> str:
    """Bars of the largest effects, a panel a result."""
    panels = []
    for result, unit in RESULTS.items():
        rows = [{"number": n, "effect": table[result][n][0]} for n in most(table[result], SHOWN)]
        bars = alt.Chart(alt.InlineData(rows)).mark_bar(color="#0b5a8f")
        panels.append(
            bars.encode(
                x=alt.X("effect:Q", title="logarithm" if unit == "log" else unit),
                y=alt.Y("number:N", sort="-x", title=None),
            ).properties(title=result, width=230, height=190)
        )
    chart = alt.vconcat(alt.hconcat(*panels[:2]), alt.hconcat(*panels[2:]))
    return str(vl_convert.vegalite_to_svg(chart.to_dict()))


def test_reproduction_rules_the_mites(
    effects: dict[str, dict[str, tuple[float, float]]],
) -> None:
    """Calis, Fries & Ryrie 1999: reproduction parameters have the largest effect (abstract)."""
    top = most(effects["mites on 15 August"], 4)
    assert {"leave_worker", "leave_drone", "drone_share"} & set(top)


def test_deaths_of_foragers_matter_for_the_size_of_the_colony(
    effects: dict[str, dict[str, tuple[float, float]]],
) -> None:
    """Russell, Barron & Harris 2013: forager mortality, food and age at foraging matter most."""
    top = most(effects["frames of bees on 15 May"], 9)
    assert {"forager_death", "forager_death_home", "recruit"} & set(top)


def test_every_result_depends_on_something(
    effects: dict[str, dict[str, tuple[float, float]]],
) -> None:
    for result, sizes in effects.items():
        assert max(size for size, _ in sizes.values()) > 0.05, result
