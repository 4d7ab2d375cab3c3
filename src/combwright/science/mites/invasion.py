"""Mites and brood: how fast mites on bees enter cells that are about to be sealed."""

import numpy as np


def invasion_rate(cells: float, bees_g: float, bees_g_per_cell: float) -> float:
    r"""Rate at which mites on bees enter cells of one kind of comb. [per day].

    .. math:: a = c\, W / G

    ``cells``: cells sealed in a day :math:`W` [cells/day]. ``bees_g``: mass of the adult bees
    :math:`G` [g]. ``bees_g_per_cell``: grams of bees that a cell clears in a day :math:`c`: 0.56 of
    a worker cell, 6.49 of a drone cell [g/cell].

    References
    ----------
    .. [1] J. N. M. Calis, I. Fries and S. C. Ryrie, Apidologie 30:111-124, 1999,
       doi:10.1051/apido:19990203 (constants from memory).
    .. [2] W. J. Boot et al., Apidologie 26:109-118, 1995, doi:10.1051/apido:19950204 (abstract
       read): 462 drone cells trap 95 % in 1 kg of bees, drone cells 11.6 times as often. Both
       constants follow from these two.

    Examples
    --------
    >>> round(invasion_rate(1500.0, 3000.0, 0.56), 2)
    0.28

    """
    return bees_g_per_cell * cells / bees_g


def trapped_share(rate: float) -> float:
    r"""Share of the mites on bees that a batch of brood takes in when it is sealed.

    .. math:: 1 - e^{-a}

    ``rate``: rates of invasion into all cells of the batch :math:`a` [-].

    References
    ----------
    .. [1] Boot et al. 1995, see ``invasion_rate``.

    Examples
    --------
    >>> round(trapped_share(invasion_rate(462.0, 1000.0, 6.49)), 2)
    0.95

    """
    return float(1.0 - np.exp(-rate))
