"""Run the checks: call the formula, pick the value, compare."""

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import Enum
from importlib import import_module
from typing import Any

from combwright.evidence.check_files import Check

Value = bool | int | float | str
ROUNDING = 1e-12  # two ways to the same number may differ in their last binary digits


@dataclass(frozen=True, slots=True)
class Finding:
    """What one check gave."""

    check: Check
    got: Value | None
    error: str
    passes: bool

    @property
    def unexplained(self) -> bool:
        """Whether it fails and nobody has said why."""
        return not self.passes and not self.check.fails_because

    def as_json(self) -> dict[str, Any]:
        """Give the finding with its check as plain data."""
        return {
            **self.check.model_dump(mode="json"),
            "got": self.got,
            "error": self.error,
            "passes": self.passes,
        }


def resolve(path: str) -> Any:  # noqa: ANN401  # whatever the path names
    """Give the function that a dotted path below combwright names.

    Examples
    --------
    >>> resolve("evidence.running.resolve") is resolve
    True

    """
    module, _, name = path.rpartition(".")
    return getattr(import_module(f"combwright.{module}"), name)


def pick(result: object, path: str) -> Any:  # noqa: ANN401  # whatever the path leads to
    """Follow a dotted path of keys, positions and attributes into a result.

    Examples
    --------
    >>> pick({"low": [1.0, 2.0]}, "low.1")
    2.0

    """
    found: Any = result
    for part in path.split(".") if path else []:
        if isinstance(found, Mapping):
            found = found[part]
        elif part.lstrip("-").isdigit():
            found = found[int(part)]
        else:
            found = getattr(found, part)
    return found


def plain(value: object) -> Value:
    """Give a number, yes/no or word without its array, enumeration or other wrapping."""
    if isinstance(value, Enum):
        value = value.value
    if hasattr(value, "item") and getattr(value, "size", 1) == 1:
        value = value.item()
    if isinstance(value, (bool, int, float, str)):
        return value
    raise TypeError(f"gives {type(value).__name__}, not a single value: pick one")


def agrees(check: Check, got: Value) -> bool:
    """Whether a value is the expected one, within the tolerance if it is a number."""
    if not check.is_number:
        return type(got) is type(check.expected) and got == check.expected
    if isinstance(got, (bool, str)) or not math.isfinite(got):
        return False
    expected = float(check.expected)
    return abs(got - expected) <= check.tolerance + ROUNDING * abs(expected)


def run(check: Check) -> Finding:
    """Run one check; a formula that raises is a check that fails, with the error's text."""
    try:
        got = plain(pick(resolve(check.function)(**check.arguments), check.pick))
    except Exception as error:  # noqa: BLE001  # one broken formula must not hide the other checks
        return Finding(check, None, f"{type(error).__name__}: {error}", passes=False)
    return Finding(check, got, "", passes=agrees(check, got))


def run_all(checks: Iterable[Check]) -> list[Finding]:
    """Run many checks."""
    return [run(check) for check in checks]
