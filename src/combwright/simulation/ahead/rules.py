"""How the good ordinary keeper keeps: the numbers, in the form in which the roll reads them."""

from typing import Final

import numpy as np

from combwright.terms.data_files import parameters

PARAMETERS: Final = parameters("simulation/ordinary_keeper")
RULES: Final = np.array(
    [tuple(number.value for number in PARAMETERS.values())],
    dtype=[(name, np.float64) for name in PARAMETERS],
)
