from collections.abc import Callable
from typing import Any

import numba
import pytest

from combwright.simulation.step.compiled import compiled


def test_where_nothing_can_be_kept_it_is_compiled_all_the_same(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(numba.config, "CACHE_DIR", "/proc/nowhere")
    room: dict[str, Callable[[Any], Any]] = {}
    exec(compile("def twice(x): return 2 * x", "/proc/nothing.py", "exec"), room)  # noqa: S102
    assert compiled(room["twice"])(21) == 42
