"""What the plan of nucs and queens tells the keeper: typed, so that every face shows the same."""

from dataclasses import dataclass
from datetime import date

from combwright.advice.words.wording import day_words, many
from combwright.planning.supply.nuc_readiness import NucReady


@dataclass(frozen=True)
class OrderLine:
    """One order in the plan; ``week`` is the day by which it is ready, ``None`` when refused."""

    order: str
    customer: str
    what: str
    count: int
    wanted_by: date
    promised_before: date | None
    week: date | None
    chance: float | None
    rests_on: str
    possible_with: tuple[str, ...] = ()
    ring: str = ""


@dataclass(frozen=True)
class ColonyLine:
    """An order for whole colonies, and which could go: their seasons ahead are worth ``worth``."""

    order: str
    customer: str
    count: int
    wanted_by: date
    price: float
    colonies: tuple[str, ...]
    worth: float

    @property
    def said(self) -> str:
        """Say it in a sentence.

        Examples
        --------
        >>> ColonyLine("8", "Kane", 1, date(2027, 6, 12), 250.0, ("Bramble",), 180.0).said
        '8, 1 colony for Kane by 12 Jun: Bramble could go; kept, worth 180 by October, sold 250'

        """
        wanted = f"{self.order}, {many(self.count, 'colony')} for {self.customer}"
        wanted += f" by {day_words(self.wanted_by)}"
        if not self.colonies:
            return f"{wanted}: no colony is strong enough that the plan needs for no nuc"
        missing = self.count - len(self.colonies)
        short = f", {missing} more cannot be found" if missing else ""
        sold = self.price * len(self.colonies)
        return (
            f"{wanted}: {', '.join(self.colonies)} could go{short}; kept, worth {self.worth:.0f} "
            f"by October, sold {sold:.0f}"
        )


@dataclass(frozen=True)
class GiveLine:
    """One donor in one week."""

    week: date
    donor: str
    yard: str
    nucs: int
    frames_of_brood: float
    frames_of_bees: float
    lost: float


@dataclass(frozen=True)
class WeekLine:
    """What is made and begun in one week, with the chance of a cell given in it."""

    week: date
    by_cell: int
    by_bought_queen: int
    mating_nucs: int
    grafts: int
    cells_to_hand: int
    lays: float
    drone_layer: float


@dataclass(frozen=True)
class InMoney:
    """The plan and the plain rules on the same seasons, in the keeper's money."""

    income: float
    plain_income: float
    better_share: float
    plain_kept: float
    given_up: float


@dataclass(frozen=True)
class SupplySheet:
    """The plan of the season; ``queens_sure`` of the cells to hand lay with nine in ten."""

    on: date
    orders: tuple[OrderLine, ...]
    gives: tuple[GiveLine, ...]
    nucs: tuple[NucReady, ...]
    colonies: tuple[ColonyLine, ...]
    weeks: tuple[WeekLine, ...]
    can_give_now: dict[str, int]
    queens_sure: int
    kept_for_winter: float
    next_spring: tuple[str, ...]
    money: InMoney
    gap: float
    own_factor: float
    weather: str
    notices: tuple[str, ...]

    @property
    def to_ring(self) -> tuple[OrderLine, ...]:
        """Whose promise can no longer be kept as it was given."""
        return tuple(each for each in self.orders if each.ring)
