"""The published laying season of a Central-European colony."""

import numpy as np


def season_share(  # noqa: PLR0917 (the five published constants)
    day_of_year: float,
    rise: float = 385.0,
    rise_days: float = 30.0,
    fall: float = 36.0,
    fall_day: float = 155.0,
    fall_days: float = 30.0,
) -> float:
    r"""Share of her best laying that the season lets a queen do.

    .. math::
       1 - \max\Bigl(1 - \frac{1}{1 + x_1 e^{-2t/x_2}},\;
                     \frac{1}{1 + x_3 e^{-2(t-x_4)/x_5}}\Bigr)

    It is 0 when she rests, 1 when nothing holds her back.

    ``day_of_year``: day :math:`t`, 1 on 1 January [day]. ``rise``, ``rise_days``: :math:`x_1` and
    :math:`x_2` of spring [-], [days]. ``fall``, ``fall_day``, ``fall_days``: :math:`x_3`,
    :math:`x_4` and :math:`x_5` of autumn [-], [day], [days].

    References
    ----------
    .. [1] T. Schmickl and K. Crailsheim, Ecol. Modelling 204:219-245, 2007,
       doi:10.1016/j.ecolmodel.2007.01.001 (constants read second-hand in the program of
       R. Torres; that laying is one less this share is from memory).

    Examples
    --------
    >>> round(season_share(149), 3)
    0.982

    """
    spring = 1.0 - 1.0 / (1.0 + rise * np.exp(-2.0 * day_of_year / rise_days))
    autumn = 1.0 / (1.0 + fall * np.exp(-2.0 * (day_of_year - fall_day) / fall_days))
    return float(1.0 - max(spring, autumn))
