"""Units of weather, by the names that services and files use for them."""

from collections.abc import Callable
from types import MappingProxyType

from combwright.terms.errors import SourceError

KNOT_M_S = 0.514444
MPH_M_S = 0.44704
INCH_MM = 25.4

_TO_OURS: MappingProxyType[str, Callable[[float], float]] = MappingProxyType(
    {
        "°c": lambda value: value,
        "celsius": lambda value: value,
        "c": lambda value: value,
        "°f": lambda value: (value - 32) / 1.8,
        "fahrenheit": lambda value: (value - 32) / 1.8,
        "f": lambda value: (value - 32) / 1.8,
        "mm": lambda value: value,
        "inch": lambda value: value * INCH_MM,
        "in": lambda value: value * INCH_MM,
        "m/s": lambda value: value,
        "m_s": lambda value: value,
        "km/h": lambda value: value / 3.6,
        "km_h": lambda value: value / 3.6,
        "mp/h": lambda value: value * MPH_M_S,
        "mph": lambda value: value * MPH_M_S,
        "kn": lambda value: value * KNOT_M_S,
        "h": lambda value: value,
        "s": lambda value: value / 3600,
        "w/m²": lambda value: value,
        "mj/m²": lambda value: value,
        "j/cm²": lambda value: value / 100,
        "%": lambda value: value,
    }
)


def ours(value: float | None, unit: str, where: str) -> float | None:
    """Bring a value to °C, mm, m/s, h, W/m² or MJ/m².

    Examples
    --------
    >>> ours(18.0, "km/h", "a file"), ours(None, "mm", "a file")
    (5.0, None)

    """
    turn = _TO_OURS.get(unit.casefold())
    if turn is None:
        raise SourceError(f"The unit “{unit}” is not known.", where=where)
    return None if value is None else turn(value)
