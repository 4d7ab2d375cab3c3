"""From the text of a service's answer to plain data, every number finite."""

import json
import sys
from typing import Any, Final

from combwright.terms.errors import SourceError

LARGEST: Final = sys.float_info.max


def parsed(text: str, name: str) -> Any:  # noqa: ANN401  # JSON of any shape
    """Read JSON, or say where it breaks off."""
    try:
        return json.loads(text.removeprefix("\ufeff"))
    except json.JSONDecodeError as error:
        raise SourceError(
            f"This is not whole JSON: {error.msg}.",
            where=f"{name}, line {error.lineno}, column {error.colno}",
            remedy="Fetch it again.",
        ) from error
    except RecursionError as error:
        raise SourceError("This JSON is nested too deep.", where=name) from error
    except ValueError as error:
        raise SourceError("This JSON holds a number of thousands of digits.", where=name) from error


def number(value: object, where: str) -> float | None:
    """Give a finite number, ``None`` for null, or say that it is neither."""
    if value is None:
        return None
    if isinstance(value, (int, float)) and not isinstance(value, bool) and abs(value) <= LARGEST:
        return float(value)
    raise SourceError(f"{repr(value)[:40]} is no number.", where=where)


def part(data: object, key: str, name: str) -> Any:  # noqa: ANN401  # JSON of any shape
    """Give what stands under a key, or say that it is not there."""
    if isinstance(data, dict) and key in data:
        return data[key]
    raise SourceError(
        f"There is no “{key}” where the service puts it.",
        where=name,
        remedy="The service may have changed its form; use another source until this is mended.",
    )
