"""The colony's step as plain Python, so that coverage can see into it: ``-p tests.uncompiled``.

Tests marked ``compiled`` are left out.
"""

from collections.abc import Callable
from functools import wraps

import numba
import numpy as np
import pytest


def by_name(value: object) -> object:
    """Let a table's rows be asked by name, as compiled code may ask them."""
    if isinstance(value, np.ndarray) and value.dtype.names is not None:
        return value.view(np.recarray)
    if type(value) is np.void:
        return np.asarray(value).view(np.recarray)[()]
    return value


def plain(**_: object) -> Callable[[Callable[..., object]], Callable[..., object]]:
    """Stand where the compiler's decorator stands, and compile nothing."""

    def kept(function: Callable[..., object]) -> Callable[..., object]:
        @wraps(function)
        def called(*values: object, **named: object) -> object:
            told = {name: by_name(value) for name, value in named.items()}
            return function(*map(by_name, values), **told)

        return called

    return kept


def pytest_configure() -> None:
    """Compile nothing from here on; only looking for examples imports it without."""
    numba.njit = plain  # type: ignore[assignment]
    np.seterr(all="ignore")  # compiled code divides by nothing without a word


def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """Leave out what would take too long."""
    slow = [item for item in items if item.get_closest_marker("compiled")]
    config.hook.pytest_deselected(items=slow)
    items[:] = [item for item in items if item not in slow]
