"""The law of what honey holds. Source: Directive 2001/110/EC, annex II (read)."""

import pytest

from combwright.science.honey.composition import HoneyFigures, composition_faults


@pytest.mark.parametrize(
    ("figures", "keeps"),
    [
        (HoneyFigures(hmf=40), True),
        (HoneyFigures(hmf=41), False),
        (HoneyFigures("citrus", diastase=3, hmf=15), True),
        (HoneyFigures("citrus", diastase=3, hmf=16), False),
        (HoneyFigures("citrus", diastase=2.9, hmf=15), False),
        (HoneyFigures(diastase=7.9, hmf=10), False),
        (HoneyFigures(conductivity=0.8), True),
        (HoneyFigures("honeydew", conductivity=0.8), True),
        (HoneyFigures(conductivity=0.81), False),
        (HoneyFigures("chestnut", conductivity=0.79), False),
        (HoneyFigures("ling", conductivity=0.95), True),
        (HoneyFigures("borage", sucrose=14), True),
        (HoneyFigures("clover", sucrose=6), False),
        (HoneyFigures("citrus", sucrose=10), True),
        (HoneyFigures(free_acid=51), False),
        (HoneyFigures(), True),
    ],
)
def test_figures_keep_to_the_law_or_are_told(figures: HoneyFigures, keeps: bool) -> None:
    assert (composition_faults(figures) == ()) is keeps
