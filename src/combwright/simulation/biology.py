"""Every number of the colony model, by name; units, ranges and sources are in the data files.

Those of mites are the science's own, so that a calculator and the model cannot differ.

The kernel takes them as one argument, so that a study can vary them without touching the code.
"""

from functools import lru_cache
from operator import is_
from typing import TYPE_CHECKING, Final, NamedTuple, Self

import numpy as np
from numpy.typing import NDArray

from combwright.science.mites.natural_fall import MITE
from combwright.terms.data_files import parameters
from combwright.terms.parameters import Parameter

PARAMETERS: Final[dict[str, Parameter]] = {**parameters("simulation/biology"), **MITE}

if TYPE_CHECKING:

    class Biology(tuple[float, ...]):  # noqa: SLOT001 (for the type checker alone)
        """The values that a run uses, named as in ``data/biology.toml``."""

        _fields: tuple[str, ...]

        def __new__(cls, **values: float) -> Self:
            """Take a value for every name."""

        def __getattr__(self, name: str) -> float:
            """Give the value of a name."""

        def _replace(self, **values: float) -> Self:
            """Give the same with other values for some names."""

else:
    Biology = NamedTuple("Biology", [(name, float) for name in PARAMETERS])

BIOLOGY: Final = Biology(**{name: parameter.value for name, parameter in PARAMETERS.items()})
RECORD: Final = np.dtype([(name, np.float64) for name in Biology._fields])


class SameWorlds:
    """Worlds told apart by which they are: to hash their numbers takes longer than a day's step."""

    def __init__(self, worlds: tuple[Biology, ...]) -> None:
        self.worlds = worlds

    def __hash__(self) -> int:
        return id(self.worlds[0])

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, SameWorlds) or len(self.worlds) != len(other.worlds):
            return False
        return all(map(is_, self.worlds, other.worlds))


def as_table(*worlds: Biology) -> NDArray[np.void]:
    """Give the values in the form in which the compiled step reads them: a row for each world."""
    return _table(SameWorlds(worlds))


@lru_cache(maxsize=8)
def _table(same: SameWorlds) -> NDArray[np.void]:
    return np.array([tuple(world) for world in same.worlds], dtype=RECORD)
