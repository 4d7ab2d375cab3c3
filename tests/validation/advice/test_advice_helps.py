"""The advice against the rules of thumb, over years, colonies and climates: by result."""

import pytest
from tests.validation.advice.page import LIMITS, realised, verdict
from tests.validation.advice.study import PLACES, Outcome, run_study

pytestmark = pytest.mark.validation

COMPARED = ("money", "survived", "nucs", "swarms", "mites")
STUDIES = {"prior": (100, False), "outside": (40, True)}


@pytest.fixture(scope="module", params=STUDIES, ids=str)
def outcomes(request: pytest.FixtureRequest) -> list[Outcome]:
    colonies, outside = STUDIES[request.param]
    return run_study(colonies=colonies, places=PLACES, years=5, members=60, outside=outside)


def test_advice_loses_on_nothing_and_wins_on_three(outcomes: list[Outcome]) -> None:
    verdicts = {measure: verdict(measure, outcomes) for measure in COMPARED}
    assert "worse" not in verdicts.values(), verdicts
    assert sum(found == "better" for found in verdicts.values()) >= 3, verdicts


@pytest.mark.parametrize("harm", LIMITS)
def test_harm_stays_within_its_limit(outcomes: list[Outcome], harm: str) -> None:
    assert realised(outcomes, "Combwright")[harm] <= LIMITS[harm]
