import numpy as np
import pytest

from combwright.science.mites.usual_colony import usual_bees, usual_brood, usual_drone_share
from combwright.terms.errors import OutOfRangeError

MONTHS = range(1, 13)


def test_usual_bees_follow_the_year() -> None:
    bees = np.array([usual_bees(month).value for month in MONTHS])
    assert bees.argmax() == 6  # July
    assert bees.argmin() == 2  # March


def test_usual_brood_is_most_before_the_bees_are_and_next_to_none_in_winter() -> None:
    brood = np.array([usual_brood(month) for month in MONTHS])
    assert brood.argmax() == 5  # June
    assert brood[[0, 10, 11]].max() < 250.0
    assert (brood <= [0.9 * usual_bees(month).value for month in MONTHS]).all()


def test_drones_are_reared_in_early_summer_only() -> None:
    assert [month for month in MONTHS if usual_drone_share(month) > 0.0] == [5, 6, 7]


def test_a_thirteenth_month_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="The month"):
        usual_brood(13)
