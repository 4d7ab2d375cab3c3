"""A class of what may be found at a colony, and what is done then."""

from dataclasses import dataclass
from typing import Literal

from combwright.advice.actions import Action
from combwright.advice.kit_acts import Feeding
from combwright.advice.words.action_words import jobs_instead
from combwright.advice.words.found_words import HOWEVER_MANY, found_words

Quantity = Literal["frames of bees", "kg of stores"]


@dataclass(frozen=True, kw_only=True)
class IfFound:
    """A class of what may be found, and what is done then.

    ``code`` is one of ``found_words.FOUND``; ``amount`` of a ``quantity`` is the limit of what is
    seen or hefted, ``over`` what it must be more than, ``chance`` how likely the book thinks it at
    this colony. What ``goes_first`` stands above what else may be found with it.
    """

    code: str
    actions: tuple[Action, ...]
    because: str
    quantity: Quantity | None = None
    amount: float | None = None
    over: float | None = None
    goes_first: bool = False
    chance: float | None = None
    portion: Feeding | None = None

    @property
    def found(self) -> str:
        """What is found, in words."""
        found = found_words(self.code, self.quantity, self.amount, self.chance, self.over)
        return f"{found}, {HOWEVER_MANY}" if self.goes_first else found

    @property
    def do(self) -> tuple[str, ...]:
        """What is done, in words."""
        return jobs_instead(self.actions)
