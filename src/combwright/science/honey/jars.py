"""Jars from a bucket of honey, and what the scale and the label must keep to."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.science.honey.moisture import density_kg_per_l
from combwright.terms.ranges import within


def full_jars(honey_kg: ArrayLike, jar_g: ArrayLike) -> NDArray[np.int64]:
    """Count the jars that a mass of honey fills, each at least to its net weight.

    ``honey_kg``: honey that can be run off, without what sticks to the bucket [kg].

    Examples
    --------
    >>> int(full_jars(15, 340))
    44

    """
    honey = within(honey_kg, 0.0, 1e5, "The honey", "kg")
    jar = _net(jar_g)
    return np.floor(honey * 1000.0 / jar + 1e-9).astype(np.int64)


def _net(net_g: ArrayLike) -> NDArray[np.float64]:
    remedy = "Give the net weight of one jar in grams, such as 340."
    return within(net_g, 5.0, 10000.0, "The net weight", "g", remedy=remedy)


def jar_volume_ml(net_g: ArrayLike, water_percent: ArrayLike = 18.0) -> NDArray[np.float64]:
    """Room that the net weight of honey takes at 20 °C.

    Examples
    --------
    >>> float(jar_volume_ml(454).round(1))
    320.9

    """
    return np.asarray(_net(net_g) / density_kg_per_l(water_percent), dtype=np.float64)


def tolerable_error_g(net_g: ArrayLike) -> NDArray[np.float64]:
    """Weight that a single jar may lack under the average system.

    The mean of a batch may lack nothing, few jars may lack more than this, and none twice this.

    Percentages are worked out in grams and rounded up to the next tenth of a gram.

    References
    ----------
    .. [1] Council Directive 76/211/EEC, annex I 2.4; in the United Kingdom the Weights and Measures
       (Packaged Goods) Regulations 2006; table and rounding read. Check the text in force.

    Examples
    --------
    >>> float(tolerable_error_g(340)), float(tolerable_error_g(227)), float(tolerable_error_g(454))
    (10.2, 9.0, 13.7)

    """
    net = _net(net_g)
    steps = (50.0, 100.0, 200.0, 300.0, 500.0, 1000.0)
    share = np.array([0.09, 0.0, 0.045, 0.0, 0.03, 0.0, 0.015])
    fixed = np.array([0.0, 4.5, 0.0, 9.0, 0.0, 15.0, 0.0])
    step = np.searchsorted(steps, net)
    exact = share[step] * net + fixed[step]
    return np.asarray(np.ceil(np.round(10.0 * exact, 6)) / 10.0, dtype=np.float64)


def figure_height_mm(net_g: ArrayLike) -> NDArray[np.float64]:
    """Least height of the figures that state the net weight.

    References
    ----------
    .. [1] Trading-standards sheets (Guernsey) and a label printer's guide; read. Check the
       current text of the law.

    Examples
    --------
    >>> float(figure_height_mm(340))
    4.0

    """
    heights = np.array([2.0, 3.0, 4.0, 6.0])
    step = np.searchsorted((50.0, 200.0, 1000.0), _net(net_g))
    return np.asarray(heights[step], dtype=np.float64)
