"""What may be otherwise, as it is told in the terminal."""

from datetime import date

import pytest

from combwright.cli.supply import otherwise
from combwright.services.supply.asked import WhatIf
from combwright.terms.errors import CombwrightError


def test_a_price_a_lost_batch_and_a_cold_fortnight_may_be_told_together() -> None:
    told = otherwise(["nuc in June=180", "lost First graft", "cold 2027-05-20", "lost B2"])
    assert told == WhatIf(
        (("nuc in June", 180.0),), frozenset({"First graft", "B2"}), date(2027, 5, 20)
    )
    assert otherwise([]) == WhatIf()


@pytest.mark.parametrize("told", ["lost", "cold tomorrow", "rain"])
def test_what_is_not_understood_is_said_with_an_example(told: str) -> None:
    with pytest.raises(CombwrightError) as error:
        otherwise([told])
    assert error.value.remedy
