"""Comb: cells by their width, bees that cover it, honey that fills it, and what is lifted."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from combwright.terms.parameters import Parameter
from combwright.terms.ranges import within

WORKER_CELL_MM = Parameter(
    5.4, "mm", 5.1, 5.6, "wall to wall; natural 5.2 (Seeley & Morse 1976), foundation 5.4", "read"
)
BEES_PER_DM2 = Parameter(
    138.0,
    "bees/dm²",
    125.0,
    170.0,
    "one side, fully covered: Burgett & Burikam 1985, J. Econ. Entomol. 78:1154 (2430 on a "
    "Langstroth deep); Liebefeld 125 (Imdorf 1987); a training photo set 170",
    "from memory",
)
STORES_KG_PER_DM2 = Parameter(
    0.33,
    "kg/dm²",
    0.30,
    0.36,
    "capped comb of 25 mm, both sides, for each dm² of one side",
    "computed",
)
# HSE guidance L23 (Manual handling), lifting at knuckle height, close to the body: men, women.
LIFT_CLOSE_KG = (25.0, 16.0)
LIFT_AT_ARMS_LENGTH_KG = (15.0, 10.0)


def cells_per_dm2(cell_width_mm: ArrayLike) -> NDArray[np.float64]:
    r"""Cells on one side of a square decimetre of comb.

    .. math:: n = \frac{2}{\sqrt 3\, d^2}

    Parameters
    ----------
    cell_width_mm
        Cell from wall to wall. [mm]

    Returns
    -------
    NDArray[np.float64]
        Cells on one side. [cells/dm²]

    References
    ----------
    .. [1] Geometry of hexagons; the same as Betts's rule (1938, read) of 2.309 n² on both sides,
       n cells to 10 cm.

    Examples
    --------
    >>> float(cells_per_dm2(5.4).round())
    396.0

    """
    remedy = "Worker cells are about 5.2 to 5.4 mm, drone cells 6.2 to 6.9 mm."
    width = within(cell_width_mm, 4.0, 8.0, "The cell width", "mm", remedy=remedy) / 100
    return np.asarray(2 / (np.sqrt(3) * width**2))


def cells_both_sides(
    comb_area_dm2: ArrayLike, cell_width_mm: ArrayLike = WORKER_CELL_MM.value
) -> NDArray[np.float64]:
    """Cells on both sides of a comb, to its very edges.

    Parameters
    ----------
    comb_area_dm2
        Area of one side. [dm²]
    cell_width_mm
        Cell from wall to wall. [mm]

    Returns
    -------
    NDArray[np.float64]
        Cells, an upper bound: passages, wires and edges take some.

    References
    ----------
    .. [1] Geometry; counts of National deep frames in print run from 4534 to 5000.

    Examples
    --------
    >>> float(cells_both_sides(6.55).round(-1))
    5190.0

    """
    return 2 * _area(comb_area_dm2) * cells_per_dm2(cell_width_mm)


def bees_on_comb(
    comb_area_dm2: ArrayLike, bees_per_dm2: ArrayLike = BEES_PER_DM2.value
) -> NDArray[np.float64]:
    """Bees on a comb that is fully covered on both sides.

    Parameters
    ----------
    comb_area_dm2
        Area of one side. [dm²]
    bees_per_dm2
        Bees on one side. [bees/dm²]

    Returns
    -------
    NDArray[np.float64]
        Bees on both sides.

    References
    ----------
    .. [1] M. Burgett and I. Burikam, J. Econ. Entomol. 78:1154 (1985): 2430 bees on a Langstroth
       deep frame. Abstract read, number from memory.

    Examples
    --------
    >>> float(bees_on_comb(8.8).round(-1))
    2430.0

    """
    density = within(bees_per_dm2, 20, 300, "The density of bees", "bees/dm²")
    return 2 * _area(comb_area_dm2) * density


def stores_on_comb_kg(
    comb_area_dm2: ArrayLike, comb_thickness_mm: ArrayLike = 25.0
) -> NDArray[np.float64]:
    """Honey in a comb that is full on both sides; a thicker comb holds more in proportion.

    Parameters
    ----------
    comb_area_dm2
        Area of one side. [dm²]
    comb_thickness_mm
        Capped comb from face to face. [mm]

    Returns
    -------
    NDArray[np.float64]
        Honey. [kg]

    References
    ----------
    .. [1] 0.33 kg/dm²: 25 mm of comb, nine tenths of it honey of 1.42 kg/L. Computed.

    Examples
    --------
    >>> float(stores_on_comb_kg(6.55).round(1))
    2.2

    """
    remedy = "Brood comb is about 25 mm thick, wide-spaced honey comb 30 to 35 mm."
    thickness = within(comb_thickness_mm, 10, 60, "The comb's thickness", "mm", remedy=remedy)
    return STORES_KG_PER_DM2.value * _area(comb_area_dm2) * thickness / 25


def box_full_kg(
    frames: ArrayLike, honey_each_kg: ArrayLike, drawn_frame_kg: ArrayLike, box_kg: ArrayLike
) -> NDArray[np.float64]:
    """Weigh a full box as it is lifted.

    Parameters
    ----------
    frames
        Frames in it.
    honey_each_kg, drawn_frame_kg
        Honey in each, and each without honey. [kg]
    box_kg
        The box alone. [kg]

    Returns
    -------
    NDArray[np.float64]
        Gross mass. [kg]

    References
    ----------
    .. [1] A sum; a full National super of 11 frames weighs 14 to 17 kg gross (computed).

    Examples
    --------
    >>> round(float(box_full_kg(11, 1.0, 0.25, 2.4)), 2)
    16.15

    """
    count = within(frames, 0, 40, "The number of frames")
    honey = within(honey_each_kg, 0, 10, "The honey in a frame", "kg")
    drawn = within(drawn_frame_kg, 0, 5, "A drawn frame's mass", "kg")
    return within(box_kg, 0, 40, "The box's mass", "kg") + count * (honey + drawn)


def lifting_caution(kg: float) -> str:
    """Give the usual caution for lifting a mass; nothing where it is light.

    The figures are guidance for lifting close to the body at knuckle height, not a limit that
    makes a lift safe; boxes are lifted at arm's length, on uneven ground, and twisted.

    Parameters
    ----------
    kg
        The mass. [kg]

    Returns
    -------
    str
        The caution.

    References
    ----------
    .. [1] Health and Safety Executive, L23 Manual handling, lifting filter: 25 kg for men and
       16 kg for women close to the body, 15 and 10 kg at arm's length. From memory.

    Examples
    --------
    >>> lifting_caution(5)
    ''

    """
    mass = float(within(kg, 0, 500, "The mass", "kg"))
    if mass <= LIFT_AT_ARMS_LENGTH_KG[1]:
        return ""
    if mass <= LIFT_CLOSE_KG[1]:
        return f"{mass:.0f} kg: lift it close to the body, back straight, and do not twist."
    if mass <= LIFT_CLOSE_KG[0]:
        return f"{mass:.0f} kg: heavy for one person; lift close to the body or by two."
    return f"{mass:.0f} kg: more than one person should lift; use two people or take frames out."


def _area(comb_area_dm2: ArrayLike) -> NDArray[np.float64]:
    remedy = "One side of a National deep comb is 6.55 dm² (655 cm²)."
    return within(comb_area_dm2, 0, 40, "The comb area of one side", "dm²", remedy=remedy)
