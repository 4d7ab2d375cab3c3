"""What a frame of bees, stores, mites, a super and a young queen are worth, week by week."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from functools import lru_cache
from typing import Final

from combwright.advice.prices import Prices
from combwright.advice.season_ahead import season_ends
from combwright.advice.worth_by_week import worth_by_week
from combwright.figures.worth_chart import worth_chart
from combwright.kit.catalogue import catalogue
from combwright.kit.standing import Standing
from combwright.services.rounds.price_list import prices_on
from combwright.simulation.begin import Described, begin
from combwright.terms.entries import Noted
from combwright.terms.set_up import SetUp
from combwright.weather.sampled import sampled_conditions

HIVE: Final = "national timber"
USUAL: Final = Described(5.5, 1.5, 9.0, mites=60.0)  # at the beginning of March; judgement
MEMBERS: Final = 40
SEED: Final = 1
ROUNDED: Final = 2


@dataclass(frozen=True)
class Worth:
    """What each thing is worth in each week, in the keeper's money, and the year it was told of."""

    climate: str
    weeks: tuple[date, ...]
    curves: dict[str, tuple[float, ...]]

    def chart(self, width: int = 560) -> str:
        """Draw it, as SVG."""
        title = f"Worth by week at {self.climate}, money"
        return worth_chart(self.weeks, self.curves, title=title, width=width)


def worth_on(entries: Sequence[Noted], on: date, climate: str) -> Worth:
    """Give it at the prices of a book on a day."""
    return _worth(climate, on.year, prices_on(entries, on))


@lru_cache(maxsize=8)
def _worth(climate: str, year: int, prices: Prices) -> Worth:
    """Work it out for a usual colony, whose queen is of the year before last."""
    first, hive = date(year, 3, 1), catalogue().hive(HIVE)
    set_up = SetUp(hive=HIVE, frames=7, dummy_boards=2)
    colonies = begin(hive, set_up, USUAL, on=first, members=MEMBERS, seed=SEED, colony="usual")
    days = (season_ends(first, 0) - first).days
    season = sampled_conditions(climate, first, days, MEMBERS, SEED)
    weeks, curves = worth_by_week(colonies, first, season, Standing(hive, set_up), prices)
    shown = {name: tuple(values.round(ROUNDED).tolist()) for name, values in curves.items()}
    return Worth(climate, tuple(weeks), shown)
