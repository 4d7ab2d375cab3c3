"""What colonies of the model must look like through the years: targets as data, and verdicts."""

import tomllib
from functools import cache
from importlib.resources import files

from pydantic import BaseModel, ConfigDict, Field, model_validator

from combwright.terms.parameters import Verified


class Target(BaseModel):
    """A band in which a quantity of a simulated life must lie, and who says so."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    says: str = Field(min_length=1)
    unit: str
    low: float
    high: float
    source: str = Field(min_length=1)
    verified: Verified
    years: tuple[int, ...] = (1, 2, 3, 4)
    held_out: bool = False

    @model_validator(mode="after")
    def _in_order(self) -> "Target":
        if not self.low < self.high:
            raise ValueError("The least of a band lies below the most.")
        return self

    def off(self, value: float) -> float:
        """How far a value lies from the middle, the edges of the band being 1."""
        middle, half = (self.low + self.high) / 2.0, (self.high - self.low) / 2.0
        return abs(value - middle) / half

    def holds(self, value: float) -> bool:
        """Tell whether a value lies in the band."""
        return self.low <= value <= self.high


@cache
def targets() -> dict[str, Target]:
    """Give the targets by quantity, in the order of the file."""
    text = files("combwright.evidence").joinpath("targets.toml").read_text("utf-8")
    return {name: Target.model_validate(entry) for name, entry in tomllib.loads(text).items()}
