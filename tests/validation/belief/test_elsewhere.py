"""The belief in another world, and in the model's own in years 2 and 3; each with its page."""

import sys
from collections.abc import Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from datetime import date
from functools import partial
from pathlib import Path
from typing import Final

import numpy as np
import pytest
from tests.validation.belief.detection import TROUBLES
from tests.validation.belief.elsewhere import (
    COUNTED,
    LEADS,
    Forecast,
    Outcome,
    missed,
    outcome_of,
    table,
)
from tests.validation.belief.grown import OwnWorld, Untold

pytestmark = pytest.mark.validation
# Those up to 48, and 100 to 123 and 200 to 223, were looked at while the belief was made.
COLONIES: Final = range(300, 324)
OWN: Final = range(400, 424)
WORKERS: Final = 1
ELSEWHERE: Final = {
    "Forage as the climate has it": Untold(),
    "Forage two weeks late": Untold(shift=14),
    "Forage two weeks early": Untold(shift=-14),
    "Brood counted as combs, which nobody said": Untold(as_combs=True),
}
DOCS: Final = Path(__file__).parents[3] / "docs" / "validation"
COMMAND: Final = "python -m pytest -m validation tests/validation/belief/test_elsewhere.py"
HEAD: Final = """# The belief in another world

Made on {today} with colonies {first} to {last} (their numbers are the seeds) by
`{command}`. The truth lives by rules unlike the model's own
(`tests/validation/worlds/other_world.py`: no winter caste, laying by day length and pollen, shared
nectar, another mite fall), two or three years under the careful keeper before its notes begin. The
spreads of what the belief has wrong were set on colonies 0 to 47 of this world, most with the
forage as the climate has it, all counted as the heading says; 100 to 123 were the headline before;
nothing was changed after these colonies were looked at. A truth counts as held where a tenth of a
frame or kilogram, as it is shown, lies in the band. Aims: 90 % bands hold at least 85 % of bees,
brood and stores at 7 and 21 days, and the error of “same as last time” falls by 30 %. Where brood
is counted as combs, the last note is out by the way of counting, so that what is saved of it is no
merit there.
"""
YEARS: Final = """# The belief in years 2 and 3

Made on {today} with colonies {first} to {last} (their numbers are the seeds) by
`{command}`.
The truth lives in one of the model's own worlds, drawn for each colony, two or three years from
August under the careful keeper before the notes of its spring and summer begin: even numbers are in
their second year, odd ones in their third. What speaks for a trouble was set on colonies 24 to
47. Robbers come only to stores that stood there at the last note: what came and went between two
notes nobody can tell. Aims: 90 % bands hold at least 85 %; four in five troubles are suspected
within two visits; one is wrongly suspected in fewer than one quiet month in ten.
"""


WHY: Final = """
Swarms are suspected; lost queens and robbers are less often than aimed at. Since members are moved
otherwise than the model says, brood or food that is gone is also explained so: the belief goes with
the count, but its doubt is shared between a trouble and what the model may have wrong.
"""


def each(numbers: Sequence[int], untold: Untold) -> list[Outcome]:
    with ProcessPoolExecutor(WORKERS) as workers:
        return list(workers.map(partial(outcome_of, untold=untold), numbers))


def forecasts(outcomes: Sequence[Outcome]) -> list[Forecast]:
    return [one for outcome in outcomes for one in outcome.forecasts]


def written(name: str, text: str) -> None:
    (DOCS / name).write_text(text, "utf-8")
    sys.stdout.write(text)


def verdict(found: Sequence[Forecast]) -> str:
    wrong = missed(found)
    return f"Missed: {', '.join(wrong)}.\n" if wrong else "All aims are met.\n"


def test_bands_hold_where_other_rules_hold() -> None:
    text = HEAD.format(today=date.today(), first=COLONIES[0], last=COLONIES[-1], command=COMMAND)  # noqa: DTZ011
    every: list[Forecast] = []
    for name, untold in ELSEWHERE.items():
        found = forecasts(each(COLONIES, untold))
        text += f"\n## {name}\n\n{table(found)}\n\n{verdict(found)}"
        every += found
    text += f"\n## All together\n\n{table(every)}\n\n{verdict(every)}"
    written("belief-elsewhere.md", text)
    assert np.mean([abs(one.share - 0.5) <= 0.45 for one in every]) >= 0.85
    assert sum(o.crps for o in every) <= 0.7 * sum(o.last_time for o in every)


@dataclass(frozen=True)
class Own:
    """What was found in the model's own worlds."""

    outcomes: list[Outcome]
    suspected: dict[str, list[bool]]  # by trouble, a case each


@pytest.fixture(scope="module")
def own() -> Own:
    """Follow colonies of the model's own worlds, and write their page."""
    cases = {}
    for trouble in TROUBLES:
        told = each(OWN, Untold(world=OwnWorld, trouble=trouble))
        cases[trouble] = [one.suspected for one in told if one.suspected is not None]
    found = Own(each(OWN, Untold(world=OwnWorld)), cases)
    written("belief-years.md", years(found))
    return found


def years(found: Own) -> str:
    text = YEARS.format(today=date.today(), first=OWN[0], last=OWN[-1], command=COMMAND)  # noqa: DTZ011
    for year, parity in ((2, 0), (3, 1)):
        pairs = zip(OWN, found.outcomes, strict=True)
        some = forecasts([one for number, one in pairs if number % 2 == parity])
        text += f"\n## Year {year}\n\n{table(some)}\n\n{verdict(some)}"
    months = quiet(found)
    text += f"\n## Troubles that nobody noted\n\nIn {np.mean(months):.1%} of {len(months)} quiet "
    text += "months a trouble was suspected.\n\n"
    text += "| trouble | cases | within two visits |\n|---|---|---|\n"
    for trouble, cases in found.suspected.items():
        text += f"| {trouble} | {len(cases)} | {np.mean(cases):.0%} |\n"
    return text + WHY


def quiet(found: Own) -> list[bool]:
    return [month for one in found.outcomes for month in one.quiet]


def test_bands_hold_in_years_two_and_three(own: Own) -> None:
    every = forecasts(own.outcomes)
    assert np.mean([abs(one.share - 0.5) <= 0.45 for one in every]) >= 0.85
    assert sum(o.crps for o in every) <= 0.7 * sum(o.last_time for o in every)


def test_quiet_months_of_years_two_and_three_are_left_in_peace(own: Own) -> None:
    assert np.mean(quiet(own)) < 0.10


MISSED = pytest.mark.xfail(reason="what nobody noted is also explained as gone otherwise")


@pytest.mark.parametrize(
    "trouble",
    [
        "swarm",
        pytest.param("queen loss", marks=MISSED),
        "robbing",
    ],
)
def test_troubles_of_years_two_and_three_are_suspected(own: Own, trouble: str) -> None:
    assert np.mean(own.suspected[trouble]) >= 0.8


def test_every_quantity_is_looked_at_every_lead_ahead() -> None:
    found = forecasts([outcome_of(12, Untold(world=OwnWorld))])
    assert {(one.quantity, one.lead) for one in found} == {(q, d) for q in COUNTED for d in LEADS}
