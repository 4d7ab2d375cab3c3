"""The checks as data: ``checks/TOPIC.toml``, read and gated."""

from collections.abc import Iterable, Iterator
from functools import cached_property
from importlib.resources import files
from typing import Any, Literal, Self

from pydantic import BaseModel, ConfigDict, Field, ValidationError, model_validator

from combwright.terms.data_files import tables_in
from combwright.terms.errors import CombwrightError, NotFoundError
from combwright.terms.parameters import Verified

TOPICS = (
    *("syrup", "honey", "heat", "sun", "flight", "kit", "brood", "queens"),
    *("foraging", "mites", "weather", "simulation", "trials", "belief"),
)


# How a published value stands to what was built: nothing of ours was set by it; our numbers were
# fitted to it; the weather it is held against was made from the same tables; it is a number of our
# own data files, used as it is; it is a sum that another program or a pencil gives as well.
Stands = Literal["independent", "tuned to", "in sample", "constant", "arithmetic"]
# In which year of a colony's life a simulated check looks: a trial that begins as the publication
# says, the first year after a spring put there, or years that begin with the model's own winter.
Year = Literal["", "trial", "first", "later"]
WIDE = 0.1  # a tolerance above this share of the value must say where it comes from
SIMULATED = ("evidence.simulated_", "evidence.trials.")


class CheckError(CombwrightError):
    """A check is not written as the runner needs it."""


class Check(BaseModel):
    """One published value: what to call, what should come out, and who says so."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    topic: str
    id: str = Field(pattern=r"^[a-z0-9]+(-[a-z0-9]+)+$")
    says: str = Field(min_length=1)
    function: str = Field(pattern=r"^[A-Za-z_]\w*(\.[A-Za-z_]\w*)+$")
    arguments: dict[str, Any] = Field(default_factory=dict)
    pick: str = ""
    expected: bool | int | float | str
    tolerance: float = Field(default=0.0, ge=0, allow_inf_nan=False)
    unit: str
    source: str = Field(min_length=1)
    verified: Verified
    stands: Stands
    year: Year = ""
    spread: Literal["", "source", "judgement"] = ""
    conflict: str = ""
    note: str = ""
    fails_because: str = ""

    @cached_property
    def is_number(self) -> bool:
        """Whether the expected value is compared within a tolerance."""
        return isinstance(self.expected, (int, float)) and not isinstance(self.expected, bool)

    @property
    def simulated(self) -> bool:
        """Whether colonies are simulated for it."""
        return self.function.startswith(SIMULATED)

    @property
    def carries(self) -> bool:
        """Whether it says something new: the value was read, and nothing of ours was set by it."""
        return self.stands == "independent" and self.verified in {"read", "second-hand"}

    @model_validator(mode="after")
    def _says_how_it_was_taken(self) -> Self:
        if self.simulated != bool(self.year):
            raise ValueError("A check on simulated colonies, and no other, says its year.")
        wide = self.is_number and self.tolerance > WIDE * abs(float(self.expected))
        if wide != bool(self.spread):
            raise ValueError("A tolerance above a tenth, and no other, says where it comes from.")
        return self


def _one(entry: object, topic: str, place: str) -> Check:
    if not isinstance(entry, dict):
        raise CheckError("A check must be a table.", where=place, remedy="Begin it with [[check]].")
    where = f"{place} ({entry['id']})" if "id" in entry else place
    try:
        check = Check.model_validate({**entry, "topic": topic})
    except ValidationError as error:
        faults = "; ".join(
            ": ".join([*map(str, fault["loc"][:1]), fault["msg"]]) for fault in error.errors()
        )
        raise CheckError(
            f"{faults}.", where=where, remedy="See any other check for the fields."
        ) from error
    if not check.id.startswith(f"{topic}-"):
        raise CheckError(
            "The id must start with the topic.", where=where, remedy=f"Write {topic}-..."
        )
    if check.tolerance and not check.is_number:
        raise CheckError(
            "Only a number can have a tolerance.", where=where, remedy="Leave the tolerance out."
        )
    return check


def parse_checks(text: str, topic: str, file: str) -> list[Check]:
    """Read the checks of one topic from the text of its file.

    Examples
    --------
    >>> parse_checks("[[check]]", "syrup", "syrup.toml")
    Traceback (most recent call last):
    ...
    combwright.evidence.check_files.CheckError: syrup.toml, check 1: id: Field required; ...

    """
    data = tables_in(text, file, "Mend that line.")
    if set(data) - {"check"} or not isinstance(data.get("check", []), list):
        raise CheckError(
            "The file may hold [[check]] tables only.", where=file, remedy="Take the rest out."
        )
    return [
        _one(entry, topic, f"{file}, check {number}")
        for number, entry in enumerate(data.get("check", []), 1)
    ]


def _texts() -> Iterator[tuple[str, str]]:
    """Give topic and text of each file, the topics in their usual order, newcomers last."""
    found = {
        item.name.removesuffix(".toml"): item
        for item in files("combwright.evidence").joinpath("checks").iterdir()
        if item.name.endswith(".toml")
    }
    known = [topic for topic in TOPICS if topic in found]
    for topic in [*known, *sorted(set(found) - set(known))]:
        yield topic, found[topic].read_text(encoding="utf-8")


def refuse_twins(checks: Iterable[Check]) -> None:
    """Raise if two checks carry the same id."""
    seen: set[str] = set()
    for check in checks:
        if check.id in seen:
            raise CheckError(
                f"Two checks are called {check.id}.",
                where=f"{check.topic}.toml",
                remedy="Rename one of them.",
            )
        seen.add(check.id)


def read_checks(topic: str = "") -> list[Check]:
    """Give all checks, or those of one topic."""
    texts = dict(_texts())
    if topic and topic not in texts:
        raise NotFoundError(
            f"There is no evidence on “{topic}”.", remedy=f"The topics are: {', '.join(texts)}."
        )
    checks = [
        check
        for name, text in texts.items()
        if topic in ("", name)
        for check in parse_checks(text, name, f"{name}.toml")
    ]
    refuse_twins(checks)
    return checks
