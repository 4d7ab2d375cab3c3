"""The one place that knows the compiler.

Compiled code is kept in the user's cache folder under the fingerprint of the whole simulation
package: a compiler that looks at one file at a time would not notice that a process in another
file has changed.
"""

import zlib
from collections.abc import Callable
from importlib.resources import files
from typing import Any, TypeVar, cast

import numba
from platformdirs import user_cache_path

Function = TypeVar("Function", bound=Callable[..., Any])


def fingerprint() -> str:
    """Tell one version of the simulation's source from another."""
    digest = 0
    for name in sorted(source.name for source in files("combwright.simulation").iterdir()):
        if name.endswith(".py"):
            source = files("combwright.simulation").joinpath(name)
            digest = zlib.crc32(source.read_bytes(), digest)
    return f"{digest:08x}"


numba.config.CACHE_DIR = str(user_cache_path("combwright") / f"compiled-{fingerprint()}")  # type: ignore[attr-defined]


def compiled(function: Function) -> Function:
    """Compile a function of one colony's record; it may call other compiled functions."""
    kernel: Any = numba.njit(cache=True, nogil=True, error_model="numpy")(function)
    return cast("Function", kernel)
