"""The figures of the sheet as words."""

from datetime import date, timedelta

import pytest

from combwright.paper.sheet_words import colony_words, day_words, everywhere_words, portion_words
from combwright.planning.at_every_colony import Everywhere
from combwright.planning.sheet import Portion, RoundSheet

NOTHING = Everywhere((), ())


@pytest.mark.parametrize("offset", range(0, 800, 37))
def test_days_agree_with_the_calendar_of_python(offset: int) -> None:
    day = date(2025, 12, 30) + timedelta(days=offset)
    assert day_words(day) == f"{day:%A} {day.day} {day:%B} {day.year}"


def test_what_is_said_once_is_not_said_again(sheet: RoundSheet) -> None:
    first = next(each for each in sheet.colonies if each.jobs and each.branches)
    said = Everywhere((first.jobs[0],), (first.branches[0],))
    words = colony_words(first, said, sheet.on)
    assert first.jobs[0] not in words["jobs"]
    assert len(words["branches"]) == len(first.branches) - 1
    assert everywhere_words(said)["jobs"] == [first.jobs[0]]


def test_a_portion_without_litres_is_given_by_weight() -> None:
    fondant = Portion(
        syrup_g=1000, per_day_g=250, days=4, sugar_fraction=0.85, feed="fondant", litres=0
    )
    assert portion_words(fondant) == ["1.0 kg fondant", "85 % sugar"]


def test_no_portion_is_said_plainly() -> None:
    none = Portion(syrup_g=0, per_day_g=0, days=3, sugar_fraction=0.6)
    assert portion_words(none) == ["no feed", ""]


def test_chances_are_never_finer_than_known(sheet: RoundSheet) -> None:
    first = sheet.colonies[0]
    told = colony_words(first, NOTHING, sheet.on)["chances"]
    assert told == "queen short of room 6 %, swarm 2 %, any other under 1 %"
    likely = first.model_copy(update={"chances": {"swarm": 0.12}})
    assert colony_words(likely, NOTHING, sheet.on)["chances"] == "swarm 12 %"
    safe = first.model_copy(update={"chances": {"swarm": 0.004, "hunger": 0.0}})
    assert colony_words(safe, NOTHING, sheet.on)["chances"] == "under 1 %"
