from uuid import uuid4

import pytest

from combwright.planning.sheet import RoundSheet
from combwright.services.rounds.syrup_left import syrup_left
from combwright.terms.entries import Feed, Noted, Visit


def fed(sheet: RoundSheet, colony: str, grams: float, feed: str = "syrup") -> Noted:
    share = 0.6 if feed == "syrup" else 0.85
    said = {"colony": colony, "feed": feed, "grams": grams, "sugar_fraction": share}
    return Feed.model_validate({"id": uuid4(), "on": sheet.on} | said)


def test_before_the_first_portion_all_that_was_mixed_is_there(small_round: RoundSheet) -> None:
    left = syrup_left(small_round, [])
    assert left.given_g == left.fondant_given_g == 0.0
    assert left.loaded_g == 1000.0 * (small_round.bench.sugar_kg + small_round.bench.water_kg) > 0
    assert left.litres == pytest.approx(small_round.bench.syrup_l, abs=0.05)  # told in tenths


def test_what_is_given_is_taken_off_and_more_than_there_was_is_less_than_nothing(
    small_round: RoundSheet,
) -> None:
    before = syrup_left(small_round, [])
    left = syrup_left(small_round, [fed(small_round, "Oak", 500), fed(small_round, "Ash", 250)])
    assert left.given_g == 750
    assert before.litres - left.litres == pytest.approx(750 / left.grams_per_litre)
    assert syrup_left(small_round, [fed(small_round, "Oak", 30_000)]).litres < 0


def test_fondant_is_counted_apart_and_other_notes_and_colonies_not_at_all(
    small_round: RoundSheet,
) -> None:
    look = Visit(id=uuid4(), on=small_round.on, colony="Oak", frames_of_bees=7)
    notes = [fed(small_round, "Oak", 400, "fondant"), fed(small_round, "Stranger", 800), look]
    left = syrup_left(small_round, notes)
    assert (left.given_g, left.fondant_given_g) == (0, 400)
