"""How well a cluster of bees holds its heat."""


def mantle_w_per_k(bees_g: float, w_per_k: float = 0.007, exponent: float = 0.521) -> float:
    r"""Heat that passes through the mantle of a tight cluster, per kelvin.

    .. math:: 22.69\, m^{-0.479}\, m \cdot 21.1 / 3600 / 19 = 0.0070\, m^{0.521}

    with m in grams and oxygen in mL for each gram and hour, at 21.1 J/mL, and a core that is 19 K
    warmer than the night at 2 °C.

    ``w_per_k``, ``exponent``: conductance of a gram of bees, and how it grows with their mass
    [W/K], [-].

    Notes
    -----
    Measured from 5 g to 1.2 kg; above that it is extrapolated.

    References
    ----------
    .. [1] E. E. Southwick, J. Comp. Physiol. B 156:143 (1985), doi 10.1007/BF00692937.
       Equation read, units from memory and checked for size; the core of 21 °C is judgement.

    Examples
    --------
    >>> round(19.0 * mantle_w_per_k(1200.0), 1)
    5.3

    """
    return float(w_per_k * bees_g**exponent)
