"""A swarm or the colony's end parts the members; nobody is in two bands or in none."""

from datetime import date, timedelta
from uuid import uuid4

import numpy as np
import pytest

from combwright.advice.swarm_chance import calibrated
from combwright.records.store.book_handle import Book
from combwright.services.beliefs.branching import ENDS, SWARMS, WORTH_DRAWING, forked
from combwright.services.beliefs.colony_history import ColonyHistory, colony_history
from combwright.services.beliefs.history_chart import history_chart, signs_used
from combwright.services.beliefs.work_done import DIVIDED, FED, SUPERS, TREATED, WorkDone, work_done
from combwright.services.demo import Paths
from combwright.simulation.columns import STATE
from combwright.terms.entries import Change, Feed, Harvest, Noted, Split, Stack, Treatment

ON = date(2027, 5, 1)
MEMBERS = 200


def ahead(swarm: int, end: int, days: int = 5) -> list[tuple[date, np.ndarray]]:
    """Members of which from the third day on some have swarmed and some are dead."""
    stages = []
    for day in range(days):
        members = np.zeros(MEMBERS, dtype=STATE)
        members["nest"] = 1000.0
        if day >= 2:
            members["swarmed"][:swarm] = 1.0
            members["nest"][:swarm] = 400.0
            members["nest"][MEMBERS - end :] = 0.0
        stages.append((ON + timedelta(days=day), members))
    return stages


@pytest.mark.parametrize(("swarm", "end"), [(0, 0), (20, 0), (0, 30), (20, 30), (9, 9)])
def test_members_are_parted_once_and_the_branch_begins_when_they_leave(
    swarm: int, end: int
) -> None:
    staying, forks = forked(ahead(swarm, end), ["frames_of_bees"])
    worth = {SWARMS: swarm, ENDS: end}
    drawn = {what: some for what, some in worth.items() if some >= WORTH_DRAWING * MEMBERS}
    assert {fork.what for fork in forks} == set(drawn)
    assert len(staying[0]) == MEMBERS
    assert len(staying[-1]) == MEMBERS - sum(drawn.values())
    for fork in forks:
        assert fork.days[0] == ON + timedelta(days=2)
        share = drawn[fork.what] / MEMBERS
        chance = calibrated(share, MEMBERS) if fork.what == SWARMS else share
        assert fork.chance == pytest.approx(chance)
    if swarm >= 20:  # what goes on knows nothing of the swarm: no cliff
        assert staying[-1]["nest"].min() >= (1000.0 if end in {0, 30} else 0.0)


def test_what_nearly_all_do_is_expected_and_no_branch() -> None:
    staying, forks = forked(ahead(0, MEMBERS - 2), ["frames_of_bees"])
    assert forks == ()
    assert len(staying[-1]) == MEMBERS


def test_what_was_done_is_told_once_a_day_and_not_before_it_happens() -> None:
    def at(days: int) -> dict[str, object]:
        return {"id": uuid4(), "on": ON + timedelta(days=days), "colony": "Oak"}

    split = {"new_colony": "Nuc", "hive": "nuc 6 polystyrene", "frames_of_bees": 2}
    entries: list[Noted] = [
        Stack(**at(0), hive="national timber", supers=0),
        Feed(**at(1), grams=500),
        Feed(**at(1), grams=500),
        Change(**at(2), part="super", count=1),
        Stack(**at(3), hive="national timber", supers=1),
        Harvest(**at(4), supers=1, honey_kg=10),
        Split.model_validate(at(5) | split),
        Treatment(**at(6), substance="oxalic acid"),
        Feed(**at(9), grams=500),
    ]
    told = [(each.what, (each.on - ON).days) for each in work_done(entries, ON + timedelta(days=9))]
    assert told == [(FED, 1), (SUPERS, 2), (SUPERS, 4), (DIVIDED, 5), (TREATED, 6)]


@pytest.fixture(scope="module")
def told(demo: Paths) -> ColonyHistory:
    return colony_history(Book(demo.book), "Vetch", demo.on, members=100)


def test_a_chart_bears_the_signs_of_what_was_done_and_today(told: ColonyHistory) -> None:
    assert signs_used(told) == {"F": FED}
    drawing = history_chart(told, "frames_of_bees")
    assert drawing.count(">F</text>") == len({each.on for each in told.done})
    assert ">24 Apr</text>" in drawing
    assert "Fed: " in drawing


def test_every_branch_has_a_line_of_its_own_that_grows_out_of_the_first(
    told: ColonyHistory,
) -> None:
    assert told.forks
    drawing = history_chart(told, "frames_of_bees")
    for name in ("goes on", *(fork.what for fork in told.forks)):
        assert f">{name}</text>" in drawing
    assert WorkDone(told.done[0].on, FED) in told.done
