"""What a decision knows: the belief, the stack, the days ahead, and the limits on harm."""

from dataclasses import dataclass, field, replace
from datetime import date, timedelta
from functools import cached_property
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from combwright.advice.lately import done_lately
from combwright.advice.numbers import numbers
from combwright.advice.prices import Prices
from combwright.advice.season_ahead import Account, SeasonDays, swarm_loss
from combwright.belief.weighing.weights import quantiles
from combwright.kit.standing import Standing
from combwright.simulation import observe
from combwright.simulation.columns import LAYING, copied
from combwright.simulation.hands.actions import arrange, empty_feeder, harvest
from combwright.terms.entries import Noted
from combwright.terms.ranked import median
from combwright.terms.set_up import SetUp
from combwright.terms.sugar import SYRUP_SUGAR
from combwright.weather.conditions import MAX_C

Floats = NDArray[np.float64]
PARAMETERS: Final = numbers("trial")
MARGIN_DAYS: Final = int(PARAMETERS["margin_days"].value)

GRAVE: Final = PARAMETERS["grave"].value
QUANTILES: Final = (PARAMETERS["low"].value, 0.5, PARAMETERS["high"].value)


@dataclass(frozen=True, slots=True)
class Limits:
    """The greatest chance of each harm that a plan may carry; the keeper may change them."""

    hunger: float = PARAMETERS["hunger"].value
    no_room: float = PARAMETERS["no_room"].value
    chilled: float = PARAMETERS["chilled"].value
    sour: float = PARAMETERS["sour"].value
    syrup_in_honey: float = 0.0
    swarm: float = PARAMETERS["swarm"].value

    def excess(self, chances: dict[str, float]) -> float:
        """By how much a plan breaks the limits, in all; a swarm is flagged, not forbidden.

        Examples
        --------
        >>> Limits().excess({"hunger": 0.02, "no room": 0.25, "swarm": 0.9}).__round__(2)
        0.15

        """
        allowed = {
            "hunger": self.hunger,
            "no room": self.no_room,
            "chilled": self.chilled,
            "sour": self.sour,
            "syrup in honey": self.syrup_in_honey,
        }
        weight = {"hunger": GRAVE, "syrup in honey": GRAVE}
        return sum(
            weight.get(name, 1.0) * max(0.0, chances.get(name, 0.0) - limit)
            for name, limit in allowed.items()
        )


@dataclass(frozen=True, slots=True)
class HoneyWaits:
    """Until when honey may not be taken, for what was given to the bees."""

    free: date
    product: str


