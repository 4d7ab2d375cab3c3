from dataclasses import replace
from datetime import date, timedelta
from uuid import UUID

import numpy as np
import pytest

from combwright.planning.supply.courses import NucCourse
from combwright.planning.supply.nuc_readiness import NucReady, nuc_readiness
from combwright.terms.entries import Treatment, Visit

ON = date(2027, 5, 20)
WEEKS = 5


def course(bees: float = 5.0, brood: float = 2.0, laid: int = 0, laying: float = 1.0) -> NucCourse:
    """Make a nuc whose queen has laid three weeks from a week on."""
    members = np.arange(10) < 10 * laying
    weeks = np.tile(np.arange(WEEKS) >= laid, (10, 1)) & members[:, None]
    full = np.ones((10, WEEKS))
    return NucCourse(
        "N", "Yard", np.tile(members[:, None], WEEKS), weeks, bees * full, brood * full, 4.0 * full
    )


def seen(on: date = ON - timedelta(days=3), **told: object) -> Visit:
    return Visit.model_validate({"id": UUID(int=1), "on": on, "colony": "N", **told})


def held(made: NucCourse, *visits: Visit) -> NucReady:
    return nuc_readiness(made, 6, visits, ON)


def test_a_nuc_that_has_all_is_sold() -> None:
    told = held(course(), seen())
    assert (told.missing, told.by, told.job) == ((), ON, "sell")


def test_what_is_missing_is_named_with_the_day_on_which_it_is_there() -> None:
    told = held(course(laid=3), seen())
    assert told.missing == ("a queen that has laid three weeks",)
    assert told.by == ON + timedelta(days=21)
    assert told.chance == 1.0


@pytest.mark.parametrize(
    ("visits", "says"),
    [
        ((), "a look for disease within a week"),
        ((seen(ON - timedelta(days=9)),), "a look for disease within a week"),
        ((seen(queen_cells="charged"),), "no charged cells"),
        ((seen(disease_signs="chalk"),), "no signs of disease"),
    ],
)
def test_what_must_be_seen_and_written_is_named(visits: tuple[Visit, ...], says: str) -> None:
    told = held(course(), *visits)
    assert any(says in each for each in told.missing)
    assert told.job != "sell"


def test_the_job_follows_from_what_is_believed() -> None:
    assert "mated queen" in held(course(laying=0.2)).job
    assert "bigger box" in held(course(bees=7.0, laid=2)).job
    assert "hold back" in held(course(bees=2.0)).job


def test_a_treatment_that_is_not_written_in_full_goes_with_no_nuc() -> None:
    half = Treatment(id=UUID(int=2), on=date(2027, 5, 1), colony="N", substance="formic acid")
    whole = half.model_copy(update={"product": "Example pads", "batch": "F1"})
    told = nuc_readiness(course(), 6, [seen(), half], ON)
    assert told.missing == ("product and batch of the treatment of 1 May",)
    assert nuc_readiness(course(), 6, [seen(), whole], ON).missing == ()


def test_food_alone_is_given_and_the_nuc_sold() -> None:
    hungry = replace(course(), stores_kg=np.ones((10, WEEKS)))
    told = held(hungry, seen())
    assert (told.missing, told.job) == (("2 kg of stores",), "feed it, then sell")
    assert told.said == "still needs 2 kg of stores; feed it, then sell"
