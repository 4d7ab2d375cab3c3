"""The feed against icalendar's own reader."""

from datetime import UTC, date, datetime, timedelta

from icalendar import Calendar, Component

from combwright.planning.sheet import RoundSheet
from combwright.services.rounds.visits_calendar import NAMED, visits_calendar

MADE = datetime(2027, 4, 9, 20, tzinfo=UTC)


def written(sheet: RoundSheet | None, made: datetime = MADE) -> list[Component]:
    return Calendar.from_ical(visits_calendar(sheet, made=made)).walk("VEVENT")


def events(sheet: RoundSheet | None) -> dict[tuple[date, str], str]:
    """What is written for each day and headline."""
    return {
        (each.decoded("dtstart"), str(each["summary"])): str(each["description"])
        for each in written(sheet)
    }


def test_the_round_and_each_next_visit_are_whole_days(small_round: RoundSheet) -> None:
    found = events(small_round)
    assert sorted(found[small_round.on, "Top: 2 colonies"].split(", ")) == ["Ash", "Oak"]
    assert found[small_round.on, "Low: 1 colony"] == "Elm"
    days = {small_round.on, *(each.next_visit for each in small_round.colonies)}
    assert {on for on, _ in found} == days
    for each in written(small_round):
        assert each.decoded("dtend") - each.decoded("dtstart") == timedelta(days=1)


def test_a_calendar_read_again_renews_its_events_instead_of_adding_some(
    small_round: RoundSheet,
) -> None:
    first, second = (
        {str(each["uid"]) for each in written(small_round, made)}
        for made in (MADE, MADE + timedelta(days=1))
    )
    assert first == second
    assert len(first) == len(events(small_round))


def test_many_colonies_are_not_all_named(small_round: RoundSheet) -> None:
    oak = small_round.colonies[0]
    many = [oak.model_copy(update={"colony": f"Oak {at}"}) for at in range(NAMED + 3)]
    found = events(small_round.model_copy(update={"colonies": many}))
    told = found[small_round.on, f"{oak.yard}: {NAMED + 3} colonies"]
    assert told.endswith(" and more")
    assert told.count("Oak") == NAMED


def test_no_round_is_an_empty_calendar_and_no_broken_one() -> None:
    assert events(None) == {}
