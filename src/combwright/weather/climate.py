"""The climate of a place: what days of weather are sampled from."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]


@dataclass(frozen=True, eq=False)
class Climate:
    """Parameters of the weather generator for one place.

    By month: chances, rain of a wet day (gamma) and wind have the shape [month]; temperatures and
    sunshine, with their standard deviations, [dry or wet day, month]. ``memory`` and ``shock``
    are the matrices A and B of the residuals of highest temperature, lowest temperature and sun.
    """

    name: str
    latitude_deg: float
    longitude_deg: float
    basis: str
    attribution: str
    wet_after_dry: Floats
    wet_after_wet: Floats
    amount_shape: Floats
    amount_scale_mm: Floats
    t_max_c: Floats
    t_max_sd: Floats
    t_min_c: Floats
    t_min_sd: Floats
    sun_h: Floats
    sun_sd: Floats
    wind_m_s: Floats
    memory: Floats
    shock: Floats

    @property
    def wet_share(self) -> Floats:
        """Share of wet days in the long run, [month]."""
        return self.wet_after_dry / (1 + self.wet_after_dry - self.wet_after_wet)

    def mean(self, dry_and_wet: Floats) -> Floats:
        """Weigh a quantity of dry and of wet days, [month]."""
        return (1 - self.wet_share) * dry_and_wet[0] + self.wet_share * dry_and_wet[1]
