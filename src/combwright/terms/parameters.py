"""Numbers that one could argue about, with their unit, range and source."""

from dataclasses import dataclass
from typing import Literal

Verified = Literal["read", "second-hand", "from memory", "computed", "common practice", "judgement"]


@dataclass(frozen=True, slots=True)
class Parameter:
    """A number with its unit, plausible range, source, and how far that source was checked.

    Examples
    --------
    >>> Parameter(3.0, "days", 3.0, 3.0, "FAO", "read").value
    3.0

    """

    value: float
    unit: str
    low: float
    high: float
    source: str
    verified: Verified

    def __post_init__(self) -> None:
        if not self.low <= self.value <= self.high:
            raise ValueError(
                f"{self.value} {self.unit} lies outside {self.low}..{self.high} ({self.source})"
            )
