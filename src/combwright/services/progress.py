"""How far long work has come, in words that terminal and page share."""

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Final

from combwright.advice.words.wording import many

BUSY: Final = "Waiting for the round before it"
OPENING: Final = "Opening the book"
READY: Final = "Starting the simulation"
NOTING: Final = "Noting the demo's spring"
LEARNING: Final = "Learning from neighbours"
READING: Final = "Reading the notes"
PLANNING: Final = "Planning"


@dataclass(frozen=True)
class Step:
    """What is being done, and for how many of how many colonies; of none, nothing is counted."""

    doing: str
    done: int = 0
    total: int = 0
    part: object = field(default=None, repr=False, compare=False)  # of it that is ready

    @property
    def counted(self) -> str:
        """Say how many are done.

        Examples
        --------
        >>> Step(PLANNING, 45, 300).counted, Step(READING, 0, 1).counted, Step("Waiting").counted
        ('45 of 300 colonies', '0 of 1 colony', '')

        """
        if not self.total:
            return ""
        return f"{self.done} of {many(self.total, 'colony')}"


Progress = Callable[[Step], None]


def silent(_: Step) -> None:
    """Tell nobody."""
