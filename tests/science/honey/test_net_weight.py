"""Weights of jars against the label.

Source: Council Directive 76/211/EEC, annex I, and guidance on packaged goods (read): percentages
in grams are rounded up to the next tenth; examples worked by hand from them.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.science.honey.jars import full_jars, tolerable_error_g
from combwright.science.honey.net_weight import net_weights

TABLE = [(28, 2.6), (42, 3.8), (50, 4.5), (113, 5.1), (200, 9), (227, 9), (250, 9), (300, 9)]
TABLE += [(340, 10.2), (450, 13.5), (454, 13.7), (500, 15), (680, 15), (907, 15), (1000, 15)]
TABLE += [(1360, 20.4), (3175, 47.7)]
TEN = [341, 339, 342, 340, 338, 343, 341, 340, 331, 345]
LIGHT = [338, 339, 340, 337, 341, 339, 338, 340, 339, 338]


@pytest.mark.parametrize(("net", "error"), TABLE)
def test_the_tolerable_error_is_rounded_up_to_a_tenth(net: float, error: float) -> None:
    assert float(tolerable_error_g(net)) == error


@pytest.mark.parametrize("edge", [50, 100, 200, 300, 500, 1000])
def test_the_table_is_the_same_from_both_sides_of_its_edges(edge: float) -> None:
    below, above = (float(tolerable_error_g(edge + step)) for step in (-0.01, 0.01))
    assert above - below <= 0.1 + 1e-9


@pytest.mark.parametrize(
    ("weights", "every_jar", "fault"),
    [
        (TEN, False, ""),
        (TEN, True, "3 jars are below the weight"),
        (LIGHT, False, "mean lacks 1.1 g"),
        ([345] * 38 + [329.7] * 2, False, "2 jars are short by more than the tolerable error"),
        ([345] * 39 + [318], False, "1 jar is short by more than twice"),
        ([345] * 39 + [329.7], False, ""),
    ],
)
def test_a_sample_keeps_the_three_rules(weights: list[float], every_jar: bool, fault: str) -> None:
    found = net_weights(weights, 340, every_jar=every_jar)
    assert len(found.faults) == bool(fault)
    assert fault in " ".join(found.faults)


@given(st.lists(st.integers(3000, 3800), min_size=1, max_size=60))
def test_every_jar_at_least_the_label_keeps_the_average_too(tenths: list[int]) -> None:
    weights = [one / 10 for one in tenths]
    strict = net_weights(weights, 340, every_jar=True)
    if not strict.faults:
        assert not net_weights(weights, 340, every_jar=False).faults


def test_a_tank_fills_no_more_jars_than_its_honey() -> None:
    assert (int(full_jars(25.0, 340)), int(full_jars(25.0, 454))) == (73, 55)
