"""A class of what may be found at a colony, and what is done then."""

from dataclasses import dataclass
from typing import Literal

from combwright.advice.actions import Action
from combwright.advice.kit_acts import Feeding
from combwright.advice.words.action_words import jobs_instead
from combwright.advice.words.found_words import found_words

Quantity = Literal["frames of bees", "kg of stores"]


@dataclass(frozen=True, kw_only=True)
class IfFound:
    """A class of what may be found, and what is done then.

    ``code`` is one of ``found_words.FOUND``; ``amount`` of a ``quantity`` is the limit of what is
    seen or hefted, ``over`` what it must be more than, ``chance`` how likely the book thinks it at
    this colony.
    """

    code: str
    actions: tuple[Action, ...]
    because: str
    quantity: Quantity | None = None
    amount: float | None = None
    over: float | None = None
    chance: float | None = None
    portion: Feeding | None = None

    @property
    def found(self) -> str:
        """What is found, in words."""
        return found_words(self.code, self.quantity, self.amount, self.chance, self.over)

    @property
    def do(self) -> tuple[str, ...]:
        """What is done, in words."""
        return jobs_instead(self.actions)
