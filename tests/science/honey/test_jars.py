import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.honey.jars import (
    figure_height_mm,
    full_jars,
    jar_volume_ml,
    tolerable_error_g,
)
from combwright.terms.errors import OutOfRangeError

# Council Directive 76/211/EEC, annex I; from memory.
ERRORS = [(50, 4.5), (100, 4.5), (200, 9.0), (227, 9.0), (300, 9.0), (400, 12.0), (500, 15.0)]
ERRORS += [(1000, 15.0), (2000, 30.0)]


@pytest.mark.parametrize(("net", "error"), ERRORS)
def test_tolerable_errors_are_those_of_the_directive(net: float, error: float) -> None:
    assert float(tolerable_error_g(net)) == pytest.approx(error)


@given(st.floats(0.0, 100.0), st.sampled_from([42.0, 113.0, 227.0, 340.0, 454.0]))
def test_jars_hold_no_more_than_the_bucket(bucket: float, jar: float) -> None:
    jars = int(full_jars(bucket, jar))
    assert jars * jar <= bucket * 1000 + 1e-3
    assert (jars + 1) * jar > bucket * 1000 - 1e-3


def test_a_bucket_that_comes_out_even_fills_every_jar() -> None:
    assert int(full_jars(3.4, 340.0)) == 10


@given(st.floats(5.0, 9000.0), st.floats(0.0, 1000.0))
def test_figures_and_room_grow_with_the_weight(net: float, more: float) -> None:
    assert figure_height_mm(net) <= figure_height_mm(net + more)
    assert jar_volume_ml(net) <= jar_volume_ml(net + more)


@pytest.mark.parametrize("net", [0.34, 0.0, -5.0, 20000.0, float("nan")])
def test_kilograms_are_not_grams(net: float) -> None:
    with pytest.raises(OutOfRangeError, match="net weight of one jar in grams"):
        full_jars(15.0, net)
