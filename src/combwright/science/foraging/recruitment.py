"""Recruitment to foraging: how many nest bees fly out for the first time, and what hunger adds.

The model of Khoury, Myerscough and Barron, 2011, with the part of hunger of 2013.
"""


def turning_share(
    nest_bees: float, foragers: float, recruitment: float = 0.25, inhibition: float = 0.75
) -> float:
    r"""Share of the nest bees that turn foragers in a day; negative when foragers turn back.

    .. math:: R = \alpha - \sigma \frac{F}{H + F}

    With :math:`R` per day.

    ``nest_bees``, ``foragers``: numbers :math:`H`, :math:`F`, not both 0 [bees]. ``recruitment``,
    ``inhibition``: :math:`\alpha` and :math:`\sigma` [per day].

    References
    ----------
    .. [1] D. S. Khoury, M. R. Myerscough and A. B. Barron, PLoS ONE 6:e18491, 2011,
       doi:10.1371/journal.pone.0018491 (abstract read; equations and constants read
       second-hand).

    Examples
    --------
    >>> round(turning_share(6470.0, 1988.0), 4)
    0.0737

    """
    return recruitment - inhibition * foragers / (nest_bees + foragers)


def hunger(food_g: float, half_food_g: float = 500.0) -> float:
    r"""How hungry a colony is by its stores.

    .. math:: \frac{b^2}{b^2 + f^2}

    It is 1 without stores, near 0 with plenty.

    ``food_g``: stores :math:`f` [g]. ``half_food_g``: stores :math:`b` at which hunger is half [g].

    References
    ----------
    .. [1] D. S. Khoury, A. B. Barron and M. R. Myerscough, PLoS ONE 8:e59084, 2013,
       doi:10.1371/journal.pone.0059084 (values read second-hand).

    Examples
    --------
    >>> hunger(500.0)
    0.5

    """
    return half_food_g * half_food_g / (half_food_g * half_food_g + food_g * food_g)
