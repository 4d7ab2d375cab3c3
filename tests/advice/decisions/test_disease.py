"""Signs of disease stand until they are cleared, and stop what moves in the whole yard."""

from dataclasses import replace
from datetime import date, timedelta
from uuid import UUID

import pytest
from tests.advice.situations import Case, gives, situation

from combwright.advice.bee_acts import Divide, KnockDown
from combwright.advice.decisions.disease import noted_signs
from combwright.advice.plan import plan
from combwright.terms.entries import Visit

ON = date(2027, 6, 20)
STRONG = Case(ON, 11.0, 8.0, 12.0, 11, supers=1, honey_above_kg=4.0)


def _visits(*signs: str | None) -> list[Visit]:
    return [
        Visit(id=UUID(int=n), on=ON + timedelta(days=7 * n), colony="Sorrel", disease_signs=said)
        for n, said in enumerate(signs)
    ]


@pytest.mark.parametrize("later", [(), (None,), (None, None)])
def test_signs_stand_while_nobody_looks(later: tuple[None, ...]) -> None:
    noted = noted_signs(_visits("sunken caps", *later))
    assert noted is not None
    assert noted.disease_signs == "sunken caps"


@pytest.mark.parametrize("said", ["none", "None", "cleared", " no signs "])
def test_signs_are_cleared_by_a_visit_that_says_so(said: str) -> None:
    assert noted_signs(_visits("sunken caps", None, said.strip())) is None


def test_signs_noted_again_stand_again() -> None:
    assert noted_signs(_visits("sunken caps", "cleared", "ropy")) is not None


def test_a_colony_about_to_swarm_is_not_divided_beside_a_sick_one() -> None:
    """Its cells are knocked down instead, so that no swarm carries the disease away."""
    sound = situation(Case(date(2027, 5, 20), 9.0, 6.0, 8.0, 11))
    sound.colonies["swarm_clock"] = 5.0
    beside = replace(sound, signs_at="Sorrel")
    assert plan(sound).asks(Divide)
    assert not plan(beside).asks(Divide)
    assert plan(beside).asks(KnockDown)


def test_a_neighbour_of_a_sick_colony_is_told_so_and_gives_nothing() -> None:
    sound = plan(situation(STRONG))
    beside = plan(situation(replace(STRONG, signs_at="Sorrel")))
    assert gives(sound)
    assert not gives(beside)
    assert beside.set_up.frames == STRONG.frames
    assert any("Sorrel" in job for job in beside.jobs)
    assert not any("Sorrel" in job for job in sound.jobs)
