"""Daily weather as the model takes it."""

from dataclasses import dataclass
from datetime import date, timedelta

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class DailyWeather:
    """Consecutive days of weather, possibly in several equally likely versions.

    Every array has the shape [scenario, day]. Known weather has one scenario.
    """

    first: date
    t_max_c: Floats
    t_min_c: Floats
    rain_mm: Floats
    sun_h: Floats
    wind_m_s: Floats

    @property
    def days(self) -> int:
        """How many days it covers."""
        return int(self.t_max_c.shape[1])

    @property
    def scenarios(self) -> int:
        """How many versions of the weather it holds."""
        return int(self.t_max_c.shape[0])

    @property
    def last(self) -> date:
        """The last day covered."""
        return self.first + timedelta(days=self.days - 1)
