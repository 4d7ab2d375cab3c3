"""The belief in a world of other rules, written to ``docs/validation/belief-elsewhere.md``."""

import sys
from concurrent.futures import ProcessPoolExecutor
from datetime import date
from functools import partial
from pathlib import Path
from typing import Final

import numpy as np
import pytest
from tests.validation.belief.elsewhere import Forecast, forecasts_of, table

COLONIES: Final = range(100, 124)  # those up to 12 were looked at while the belief was made
SHIFTS: Final = {"as the climate has it": 0, "two weeks late": 14, "two weeks early": -14}
PAGE: Final = Path(__file__).parents[3] / "docs" / "validation" / "belief-elsewhere.md"
HEAD: Final = """# The belief in another world

Made on {today} with colonies {first} to {last} (their numbers are the seeds) by
`python -m pytest -m validation tests/validation/belief/test_elsewhere.py`. The truth lives by rules
unlike the model's own (`tests/validation/worlds/other_world.py`: no winter caste, laying by day
length and pollen, shared nectar, another mite fall), two or three years under the careful keeper
before its notes begin. The spreads of what the belief has wrong were set on twelve other colonies
of this world with the forage as the climate has it; the shifts took no part in it.
"""


def test_bands_hold_where_other_rules_hold() -> None:
    found: dict[str, list[Forecast]] = {}
    with ProcessPoolExecutor(2) as workers:
        for name, shift in SHIFTS.items():
            each = workers.map(partial(forecasts_of, shift=shift), COLONIES)
            found[name] = [one for forecasts in each for one in forecasts]
    text = HEAD.format(today=date.today(), first=COLONIES[0], last=COLONIES[-1])  # noqa: DTZ011
    for name, forecasts in found.items():
        text += f"\n## Forage {name}\n\n{table(forecasts)}\n"
    PAGE.write_text(text, "utf-8")
    sys.stdout.write(text)
    every = [one for forecasts in found.values() for one in forecasts]
    held = np.mean([abs(one.share - 0.5) <= 0.45 for one in every])
    assert held >= 0.85
    assert sum(o.crps for o in every) <= 0.7 * sum(o.last_time for o in every)


pytestmark = pytest.mark.validation
