"""A climate from monthly means alone, when no daily record of the place could be read."""

from collections.abc import Mapping
from typing import Any

import numpy as np

from combwright.terms.data_files import parameter
from combwright.weather.climate import Climate
from combwright.weather.months import LENGTHS

BY_MORE_WET_DAYS = parameter("weather/numbers", "by_more_wet_days")


def like(model: Climate, normals: Mapping[str, Any]) -> dict[str, Any]:
    """Give the parameters of a place by its monthly means and a place that it resembles.

    Temperatures of dry and wet days are shifted alike, sunshine is scaled, more rain means both
    more wet days and more rain on each; spread, memory and the length of spells are those of the
    model. All of it is judgement; the monthly means themselves are met.

    ``model`` is a climate with daily records, for what monthly means cannot tell; ``normals`` are
    ``t_max_c``, ``t_min_c`` [°C], ``rain_mm`` [mm], ``sun_month_h`` [h], each by month, and
    ``wind_factor``, the wind against the model's. The rest is taken over.
    """
    means = {key: np.asarray(normals[key]) for key in ("t_max_c", "t_min_c")}
    rain = np.asarray(normals["rain_mm"]) / LENGTHS
    model_rain = model.wet_share * model.amount_shape * model.amount_scale_mm
    ratio = rain / model_rain
    wet = np.minimum(model.wet_share * ratio**BY_MORE_WET_DAYS.value, 0.95)
    persistence = model.wet_after_wet - model.wet_after_dry
    sunnier = np.asarray(normals["sun_month_h"]) / LENGTHS / model.mean(model.sun_h)
    after_dry = wet * (1 - persistence)
    shares = np.array([1 - wet, wet])
    made: dict[str, Any] = {
        "wet_after_dry": after_dry,
        "wet_after_wet": after_dry + persistence,
        "amount_shape": model.amount_shape,
        "amount_scale_mm": rain / (wet * model.amount_shape),
        "sun_h": model.sun_h
        * (np.asarray(normals["sun_month_h"]) / LENGTHS)
        / (shares * model.sun_h).sum(axis=0),
        "sun_sd": model.sun_sd * sunnier,
        "wind_m_s": model.wind_m_s * normals["wind_factor"],
        "memory": model.memory,
        "shock": model.shock,
        "t_max_sd": model.t_max_sd,
        "t_min_sd": model.t_min_sd,
    }
    for key, mean in means.items():
        of_model = getattr(model, key)
        made[key] = of_model + mean - (shares * of_model).sum(axis=0)
    return {**normals, **made}
