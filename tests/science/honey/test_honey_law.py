import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.honey.honey_law import is_legal, water_limit
from combwright.terms.errors import OutOfRangeError

# Council Directive 2001/110/EC, annex II, read.
LIMITS = [("general", 20.0), ("heather", 23.0), ("baker", 23.0), ("baker-heather", 25.0)]


@pytest.mark.parametrize("law", ["eu", "uk"])
@pytest.mark.parametrize(("kind", "most"), LIMITS)
def test_limits_are_those_of_the_directive(kind: str, most: float, law: str) -> None:
    limit = water_limit(kind, law)
    assert limit.most_percent == most
    assert limit.text
    assert limit.as_of


@given(st.floats(10.0, 30.0), st.floats(0.0, 5.0))
def test_drier_honey_is_never_less_legal(water: float, drier: float) -> None:
    assert is_legal(water - drier) >= is_legal(water)


@pytest.mark.parametrize(("kind", "law"), [("ling", "eu"), ("general", "us")])
def test_unknown_kinds_and_laws_name_the_known(kind: str, law: str) -> None:
    with pytest.raises(OutOfRangeError, match=r"Kinds: general.*Laws: eu, uk"):
        water_limit(kind, law)
