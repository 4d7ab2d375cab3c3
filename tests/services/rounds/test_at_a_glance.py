"""A colony's part of a round in one line."""

import pytest
from tests.paper.conftest import colony_sheet

from combwright.planning.task_minutes import usual_minutes
from combwright.services.rounds.at_a_glance import glance


@pytest.mark.parametrize(("count", "said"), [(0, ""), (1, "1 question"), (2, "2 questions")])
def test_questions_are_counted(count: int, said: str) -> None:
    colony = colony_sheet(1, "Alder", "Withy Lane")
    asked = colony.model_copy(update={"questions": [f"Is it {at}?" for at in range(count)]})
    seen = glance(asked, usual_minutes(5.0))
    assert seen.asked == said
    assert seen.line.endswith(said or seen.boxes or "boxes stay")
    assert (said in seen.rest) or not said
