"""The built-in climates, by name."""

import json
from functools import cache
from importlib.resources import files
from typing import Any

import numpy as np

from combwright.terms.errors import NotFoundError
from combwright.weather.climate import Climate
from combwright.weather.normals import like

WORDS = ("name", "latitude_deg", "longitude_deg", "basis", "attribution")
ARRAYS = (
    *("wet_after_dry", "wet_after_wet", "amount_shape", "amount_scale_mm", "t_max_c", "t_max_sd"),
    *("t_min_c", "t_min_sd", "sun_h", "sun_sd", "wind_m_s", "memory", "shock"),
)


@cache
def _read() -> dict[str, dict[str, Any]]:
    text = files("combwright.weather").joinpath("data/climates.json").read_text("utf-8")
    return {each["name"]: each for each in json.loads(text)}


def climates() -> tuple[str, ...]:
    """Give the names of the built-in climates.

    Examples
    --------
    >>> climates()[:2]
    ('Dublin Airport', 'Cork Airport')

    """
    return tuple(_read())


def climate(name: str) -> Climate:
    """Give a built-in climate by its name or by a part of it that only one name has.

    Examples
    --------
    >>> climate("dublin").latitude_deg
    53.43
    >>> climate("Paris")
    Traceback (most recent call last):
    ...
    combwright.terms.errors.NotFoundError: There is no climate “Paris”. There are: Dublin Airport, \
Cork Airport, Shannon Airport, Valentia Observatory, Armagh, Oxford, Sheffield.

    """
    asked = name.strip().casefold()
    fitting = [known for known in climates() if asked == known.casefold()] or [
        known for known in climates() if asked and asked in known.casefold()
    ]
    if len(fitting) == 1:
        return _climate(fitting[0])
    what = f"There is no climate “{name}”." if not fitting else f"“{name}” could be several."
    raise NotFoundError(what, remedy=f"There are: {', '.join(fitting or climates())}.")


@cache
def _climate(name: str) -> Climate:
    found = _read()[name]
    if "like" in found:
        found = like(_climate(found["like"]), found)
    plain: dict[str, Any] = {key: found[key] for key in WORDS}
    return Climate(**plain | {key: np.asarray(found[key], dtype=np.float64) for key in ARRAYS})
