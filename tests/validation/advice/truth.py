"""One true colony under one keeper: its days, what can be seen of it, what can be done to it.

Every keeper of a study has the same hands: the same noisy eye, the same nucleus method, the same
queens for sale. Only what is decided differs. Weather, luck and the errors of the eye belong to
the colony and the day, not to the keeper.
"""

from dataclasses import dataclass, field
from datetime import date, timedelta
from uuid import UUID

import numpy as np
from numpy.typing import NDArray
from tests.validation.advice.money import PRICES, colony_worth, nuc_income

from combwright.belief.weighing.observation import (
    BROOD_SEEN,
    CELLS_SEEN,
    CLUMPED,
    EYE,
    SEEN_BY_TRAY,
    chance_of_eggs_found,
    chance_of_queen_seen,
)
from combwright.kit.items import Hive
from combwright.simulation import observe
from combwright.simulation.biology import BIOLOGY, Biology
from combwright.simulation.columns import CELL, LAYING, LAYING_WORKERS, QUEENLESS
from combwright.simulation.hands.actions import (
    arrange,
    change_queen,
    cut_cells,
    empty_feeder,
    feed,
    harvest,
    treat,
)
from combwright.simulation.hands.dividing import GoesWith, split
from combwright.simulation.run import run
from combwright.simulation.step.shapes import YEAR
from combwright.terms.entries import Visit
from combwright.terms.set_up import SetUp
from combwright.terms.streams import stream

Floats = NDArray[np.float64]
QUEENS_SOLD = (5, 6, 7, 8, 9)  # months in which a mated queen can be bought
ALIVE_FRAMES = 1.0  # frames of bees from which a colony in spring counts as alive
ACCEPTED = 0.85  # share of bought queens that the bees accept; eight to nine in ten, from memory
TEST_DAYS, LONGEST_TEST_DAYS = 4, 21  # from which a test frame tells, and how long it does
MISSED = 0.1  # share of looks that leave a queen cell standing; judgement
TAKEN = 0.93  # share of honey that comes out of the comb
HUNGRY, ROOM, CHILLED, SOUR, SYRUP = range(5)
HARMS = ("hunger", "no room", "chilled", "sour", "syrup in honey")


@dataclass
class Tally:
    """What is counted of one colony, year by year, [year]."""

    years: int
    survived: Floats = field(init=False)
    frames: Floats = field(init=False)
    honey: Floats = field(init=False)
    swarms: Floats = field(init=False)
    nucs: Floats = field(init=False)
    sugar: Floats = field(init=False)
    visits: Floats = field(init=False)
    mites: Floats = field(init=False)
    queens: Floats = field(init=False)
    treatments: Floats = field(init=False)
    nuc_income: Floats = field(init=False)
    nuc_queens: Floats = field(init=False)
    worth_before: Floats = field(init=False)
    worth_after: Floats = field(init=False)

    def __post_init__(self) -> None:
        for name in COUNTED:
            setattr(self, name, np.zeros(self.years))


COUNTED = (
    *("survived", "frames", "honey", "swarms", "nucs", "sugar", "visits", "mites"),
    *("queens", "treatments", "nuc_income", "nuc_queens", "worth_before", "worth_after"),
)


