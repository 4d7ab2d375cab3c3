"""What every decision gives: actions, the reason in words, the figures it quotes, what lost."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TypeVar

from combwright.advice.actions import Action, of_kind
from combwright.advice.kit_acts import Act
from combwright.advice.words.action_words import jobs_of

A = TypeVar("A", bound=Act)


@dataclass(frozen=True, kw_only=True)
class Decision:
    """One decision for one colony; no actions where nothing is to be done.

    Its reason stands on the sheet where it asks for something, unless ``tells`` says otherwise;
    in the data it always stands.
    """

    topic: str
    actions: tuple[Action, ...] = ()
    because: tuple[str, ...] = ()
    inputs: Mapping[str, float] = field(default_factory=dict)
    runner_up: str = ""
    tells: bool | None = None

    @property
    def jobs(self) -> tuple[str, ...]:
        """The actions in words."""
        return jobs_of(self.actions)

    @property
    def is_told(self) -> bool:
        """Whether its reason belongs on the sheet."""
        return bool(self.actions) if self.tells is None else self.tells

    def asks(self, kind: type[A]) -> tuple[A, ...]:
        """Give its actions of one kind."""
        return of_kind(self.actions, kind)
