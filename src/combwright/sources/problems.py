"""What is wrong in a file of weather: where it is, what it is, what to do."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class WeatherProblem:
    """One thing that kept a day, or some of it, out."""

    what: str
    remedy: str = ""
    line: int | None = None
    column: str = ""

    def __str__(self) -> str:
        line = f"line {self.line}" if self.line is not None else ""
        place = ", ".join(part for part in (line, self.column) if part)
        return f"{place}: {self.what} {self.remedy}".strip() if place else self.what