@dataclass
class TrueColony:
    """A colony as it is, and how its stack stands."""

    name: str
    hive: Hive
    record: NDArray[np.void]
    set_up: SetUp
    on: date
    first: date
    weather: Floats
    luck: Floats
    tally: Tally
    world: Biology = BIOLOGY
    harms: list[list[bool]] = field(default_factory=list)
    brood_before: float = 500.0
    is_gone: bool = False
    swarms_since: float = 0.0
    tested_on: date | None = None

    @property
    def year(self) -> int:
        """Year of the study, from April to March."""
        return min(self.tally.years - 1, max(0, int((self.on - self.first).days / 365.25)))

    def live_until(self, day: date) -> None:
        """Let the days pass until the morning of a day."""
        start, stop = (self.on - self.first).days, (day - self.first).days
        if stop > start and not self.is_gone:
            before = float(self.record["swarmed"][0])
            days = slice(start, stop)
            run(self.record, self.weather[:, days], self.luck[:, days], worlds=(self.world,))
            swarms = float(self.record["swarmed"][0]) - before
            self.tally.swarms[self.year] += swarms
            self.swarms_since += swarms
        self.on = day

    @property
    def is_alive(self) -> bool:
        """Tell whether a keeper in spring would call it alive."""
        bees = float(observe.frames_of_bees(self.record)[0])
        return not self.is_gone and bees >= ALIVE_FRAMES and self._queen == LAYING

    @property
    def worth(self) -> float:
        """Price of it in spring."""
        bees = float(observe.frames_of_bees(self.record)[0])
        years = float(self.record["queen_age"][0]) / YEAR
        return 0.0 if self.is_gone else colony_worth(bees, years, has_queen=self._queen == LAYING)

    @property
    def queen_since(self) -> date:
        """The day from which its queen has laid: who keeps it, or sells it, knows her year."""
        return self.on - timedelta(days=float(self.record["queen_age"][0]))

    @property
    def _queen(self) -> float:
        return float(self.record["queen"][0])

    # --- seeing -------------------------------------------------------------------------------

    def look(self, *, opened: bool) -> Visit:
        """Note what a keeper sees: with the errors of the observation model, in halves."""
        rng = stream(7, self.name, "eye", self.on.toordinal())
        seen = {name: float(EYE[name].draw(self._true(name), rng)[0]) for name in self._TRUE}
        eggs = bool(rng.random() < float(chance_of_eggs_found(self.record)[0]))
        cells = self._cells(rng)
        visit = Visit(id=_key(rng), on=self.on, colony=self.name)
        if not opened:
            return visit.model_copy(update={"stores_kg": round(seen["stores_kg"], 1)})
        halves = {name: round(2.0 * seen[name]) / 2.0 for name in self._TRUE[:2]}
        return visit.model_copy(
            update={
                **halves,
                "stores_kg": round(2.0 * seen["stores_kg"]) / 2.0,
                "syrup_left_g": round(seen["syrup_left_g"], -2) if self.has_feeder else None,
                "eggs": eggs,
                "queen_cells": cells,
                "queen_seen": self._sees_queen(),
                "brood_kind": self._brood_kind(rng) if halves["frames_of_brood"] else None,
            }
        )

    _TRUE = ("frames_of_bees", "frames_of_brood", "stores_kg", "syrup_left_g")

    def _true(self, name: str) -> Floats:
        if name == "syrup_left_g":
            return np.asarray(self.record["feeder"] + self.record["feeder_water"])
        return np.asarray(getattr(observe, name)(self.record))

    @property
    def has_feeder(self) -> bool:
        """Tell whether there is feed on it."""
        return float(self.record["feeder"][0]) > 0.0

    def _cells(self, rng: np.random.Generator) -> str:
        """Draw what is noted of queen cells, with the chances of the observation model."""
        clock = float(self.record["queen_clock" if self._queen == CELL else "swarm_clock"][0])
        busy = self._queen == CELL or clock > 0.0
        stage = "quiet" if not busy or (self._queen != CELL and clock == 0.0) else "begun"
        if stage == "begun" and clock >= 4.0:
            stage = "sealed" if clock >= 8.0 else "charged"
        chances = CELLS_SEEN[stage]
        return str(rng.choice(list(chances), p=np.array(list(chances.values()))))

    def _sees_queen(self) -> bool:
        """Draw whether the queen is seen, with the chances of the observation model."""
        rng = stream(7, self.name, "queen", self.on.toordinal())
        return bool(rng.random() < float(chance_of_queen_seen(self.record)[0]))

    def _brood_kind(self, rng: np.random.Generator) -> str:
        """Draw what is noted of the kind of brood, with the chances of the observation model."""
        chances = BROOD_SEEN.get(self._queen, BROOD_SEEN[LAYING])
        return str(rng.choice(list(chances), p=np.array(list(chances.values()))))

    def count_fall(self, days: float) -> int:
        """Count mites on the tray over some days."""
        rng = stream(7, self.name, "tray", self.on.toordinal())
        mean = max(1e-3, SEEN_BY_TRAY.value * days * float(self.record["fallen"][0]))
        size = CLUMPED.value
        return int(rng.negative_binomial(size, size / (size + mean)))

    def super_share(self) -> float:
        """Judge by eye how full of honey the supers are, 0 to 1."""
        if self.set_up.supers == 0:
            return 0.0
        rng = stream(7, self.name, "supers", self.on.toordinal())
        full = float(self.record["super_drawn"][0] * self.record["sugar_per_cell"][0])
        true = float(self.record["super_ripe"][0]) / max(full, 1.0)
        return float(np.clip(true * np.exp(0.15 * rng.standard_normal()), 0.0, 1.0))

    # --- doing --------------------------------------------------------------------------------

    def arrange(self, set_up: SetUp) -> None:
        """Set the stack up; a feeder comes off under a new super, honey that stays is kept."""
        if set_up.supers > self.set_up.supers:
            empty_feeder(self.record)
        arrange(self.record, self.hive, set_up, honey_stays=True)
        self.set_up = set_up

    def feed(self, grams: float, sugar_fraction: float) -> None:
        """Give syrup or fondant."""
        if grams > 0.0:
            feed(self.record, grams, sugar_fraction, warmer_k=8.0)
            self.tally.sugar[self.year] += grams * sugar_fraction / 1000.0

    def treat(self, substance: str) -> None:
        """Begin a mite treatment."""
        treat(self.record, substance)
        self.tally.treatments[self.year] += 1.0

    def take_supers(self, off: int) -> float:
        """Take supers off, the fullest combs in them; gives the honey. [kg]."""
        off = min(off, self.set_up.supers)
        if off == 0:
            return 0.0
        full_kg = self.hive.honey_super.honey_full_kg if self.hive.honey_super else 0.0
        touched = float(self.record["super_syrup"][0]) > 20.0
        taken = float(harvest(self.record, off * full_kg)[0])
        left = self.set_up.supers - off
        self.arrange(self.set_up.model_copy(update={"supers": left, "excluder": left > 0}))
        self.tally.honey[self.year] += TAKEN * taken
        if self.harms:
            self.harms[-1][SYRUP] |= touched and taken > 0.5
        return TAKEN * taken

    @property
    def is_tested(self) -> bool:
        """Tell whether there is a test frame in it that can still be read."""
        return self.tested_on is not None and (self.on - self.tested_on).days <= LONGEST_TEST_DAYS

    def is_queenless_by_test_frame(self) -> bool:
        """Put a frame with eggs in, and tell at a later visit whether cells stand on it.

        Bees with a queen or a virgin raise none; those without do.
        """
        if self.tested_on is None or not self.is_tested:
            self.tested_on = self.on
            return False
        waited = (self.on - self.tested_on).days
        found = waited >= TEST_DAYS and self._queen in {QUEENLESS, CELL}
        self.tested_on = None if found else self.tested_on
        return found

    def give_queen(self) -> bool:
        """Give a bought queen, if one is for sale; bees with a queen or virgin kill her."""
        if self.on.month not in QUEENS_SOLD:
            return False
        self.tally.queens[self.year] += 1.0
        if self._queen in {QUEENLESS, CELL}:
            self._introduce()
        return True

    def requeen(self) -> bool:
        """Replace the queen that lays by a bought one; laying workers kill her."""
        if self.on.month not in QUEENS_SOLD:
            return False
        self.tally.queens[self.year] += 1.0
        if self._queen != LAYING_WORKERS:
            self._introduce()
        return True

    def _introduce(self) -> None:
        rng = stream(7, self.name, "introduced", self.on.toordinal())
        is_accepted = rng.random() < ACCEPTED
        change_queen(self.record, "introduced" if is_accepted else "lost", age_days=20.0)

    def take_nuc(self, brood: float, bees: float, stores: float, goes_with: GoesWith) -> None:
        """Take bees and brood for a nuc; the nuc leaves the study."""
        had, covered = self._brood_and_bees()
        years = float(self.record["queen_age"][0]) / YEAR
        split(
            self.record,
            self.hive,
            self.set_up,
            frames_of_bees=bees,
            frames_of_brood=brood,
            frames_of_stores=stores,
            goes_with=goes_with,
        )
        left, still_covered = self._brood_and_bees()
        # a nuc is two frames of brood, or a queen with three frames of bees
        size = (covered - still_covered) / 3.0 if goes_with == "queen" else (had - left) / 2.0
        size = min(size, 1.0)
        self.tally.nucs[self.year] += size
        self.tally.nuc_income[self.year] += size * nuc_income(self.on, goes_with, years)
        for counted in (self.tally.queens, self.tally.nuc_queens):
            counted[self.year] += size * (goes_with == "mated queen")

    def _brood_and_bees(self) -> tuple[float, float]:
        brood = observe.frames_of_brood(self.record)
        return float(brood[0]), float(observe.adults(self.record)[0] / 1800.0)

    def nucleus_method(self, *, with_queen: bool = False) -> None:
        """Take the queen with a frame of brood and two of bees into a nuc; leave one open cell.

        With a queen the colony is given a mated one instead of the cell, if one is for sale.
        """
        clock = float(self.record["swarm_clock"][0])
        if self._queen != LAYING:
            return
        self.take_nuc(1.0, 3.0, 1.0, "queen")
        change_queen(self.record, "cell")
        self.record["queen_clock"] = clock if clock > 0.0 else 5.0
        self.record["swarmed"] = 0.0  # one cell is left: no cast
        if with_queen:
            self.give_queen()

    def nuc_with_her(self) -> None:
        """Sell the queen with a frame of brood and three of bees; give a mated one in her place.

        That one is paid with the nuc.
        """
        if self._queen != LAYING:
            return
        self.take_nuc(1.0, 3.0, 1.0, "queen")
        if self.give_queen():
            self.tally.nuc_queens[self.year] += 1.0
            self.tally.nuc_income[self.year] -= PRICES.mated_queen

    def cut_cells(self) -> None:
        """Knock down all queen cells that are found: at one look in ten one is missed."""
        rng = stream(7, self.name, "cut", self.on.toordinal())
        if rng.random() >= MISSED:
            cut_cells(self.record)

    def leave_one_cell(self) -> None:
        """Reduce the cells of a colony that has swarmed to one, so that no cast follows."""
        self.record["swarmed"] = 0.0

    # --- counting -----------------------------------------------------------------------------

    def begin_interval(self) -> None:
        """Start to count harm afresh."""
        for column in ("hungry_days", "short_of_room_days", "short_of_room_most", "chilled"):
            self.record[column] = 0.0
        self.record["sour_days"] = self.swarms_since = 0.0
        self.brood_before = max(500.0, float(observe.brood(self.record)[0]))
        self.harms.append([False] * len(HARMS))

    def end_interval(self) -> None:
        """Note which harms came since the last visit, as the advice defines them."""
        if not self.harms:
            return
        one, last = self.record[0], self.harms[-1]
        last[HUNGRY] = bool(one["hungry_days"] > 0.0)
        last[ROOM] = bool(one["short_of_room_most"] >= 2.0)
        last[CHILLED] = bool(one["chilled"] > 0.02 * self.brood_before)
        last[SOUR] = bool(one["sour_days"] > 0.0)


def _key(rng: np.random.Generator) -> UUID:
    return UUID(bytes=rng.bytes(16), version=4)
