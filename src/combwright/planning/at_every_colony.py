"""What a round asks for at every colony: said once, so that what differs can be seen."""

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Final

from combwright.advice.actions import Action, of_kind
from combwright.advice.bee_acts import ClearEntrance, Heft, Look
from combwright.advice.decisions.found import at_any_colony
from combwright.advice.kit_acts import Counting, Feeding, Treat, WriteDown
from combwright.advice.words.action_words import words
from combwright.planning.round import shown_branches
from combwright.planning.sheet import Branch, ColonySheet, RoundSheet
from combwright.terms.data_files import parameters

PARAMETERS: Final = parameters("planning/planning")
SHARE: Final = PARAMETERS["said_once_share"].value
FEWEST: Final = int(PARAMETERS["said_once_fewest"].value)
SEEN_FROM_OUTSIDE: Final = {"robbers", "signs of disease"}  # a pest may sit at the entrance


@dataclass(frozen=True)
class Everywhere:
    """Jobs and branches that are said once for the whole round."""

    jobs: tuple[str, ...]
    branches: tuple[Branch, ...]
    title: str = "At every colony that is opened"

    def jobs_of(self, colony: ColonySheet) -> list[str]:
        """Give what is left to say of a colony's jobs."""
        return [job for job in colony.jobs if job not in self.jobs]

    def branches_of(self, colony: ColonySheet) -> list[Branch]:
        """Give what is left to say of a colony's branches."""
        said = {_key(branch) for branch in self.branches}
        return [branch for branch in colony.branches if _key(branch) not in said]


def everywhere(sheet: RoundSheet) -> Everywhere:
    """Find what is the same at all colonies of a round; of few colonies nothing.

    To look where nothing is looked for does no harm, so looks are said once from a share of the
    colonies on. What changes a hive is said once only where all are to be changed so; a portion
    stands at its colony.
    """
    most = len(sheet.colonies)
    jobs = Counter(job for colony in sheet.colonies for job in dict.fromkeys(colony.jobs))
    acts = [act for colony in sheet.colonies for act in colony.actions]
    looks = {words(act) for act in acts if _only_looks(act)}
    alike = {
        job
        for job, count in jobs.items()
        if count >= max(FEWEST, SHARE * most if job in looks else most)
    }
    at_its_colony = {words(act) for act in acts if isinstance(act, Feeding)}
    if not alike & {words(act) for act in acts if isinstance(act, Treat)}:
        # what is written down stands beside what is given
        at_its_colony |= {words(act) for act in acts if isinstance(act, WriteDown)}
    said = tuple(job for job in jobs if job in alike - at_its_colony)
    counted = _counted(sheet.colonies)
    branches = (branch for branch, count in counted.values() if count >= max(FEWEST, most))
    opened = " that is opened" if _is_any_opened(sheet.colonies) else ""
    return Everywhere(said, (*sheet.at_any_colony, *branches), f"At every colony{opened}")


def at_any(on: date, colonies: Sequence[ColonySheet]) -> list[Branch]:
    """Give what may be found at any colony; while all stay shut, what can be seen from outside."""
    found = shown_branches(at_any_colony(on))
    if not colonies or _is_any_opened(colonies):
        return found
    return [branch for branch in found if branch.code in SEEN_FROM_OUTSIDE]


def is_opened(colony: ColonySheet) -> bool:
    """Tell whether a hive is opened: every one that is, is looked through for disease."""
    return any(look.at == "health" for look in of_kind(colony.actions, Look))


def _is_any_opened(colonies: Iterable[ColonySheet]) -> bool:
    return any(is_opened(colony) for colony in colonies)


def _only_looks(act: Action) -> bool:
    """Tell whether an act leaves the hive as it is, and asks for nothing later."""
    return isinstance(act, Heft | ClearEntrance | Counting) or (
        isinstance(act, Look) and act.on is None
    )


def _key(branch: Branch) -> tuple[str, ...]:
    return (branch.found, *branch.do)


def _counted(colonies: Sequence[ColonySheet]) -> dict[tuple[str, ...], tuple[Branch, int]]:
    found: dict[tuple[str, ...], tuple[Branch, int]] = {}
    for colony in colonies:
        for branch in colony.branches:
            first, count = found.get(_key(branch), (branch, 0))
            found[_key(branch)] = (first, count + 1)
    return found
