from datetime import date, timedelta
from uuid import uuid4

from combwright.records.replay.first_day import known_on, openings
from combwright.terms.entries import Colony, Feed, Noted, Split, Stack, Visit

ON = date(2027, 4, 24)
EVE = ON - timedelta(days=1)


def colony(name: str, on: date = ON) -> Colony:
    return Colony(id=uuid4(), on=on, colony=name, yard="Home", hive="national timber")


def visit(name: str, on: date = ON) -> Visit:
    return Visit(id=uuid4(), on=on, colony=name, frames_of_bees=5)


def test_what_a_colony_came_with_is_known_up_to_the_first_look() -> None:
    came, seen = colony("1"), visit("1")
    stack = Stack(id=uuid4(), on=ON, colony="1", supers=0)
    fed = Feed(id=uuid4(), on=ON, colony="1", grams=500)
    entries: list[Noted] = [came, stack, seen, fed, visit("1")]
    assert list(openings(entries, ON)) == [came, stack, seen]
    assert [each.on for each in known_on(entries, ON)] == [EVE, EVE, EVE, ON, ON]


def test_a_colony_of_before_has_no_first_day_again() -> None:
    old: list[Noted] = [colony("1", EVE), visit("1")]
    split = Split(id=uuid4(), on=ON, colony="1", new_colony="2", hive="nuc 5 ply", frames_of_bees=2)
    entries: list[Noted] = [*old, split, visit("2"), visit("a stranger")]
    assert not list(openings(entries, ON))
    assert known_on(entries, ON) == entries
