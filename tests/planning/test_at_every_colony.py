"""What is said once for a whole round holds at each of its colonies."""

from datetime import date

import pytest
from tests.paper.conftest import colony_sheet, round_sheet

from combwright.advice.bee_acts import Heft, LeaveShut, Look
from combwright.advice.kit_acts import Act, Entrance, Feeding, Treat, WriteDown
from combwright.advice.words.action_words import jobs_of
from combwright.planning.at_every_colony import at_any, everywhere
from combwright.planning.sheet import ColonySheet, RoundSheet

HEALTH = Look(at="health")
TREAT = Treat(substance="oxalic acid", way="sublimated")
FED = Feeding(feed="fondant", grams=700, sugar_fraction=0.88)
APRIL, NOVEMBER = date(2027, 4, 24), date(2027, 11, 14)


def asked(order: int, *acts: Act) -> ColonySheet:
    told = {"actions": list(acts), "jobs": list(jobs_of(acts)), "branches": []}
    return colony_sheet(order, f"C{order}", "Withy Lane").model_copy(update=told)


def a_round(*colonies: ColonySheet) -> RoundSheet:
    return round_sheet().model_copy(update={"colonies": list(colonies)})


@pytest.mark.parametrize("act", [TREAT, Entrance(width_mm=10), Look(at="eggs", on=APRIL)])
def test_what_is_asked_of_most_is_not_said_to_all(act: Act) -> None:
    said = jobs_of([act])
    most = a_round(*(asked(order, HEALTH, act) for order in range(1, 9)), asked(9, HEALTH))
    assert not set(said) & set(everywhere(most).jobs)
    every = a_round(*(asked(order, HEALTH, act) for order in range(1, 9)))
    assert set(said) <= set(everywhere(every).jobs)


def test_a_look_that_most_need_is_said_once_and_a_portion_at_its_colony() -> None:
    colonies = [asked(order, HEALTH, FED) for order in range(1, 9)]
    sheet = a_round(*colonies, asked(9, LeaveShut(why="queen is likely", until=APRIL)))
    said = everywhere(sheet)
    assert said.jobs == jobs_of([HEALTH])
    assert said.jobs_of(colonies[0]) == list(jobs_of([FED]))


def test_what_is_to_be_written_down_stands_beside_what_is_given() -> None:
    amitraz, down = Treat(substance="amitraz", way="strips"), WriteDown()
    alike = a_round(*(asked(order, HEALTH, TREAT, down) for order in range(1, 5)))
    assert everywhere(alike).jobs == jobs_of([HEALTH, TREAT, down])
    unlike = a_round(*(asked(at, HEALTH, TREAT if at % 2 else amitraz, down) for at in range(1, 5)))
    assert everywhere(unlike).jobs == jobs_of([HEALTH])


def test_where_every_hive_stays_shut_nothing_is_said_of_open_ones() -> None:
    shut = [asked(order, Heft()) for order in range(1, 5)]
    codes = {branch.code for branch in at_any(APRIL, shut)}
    assert codes == {"signs of disease"}
    assert codes < {branch.code for branch in at_any(APRIL, [*shut, asked(5, HEALTH)])}
    assert everywhere(a_round(*shut)).title == "At every colony"
    assert everywhere(a_round(*shut, asked(5, HEALTH))).title == "At every colony that is opened"


def test_before_a_colony_is_planned_nothing_that_may_be_found_is_left_out() -> None:
    assert "no eggs" in {branch.code for branch in at_any(NOVEMBER, [])}


def test_another_thing_to_do_at_one_colony_is_said_at_each() -> None:
    colonies = [colony_sheet(order, f"C{order}", "Withy Lane") for order in range(1, 9)]
    cells = colonies[0].branches[-1]
    assert cells in everywhere(a_round(*colonies)).branches
    other = cells.model_copy(update={"do": ["leave one cell"]})
    told = a_round(*colonies, colonies[0].model_copy(update={"branches": [other]}))
    assert cells not in everywhere(told).branches
