"""What a round asks for at nearly every colony: said once, so that what differs can be seen."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from combwright.planning.sheet import Branch, ColonySheet, RoundSheet
from combwright.terms.data_files import parameters

PARAMETERS: Final = parameters("planning/planning")
SHARE: Final = PARAMETERS["said_once_share"].value
FEWEST: Final = int(PARAMETERS["said_once_fewest"].value)


@dataclass(frozen=True)
class Everywhere:
    """Jobs and branches that are said once for the whole round."""

    jobs: tuple[str, ...]
    branches: tuple[Branch, ...]

    def jobs_of(self, colony: ColonySheet) -> list[str]:
        """Give what is left to say of a colony's jobs."""
        return [job for job in colony.jobs if job not in self.jobs]

    def branches_of(self, colony: ColonySheet) -> list[Branch]:
        """Give what is left to say of a colony's branches."""
        said = {_key(branch) for branch in self.branches}
        return [branch for branch in colony.branches if _key(branch) not in said]


def everywhere(sheet: RoundSheet) -> Everywhere:
    """Find what is the same at nearly every colony of a round; of few colonies nothing."""
    needed = max(FEWEST, SHARE * len(sheet.colonies))
    jobs = Counter(job for colony in sheet.colonies for job in dict.fromkeys(colony.jobs))
    branches = _counted(sheet.colonies)
    return Everywhere(
        tuple(job for job, count in jobs.items() if count >= needed),
        (
            *sheet.at_any_colony,
            *(branch for branch, count in branches.values() if count >= needed),
        ),
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
