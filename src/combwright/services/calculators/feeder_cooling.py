"""How fast warm syrup cools in a feeder, bare and under a cushion."""

from collections.abc import Iterable
from dataclasses import dataclass
from math import pi

from combwright.kit.catalogue import catalogue
from combwright.kit.items import Layer
from combwright.science.heat.cooling import (
    LUMPED_BELOW,
    biot_number,
    feeder_loss_w_per_k,
    syrup_heat_capacity_kj_per_kg_k,
    syrup_temperature_c,
)
from combwright.science.heat.surfaces import layer_resistance
from combwright.science.syrup.strength import density_kg_per_l
from combwright.terms.errors import OutOfRangeError
from combwright.terms.parameters import Parameter

HOURS = (1, 3, 6, 12, 24)
SURFACE = Parameter(
    10.0, "W/(m² K)", 8.0, 12.0, "convection and radiation in still air, ISO 6946", "from memory"
)
UNDER_THE_BOARD_C = Parameter(
    20.0, "°C", 10.0, 30.0, "air under the crown board, away from the brood", "judgement"
)


@dataclass(frozen=True, slots=True)
class FeederCooling:
    """Temperatures of syrup in a feeder after some hours. [°C]."""

    feeder: str
    litres: float
    poured_c: float
    outside_c: float
    hours: tuple[int, ...]
    bare_c: tuple[float, ...]
    under_cushion_c: tuple[float, ...]
    how_sure: tuple[str, ...]


def feeder_cooling(
    sugar_fraction: float,
    *,
    poured_c: float,
    outside_c: float,
    feeder: str = "rapid feeder",
    litres: float | None = None,
) -> FeederCooling:
    """Tell how warm syrup still is after some hours in a feeder over the crown board.

    Once bare, and once under the catalogue's cushion.

    Once bare, once under the catalogue's cushion; with as many litres as it holds, unless told.

    Examples
    --------
    >>> told = feeder_cooling(0.6, poured_c=40, outside_c=5)
    >>> all(warm > bare for warm, bare in zip(told.under_cushion_c, told.bare_c))
    True

    """
    item = catalogue().feeder(feeder)
    if item.stands == "in place of a frame":
        raise OutOfRangeError(
            f"The {item.key} hangs beside the nest, which keeps it warm: no cushion covers it.",
            remedy="Name a feeder that stands over the frames.",
        )
    volume = min(item.capacity_l, litres or item.capacity_l)
    cushion = _resistance(catalogue().cover("cushion").layers)
    bare, covered = (
        _course(sugar_fraction, volume, poured_c, outside_c, laid_over)
        for laid_over in (0.0, cushion)
    )
    how_sure = tuple(_how_sure(volume))
    return FeederCooling(item.name, volume, poured_c, outside_c, HOURS, bare, covered, how_sure)


def _course(
    sugar_fraction: float, litres: float, poured_c: float, outside_c: float, cushion: float
) -> tuple[float, ...]:
    """Cool the syrup as a round tub twice as wide as it is deep: lid and side lose, floor gains."""
    floor_m2 = pi * _depth_m(litres) ** 2
    board = _resistance(catalogue().hive("national timber").crown_board)
    temperatures = syrup_temperature_c(
        HOURS,
        start_c=poured_c,
        outside_c=outside_c,
        syrup_kg=litres * density_kg_per_l(sugar_fraction, poured_c),
        heat_capacity_kj_per_kg_k=syrup_heat_capacity_kj_per_kg_k(sugar_fraction, poured_c),
        loss_w_per_k=feeder_loss_w_per_k(3.0 * floor_m2, SURFACE.value, cushion),
        hive_c=UNDER_THE_BOARD_C.value,
        to_hive_w_per_k=feeder_loss_w_per_k(floor_m2, SURFACE.value, board),
    )
    return tuple(round(float(each), 1) for each in temperatures)


def _depth_m(litres: float) -> float:
    """Depth, and half the width, of a tub of that shape; the shape is judgement."""
    return float((litres / 1000.0 / pi) ** (1 / 3))


def _resistance(layers: Iterable[Layer]) -> float:
    solid = ((each.mm, each.conductivity_w_per_m_k) for each in layers)
    return sum(float(layer_resistance(mm, lets)) for mm, lets in solid if lets is not None)


def _how_sure(litres: float) -> Iterable[str]:
    yield (
        f"A round tub over the crown board, twice as wide as deep, in still air, "
        f"{UNDER_THE_BOARD_C.value:g} °C under the board (judgement); wind and an open roof cool "
        "it sooner."
    )
    if float(biot_number(SURFACE.value, 1000.0 * _depth_m(litres) / 4.0)) > LUMPED_BELOW:
        yield "Without a cushion the middle stays warmer than this and the rim is colder."
