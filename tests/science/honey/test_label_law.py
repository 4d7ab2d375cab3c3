"""Labels by the rules of a country and day.

Sources: Regulation (EU) 1169/2011, Directive 2011/91/EU and Directive (EU) 2024/1438 by lists of
food authorities (read); the examples are worked by hand from them.
"""

from dataclasses import replace
from datetime import date

import pytest

from combwright.science.honey.label_law import (
    JarLabel,
    cautions,
    label_faults,
    label_rule,
    origin_of,
)
from combwright.science.honey.lots import best_before_words, lot_code, papers_kept_until
from combwright.terms.errors import NotFoundError

FILLED = date(2026, 7, 14)
OWN = JarLabel(
    *("Irish Honey", "340 g", 340, 4.0, "A. Keeper", "1 Main St, Athlone, N37 X1Y2"),
    [("Ireland", 100)],
    *("Best before end 2028", False, "L26195-1"),
)
BLEND = replace(OWN, origin=[("Ireland", 62), ("Spain", 38)])


def faults(label: JarLabel, code: str = "IE") -> str:
    return " ".join(label_faults(label, label_rule(code, FILLED)))


def test_a_whole_label_lacks_nothing() -> None:
    assert faults(OWN) == ""
    english = replace(OWN, weight="454 g (1 lb)", net_g=454, origin=[("England", 100)])
    assert faults(english, "ENG") == ""


@pytest.mark.parametrize(
    ("changed", "fault"),
    [
        ({"lot": ""}, "A lot is missing"),
        ({"figures_mm": 3.0}, "3 mm high: 4 are needed"),
        ({"weight": "12 oz"}, "grams or kilograms first"),
        ({"weight": "1 lb (454 g)"}, "grams or kilograms first"),
        ({"same_view": False}, "at one glance"),
        ({"origin": []}, "country of origin is missing"),
    ],
)
def test_what_a_label_lacks_is_said(changed: dict[str, object], fault: str) -> None:
    assert fault in faults(replace(OWN, **changed))  # type: ignore[arg-type]


def test_a_best_before_day_may_stand_in_for_a_lot_but_is_warned_of() -> None:
    dated = replace(OWN, best_before="Best before 14 July 2028", shows_day=True, lot="")
    assert faults(dated) == ""
    assert "print one" in cautions(dated, label_rule("IE", FILLED))[0]


def test_a_blend_names_its_countries_by_weight_where_the_law_asks_for_it() -> None:
    rule = label_rule("IE", FILLED)
    assert origin_of(BLEND, rule) == "Ireland 62 %, Spain 38 %"
    assert origin_of(replace(BLEND, net_g=28), rule) == "IE 62 %, ES 38 %"
    assert "more than one country" in origin_of(BLEND, label_rule("ENG", FILLED))
    assert faults(BLEND) == ""
    assert "order of their weight" in faults(replace(BLEND, origin=BLEND.origin[::-1]))
    short = replace(BLEND, origin=[("Ireland", 60), ("Spain", 38)])
    assert "add up to 98 %" in faults(short)
    assert faults(replace(BLEND, origin=[("Ireland", 61), ("Spain", 38)])) == ""


def test_shares_are_asked_for_from_the_day_the_directive_applies() -> None:
    assert label_rule("IE", date(2026, 6, 14)).shares
    assert not label_rule("IE", date(2026, 6, 13)).shares


def test_a_country_without_a_rule_is_refused() -> None:
    with pytest.raises(NotFoundError, match="FR"):
        label_rule("FR", FILLED)


def test_lots_dates_and_papers() -> None:
    assert lot_code(FILLED, 1) == "L26195-1"
    assert best_before_words(date(2028, 12, 31), "year") == "Best before end 2028"
    assert papers_kept_until(date(2026, 9, 1), date(2028, 12, 31)) == date(2031, 9, 1)
    assert papers_kept_until(date(2026, 9, 1), date(2031, 12, 31)) == date(2032, 12, 31)
