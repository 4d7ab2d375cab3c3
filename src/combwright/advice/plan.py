"""The plan for one colony: the decisions in working order, none against another."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Final, TypeVar

from combwright.advice.actions import Action, days_asked_for, of_kind
from combwright.advice.bee_acts import LeaveShut
from combwright.advice.binding import bound
from combwright.advice.counted import as_counted
from combwright.advice.deciding import Deciding
from combwright.advice.decision import Decision
from combwright.advice.decisions import (
    disease,
    food,
    honey,
    housing,
    look,
    nucs,
    queen,
    space,
    spacing,
    swarm,
    treating,
    visits,
    winter,
)
from combwright.advice.decisions.branches import branches
from combwright.advice.decisions.if_found import IfFound
from combwright.advice.kit_acts import Act, Feeding
from combwright.advice.situation import Situation
from combwright.advice.stacking import set_up_after
from combwright.terms.set_up import SetUp

A = TypeVar("A", bound=Act)
# In working order, which is that of the sheet; what one needs of another it asks for itself.
DECISIONS: Final[tuple[Callable[[Deciding], Decision], ...]] = (
    disease.decide,
    look.decide,
    swarm.decide,
    queen.decide,
    honey.decide,
    space.decide,
    spacing.decide,
    treating.decide,
    food.decide,
    winter.decide,
    housing.decide,
    nucs.decide,
    visits.decide,
)


@dataclass(frozen=True)
class Plan:
    """Everything advised for one colony until its next visit."""

    on: date
    planned_until: date
    pays_best: date
    decisions: tuple[Decision, ...]
    set_up: SetUp
    portion: Feeding
    chances: dict[str, float]
    branches: tuple[IfFound, ...]

    @property
    def actions(self) -> tuple[Action, ...]:
        """All that is to be done, in working order."""
        return tuple(action for decision in self.decisions for action in decision.actions)

    def asks(self, kind: type[A]) -> tuple[A, ...]:
        """Give the actions of one kind."""
        return of_kind(self.actions, kind)

    @property
    def jobs(self) -> tuple[str, ...]:
        """All jobs in words, in working order."""
        return tuple(job for decision in self.decisions for job in decision.jobs)

    @property
    def because(self) -> tuple[str, ...]:
        """The reasons that belong on a sheet; all of them stand in the data."""
        return tuple(
            reason for decision in self.decisions if decision.is_told for reason in decision.because
        )

    @property
    def inputs(self) -> dict[str, float]:
        """All figures that the reasons quote."""
        return {
            f"{decision.topic}: {name}": value
            for decision in self.decisions
            for name, value in decision.inputs.items()
        }

    @property
    def next_visit(self) -> date:
        """The earliest day that an action asks for, or that pays best; never while it is shut."""
        asked = [day for day in days_asked_for(self.actions) if day > self.on]
        shut = [(each.since or self.on, each.until) for each in self.asks(LeaveShut) if each.until]
        is_open = not any(since <= self.pays_best < until for since, until in shut)
        return min([*asked, *([self.pays_best] if is_open or not asked else [])])


def plan(situation: Situation, *, with_branches: bool = True) -> Plan:
    """Decide all about one colony for the days until its next visit.

    Where it may be dead, that is said, and all is decided for the case that it lives. Branches may
    be left out where nobody reads them.
    """
    living = as_counted(situation.if_alive())
    deciding = Deciding(living)
    decided = deciding.of(food.decide)
    decisions = tuple(bound(deciding.of(decide), deciding) for decide in DECISIONS)
    actions = tuple(action for each in decisions for action in each.actions)
    return Plan(
        living.on,
        living.planned_until,
        living.on + timedelta(days=visits.days_of(deciding)),
        decisions,
        set_up_after(living.standing.set_up, actions),
        decided.portion,
        decided.tried.chances | {"swarm": swarm.chance_of(deciding)},
        branches(deciding) if with_branches else (),
    )
