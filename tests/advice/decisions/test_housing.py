"""A full nuc is sold or housed; one that still grows is left."""

from dataclasses import replace
from datetime import date

import pytest
from tests.advice.situations import Case, situation

from combwright.advice.bee_acts import Rehouse
from combwright.advice.plan import Plan, plan

NUC = Case(date(2027, 6, 10), 6.0, 3.5, 3.0, 6, "nuc 6 polystyrene")


def planned(case: Case) -> Plan:
    return plan(situation(case), with_branches=False)


@pytest.mark.parametrize("on", [date(2027, 5, 10), date(2027, 6, 10), date(2027, 7, 20)])
@pytest.mark.parametrize("stores", [1.0, 3.0, 6.0])
def test_a_full_nuc_is_told_more_than_to_be_fed(on: date, stores: float) -> None:
    assert planned(replace(NUC, on=on, stores_kg=stores)).asks(Rehouse)


@pytest.mark.parametrize(
    "case",
    [
        replace(NUC, frames_of_bees=3.0, frames_of_brood=1.5),
        replace(NUC, queen="virgin", frames_of_brood=0.0),
        replace(NUC, on=date(2027, 10, 5), frames_of_brood=1.0),
        replace(NUC, disease_signs="sunken caps"),
        replace(NUC, hive="national timber"),
    ],
)
def test_one_that_grows_mates_winters_or_is_sick_is_not(case: Case) -> None:
    assert not planned(case).asks(Rehouse)
