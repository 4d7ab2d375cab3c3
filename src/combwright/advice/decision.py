"""What every decision gives: jobs, the reason in words, the figures it quotes, the runner-up."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from combwright.terms.set_up import SetUp

Topic = Literal[
    "food",
    "room and warmth",
    "swarm",
    "queen",
    "mites",
    "nucs",
    "honey",
    "winter",
    "disease",
    "next visit",
]


@dataclass(frozen=True)
class Decision:
    """One decision for one colony; no jobs where nothing is to be done."""

    topic: Topic
    jobs: tuple[str, ...] = ()
    because: tuple[str, ...] = ()
    inputs: Mapping[str, float] = field(default_factory=dict)
    runner_up: str = ""


@dataclass(frozen=True)
class Advised:
    """The plan as things to do, for whoever carries it out: a simulated keeper, or the page."""

    set_up: SetUp
    grams: int = 0
    sugar_fraction: float = 0.0
    treatment: str | None = None
    honey_kg: float = 0.0
    supers_off: int = 0
    give_queen: bool = False
    requeen: bool = False
    divide: bool = False
    unite: bool = False
    brood_frames_to_give: int = 0
