"""The decisions about one colony, each made once: when it is its turn, or when another needs it."""

from collections.abc import Callable, Mapping
from typing import Any, TypeVar

from combwright.advice.situation import Situation

T = TypeVar("T")


class Deciding:
    """What is decided about a colony so far.

    A decision asks with :meth:`of` for what it must know of another, so that none goes against one
    that binds it, and no order has to be kept but that of the sheet.
    """

    def __init__(self, situation: Situation, known: Mapping[Any, Any] | None = None) -> None:
        self.situation = situation
        self._known: dict[Any, Any] = dict(known or {})

    def of(self, decide: Callable[["Deciding"], T]) -> T:
        """Give what another decision says, made now if it has not been made."""
        if decide not in self._known:
            self._known[decide] = decide(self)
        decided: T = self._known[decide]
        return decided
