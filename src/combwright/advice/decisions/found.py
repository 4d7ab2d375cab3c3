"""What may be found at any colony, and what is done then: the same for all, said once."""

from datetime import date, timedelta
from typing import Final

from combwright.advice.actions import Action
from combwright.advice.bee_acts import (
    AsForCharged,
    AsPlanned,
    Divide,
    EggFrame,
    LeaveCells,
    LeaveShut,
    Look,
    MoveNothing,
    Reporting,
)
from combwright.advice.decisions.if_found import IfFound
from combwright.advice.decisions.successor import to_be_had
from combwright.advice.decisions.swarm import nucleus_plan, swarmed_plan
from combwright.advice.decisions.troubles import troubles
from combwright.advice.numbers import numbers

PARAMETERS: Final = numbers("found")
SWARM_SEASON: Final = (PARAMETERS["season_from"].value, PARAMETERS["season_to"].value)
LOOK_AGAIN: Final = timedelta(days=PARAMETERS["look_again_days"].value)
LAYS_BY: Final = timedelta(days=PARAMETERS["lays_by_days"].value)
CELL_CLOCK: Final = (
    "A cell is sealed 8 days after its egg is laid, and the swarm leaves about then."
)


def at_any_colony(on: date) -> tuple[IfFound, ...]:
    """Give the branches that are the same at every colony on a day."""
    return (no_eggs(on), *(cells(on) if is_swarm_season(on) else ()), *troubles(on), _signs())


def is_swarm_season(on: date) -> bool:
    """Tell whether queen cells may be found: from mid-April to mid-August."""
    return SWARM_SEASON[0] < on.timetuple().tm_yday < SWARM_SEASON[1]


def no_eggs(on: date) -> IfFound:
    """Give what is done where no eggs are found."""
    actions = (
        Look(at="signs of a queen"),
        EggFrame(marked=True),
        Look(
            at="cells on the test frame", on=on + LOOK_AGAIN, by=on + LOOK_AGAIN + timedelta(days=1)
        ),
    )
    because = (
        "Eggs stand for three days after they are laid; without any, she has laid none "
        "for at least that long."
    )
    return IfFound(code="no eggs", actions=actions, because=because)


def cells(on: date) -> tuple[IfFound, ...]:
    """Give what is done by the queen cells that are found, from harmless to late."""
    again = on + LOOK_AGAIN
    return (
        IfFound(
            code="cups",
            actions=(AsPlanned(look_into="cups"),),
            because="Bees build cups long before they mean to swarm, and often never do.",
        ),
        IfFound(
            code="supersedure cells",
            actions=(LeaveCells(which="all"),),
            because="Swarm cells are many, and hang at the edges of the combs.",
        ),
        IfFound(
            code="charged cells in a small colony",
            actions=(LeaveCells(which="all for now", on=again),),
            because="So small a colony seldom swarms.",
        ),
        charged(nucleus_plan(on, to_be_had(on))),
        _charged_without_finding_her(on),
        IfFound(
            code="swarmed",
            actions=swarmed_plan(on),
            because="The old queen leaves with the swarm; eggs are gone three days after her.",
        ),
        IfFound(code="sealed cells", actions=(AsForCharged(),), because=CELL_CLOCK),
        IfFound(
            code="charged cells, no eggs",
            actions=(LeaveCells(which="one in doubt"),),
            because="A queen lays little in the days before she swarms; or she is gone.",
        ),
        IfFound(
            code="no cells on the test frame",
            actions=(Look(at="eggs", on=on + LAYS_BY, if_none="unite"),),
            because="Without a queen they would have begun some: a virgin or a queen is there.",
        ),
    )


def charged(actions: tuple[Action, ...]) -> IfFound:
    """Give what is done about charged cells where the queen is found."""
    return IfFound(code="charged cells", actions=actions, because=CELL_CLOCK)


def _charged_without_finding_her(on: date) -> IfFound:
    """Divide without finding the queen; common practice, no source."""
    return IfFound(
        code="charged cells without the queen",
        actions=(
            Divide(way="halves", successor="marked cell"),
            Look(at="box with eggs", on=on + LOOK_AGAIN),
        ),
        because="Four days later only the queen's box has eggs, and only the other one new cells.",
    )


def from_outside() -> tuple[IfFound, ...]:
    """Give what is told at the entrance of a colony that waits for its queen; common practice."""
    because = "Bees with the hope of a queen are calm and fetch pollen for the brood to come."
    look = Look(at="signs of a queen", early_or_late=True, if_none="test frame")
    return (
        IfFound(code="calm with pollen", actions=(LeaveShut(why="as planned"),), because=because),
        IfFound(code="restless or no pollen", actions=(look,), because=because),
    )


def _signs() -> IfFound:
    return IfFound(
        code="signs of disease",
        actions=(MoveNothing(found_now=True), Reporting(found_now=True)),
        because="Foulbroods and some pests are notifiable; only the inspector can tell.",
    )
