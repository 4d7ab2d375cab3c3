from uuid import uuid4

import pytest

from combwright.planning.sheet import RoundSheet
from combwright.services.rounds.feed_left import FeedLeft, feed_left
from combwright.terms.entries import Feed, Noted, Visit


def fed(sheet: RoundSheet, colony: str, grams: float, feed: str = "syrup") -> Noted:
    share = 0.6 if feed == "syrup" else 0.85
    said = {"colony": colony, "feed": feed, "grams": grams, "sugar_fraction": share}
    return Feed.model_validate({"id": uuid4(), "on": sheet.on} | said)


def syrup(sheet: RoundSheet, *notes: Noted) -> FeedLeft:
    (found,) = (each for each in feed_left(sheet, notes) if each.feed == "syrup")
    return found


def test_before_the_first_portion_all_that_was_mixed_is_there(small_round: RoundSheet) -> None:
    left = syrup(small_round)
    assert left.given_g == 0.0
    assert left.loaded_g == 1000.0 * (small_round.bench.sugar_kg + small_round.bench.water_kg) > 0
    assert left.unit == "L"
    assert left.left == left.loaded == pytest.approx(small_round.bench.syrup_l, abs=0.05)


def test_what_is_given_is_taken_off_and_more_than_there_was_is_less_than_nothing(
    small_round: RoundSheet,
) -> None:
    left = syrup(small_round, fed(small_round, "Oak", 500), fed(small_round, "Ash", 250))
    assert left.given_g == 750
    assert left.loaded - left.left == pytest.approx(750 / left.grams_a_unit)
    assert syrup(small_round, fed(small_round, "Oak", 30_000)).left < 0


def test_where_only_fondant_was_loaded_no_syrup_is_told_of(small_round: RoundSheet) -> None:
    """Other feeds, other notes and other colonies do not count."""
    bench = small_round.bench.model_copy(update={"sugar_kg": 0.0, "water_kg": 0.0, "syrup_l": 0.0})
    load = [stop.model_copy(update={"fondant_kg": 1.5}) for stop in small_round.load]
    winter = small_round.model_copy(update={"bench": bench, "load": load})
    look = Visit(id=uuid4(), on=small_round.on, colony="Oak", frames_of_bees=7)
    notes = [
        fed(winter, "Oak", 400, "fondant"),
        fed(winter, "Stranger", 800, "fondant"),
        fed(winter, "Ash", 100),
        look,
    ]
    (left,) = feed_left(winter, notes)
    loaded = 1.5 * len(load)
    assert (left.feed, left.unit, left.loaded) == ("fondant", "kg", loaded)
    assert left.left == pytest.approx(loaded - 0.4)