@dataclass(frozen=True)
class Situation:
    """One colony on the day of the round.

    ``conditions`` and ``luck`` begin on that day and reach at least over the days to the next
    visit and the margin after it. ``history`` holds the colony's entries before that day,
    ``signs_at`` names another colony of its yard at which signs of disease stand noted. ``dead`` is
    the share of members that were left out because they have died, ``robbed`` the chance that it
    was robbed since the last notes. ``honey_waits`` where a withdrawal period has not
    passed. ``season`` holds the days to the
    end of the season, over which candidates are weighed; those of ``conditions`` without it. What
    a swarm costs is worked out once, and taken along where part of the work is done. A branch, for
    members as if they had been found, is weighed by half as many.
    """

    colony: str
    on: date
    days: int
    colonies: NDArray[np.void]
    standing: Standing
    conditions: Floats
    luck: Floats
    limits: Limits
    syrup_fraction: float = SYRUP_SUGAR
    drawn_frames_to_hand: bool = True
    pitch_mm: float | None = None
    history: tuple[Noted, ...] = ()
    signs_at: str | None = None
    dead: float = 0.0
    robbed: float = 0.0
    honey_waits: HoneyWaits | None = None
    prices: Prices = field(default_factory=Prices)
    season: SeasonDays | None = None
    known_swarm_loss: float | None = None
    is_branch: bool = False

    @cached_property
    def tried_days(self) -> tuple[Floats, Floats]:
        """Conditions and luck of the days over which a plan is tried, each in one piece."""
        days = slice(0, self.horizon)
        return (
            np.ascontiguousarray(self.conditions[:, days]),
            np.ascontiguousarray(self.luck[:, days]),
        )

    @cached_property
    def frames_of_bees(self) -> Floats:
        """Frames of bees of each member, [member]."""
        return observe.frames_of_bees(self.colonies)

    @cached_property
    def bees(self) -> float:
        """Frames of bees in the middle of the members."""
        return median(self.frames_of_bees)

    @cached_property
    def used_g(self) -> float:
        """Sugar that was used on the last day, in the middle of the members. [g]."""
        return median(self.colonies["used"])

    @cached_property
    def mean_high_c(self) -> float:
        """Mean of the days' highest temperatures until the next visit. [°C]."""
        return float(np.mean(self.conditions[:, : self.days, MAX_C]))

    def reaches_today(self, temperature_c: float) -> float:
        """Chance that today reaches a temperature: by the forecast, or as days are sampled."""
        return float(np.mean(self.conditions[:, 0, MAX_C] >= temperature_c))

    @property
    def is_cool(self) -> bool:
        """Tell whether syrup is taken better when it is given lukewarm."""
        return self.mean_high_c < PARAMETERS["warm_enough_c"].value

    @property
    def laying(self) -> float:
        """Chance that a queen lays."""
        return float(np.mean(self.colonies["queen"] == LAYING))

    @property
    def horizon(self) -> int:
        """Days over which a plan is tried."""
        return self.days + MARGIN_DAYS

    @property
    def planned_until(self) -> date:
        """The day of the usual next visit, up to which food and room are planned."""
        return self.on + timedelta(days=self.days)

    @cached_property
    def days_to_come(self) -> SeasonDays:
        """The days to the end of the season, or as many as are known."""
        scenarios = np.arange(len(self.colonies)) % self.conditions.shape[0]
        return self.season or SeasonDays(self.conditions, scenarios)

    @cached_property
    def account(self) -> Account:
        """Where the season ahead is rolled, with what a swarm would cost in it."""
        done = done_lately(self.history, self.on)
        at = Account(self.on, self.days, self.standing, self.days_to_come, self.prices, done=done)
        known = self.known_swarm_loss
        return replace(at, swarm_loss=swarm_loss(self.colonies, at) if known is None else known)

    def if_alive(self) -> "Situation":
        """Give the same situation for the case that the colony lives, if it may."""
        alive = np.flatnonzero(observe.adults(self.colonies) >= PARAMETERS["least_alive"].value)
        dead = 1.0 - len(alive) / len(self.colonies)
        living = self._of(alive) if 0.0 < dead < 1.0 else self
        return replace(living, dead=dead)

    def with_members(self, found: NDArray[np.intp]) -> "Situation":
        """Give the same situation for some of the members, as if they had been found."""
        return replace(self._of(found), known_swarm_loss=self.account.swarm_loss)

    def _of(self, found: NDArray[np.intp]) -> "Situation":
        return replace(
            self,
            colonies=self.colonies.take(found),
            conditions=self.conditions[found % self.conditions.shape[0]],
            luck=self.luck[found],
            season=self.season.with_members(found) if self.season else None,
        )

    def with_set_up(self, set_up: SetUp) -> "Situation":
        """Give the same situation with another stack, as it stands after part of the work."""
        colonies = copied(self.colonies)
        self.arrange(colonies, set_up)
        stands = replace(self.standing, set_up=set_up)
        return replace(
            self, colonies=colonies, standing=stands, known_swarm_loss=self.account.swarm_loss
        )

    def after_harvest(self, set_up: SetUp, honey_kg: float) -> "Situation":
        """Give the same situation with supers off and so much honey with them. [kg]."""
        colonies = copied(self.colonies)
        harvest(colonies, honey_kg)
        arrange(colonies, self.standing.hive, set_up, honey_stays=True)
        return replace(self, colonies=colonies, standing=replace(self.standing, set_up=set_up))

    def arrange(self, colonies: Any, set_up: SetUp) -> None:
        """Set the stack of some members up in place; under a new super the feeder comes off."""
        if set_up.supers > self.standing.set_up.supers:
            empty_feeder(colonies)
        arrange(colonies, self.standing.hive, set_up)


def band(values: Floats) -> tuple[float, float, float]:
    """5, 50 and 95 % quantiles of evenly weighted members."""
    low, mid, high = quantiles(values, np.full(len(values), 1.0 / len(values)), QUANTILES)
    return low, mid, high
