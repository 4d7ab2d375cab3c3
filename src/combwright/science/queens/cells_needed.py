"""How many cells it takes for so many laying queens, where those of a batch share their luck."""

import numpy as np
from scipy.special import bdtrc, betaln  # scipy.stats has both, and takes half a second to load

from combwright.terms.errors import OutOfRangeError
from combwright.terms.percent import in_percent

MOST_CELLS = 2000


def chance_of_at_least(wanted: int, cells: int, success: float, shock: float = 0.0) -> float:
    """Chance that at least so many of the cells become laying queens.

    Beta-binomial: each batch has a success of its own around ``success``, and any two cells of it
    are correlated by ``shock``; with 0 it is the binomial distribution.

    Examples
    --------
    >>> round(chance_of_at_least(10, 18, 0.70), 5), round(chance_of_at_least(10, 17, 0.70), 5)
    (0.94041, 0.89536)

    """
    if wanted <= 0:
        return 1.0
    if wanted > cells:
        return 0.0
    if shock <= 0.0:
        return float(bdtrc(wanted - 1, cells, success))
    both = 1.0 / shock - 1.0
    good, bad = success * both, (1.0 - success) * both
    laying = np.arange(wanted, cells + 1)
    ways = -betaln(laying + 1, cells - laying + 1) - np.log(cells + 1)
    each = ways + betaln(laying + good, cells - laying + bad) - betaln(good, bad)
    return float(min(1.0, np.exp(each).sum()))


def cells_needed(wanted: int, success: float, chance: float = 0.9, shock: float = 0.0) -> int:
    """Fewest cells from which so many queens lay with at least that chance.

    Examples
    --------
    >>> cells_needed(20, 0.44), cells_needed(20, 0.70, shock=0.10)
    (56, 41)

    """
    for cells in range(max(0, wanted), MOST_CELLS):
        if chance_of_at_least(wanted, cells, success, shock) >= chance:
            return cells
    raise OutOfRangeError(
        f"{wanted} laying queens need more than {MOST_CELLS} cells at "
        f"{in_percent(success)} success.",
        remedy="Ask for fewer, or for a lower chance.",
    )


def queens_sure(cells: int, success: float, chance: float = 0.9, shock: float = 0.0) -> int:
    """Most queens that so many cells give with at least that chance.

    Examples
    --------
    >>> queens_sure(40, 0.65), queens_sure(40, 0.65, shock=0.10)
    (22, 17)

    """
    return max(
        wanted
        for wanted in range(cells + 1)
        if chance_of_at_least(wanted, cells, success, shock) >= chance
    )
