"""The one place that knows the compiler.

Compiled code is kept in the user's cache folder, or where NUMBA_CACHE_DIR says, under the
fingerprint of all the source and data it is made from: a compiler that looks at one file at a time
would not notice that a process in another file, or a number that it has taken in, has changed.
"""

from collections.abc import Callable
from pathlib import Path
from typing import Any, Literal, TypeVar, cast

import numba
from platformdirs import user_cache_path

from combwright.terms.fingerprint import fingerprint

Function = TypeVar("Function", bound=Callable[..., Any])


_SOURCE = fingerprint("science", "weather", "simulation")
_KEPT_IN = Path(numba.config.CACHE_DIR or user_cache_path("combwright"))  # type: ignore[attr-defined]
numba.config.CACHE_DIR = str(_KEPT_IN / f"compiled-{_SOURCE}")  # type: ignore[attr-defined]


def compiled(function: Function) -> Function:
    """Compile a function of one colony's record; it may call other compiled functions."""
    return _compiled(function, inline="never")


def inlined(function: Function) -> Function:
    """Compile a function that each day goes through, into those that call it: a tenth less time."""
    return _compiled(function, inline="always")


def _compiled(function: Function, inline: Literal["never", "always"]) -> Function:
    def kernel(*, kept: bool) -> Any:
        return numba.njit(cache=kept, nogil=True, error_model="numpy", inline=inline)(function)

    try:
        return cast("Function", kernel(kept=True))
    except RuntimeError:  # there is nowhere to keep it, so each run compiles it anew
        return cast("Function", kernel(kept=False))
