"""Keepers without Combwright: the careful one, who may buy queens or make a nuc on purpose.

The careful keeper follows the rules of thumb of the trade as associations teach them (collected
in the facts that the product was built from: spring build-up, supers, feeding, swarm control,
nuclei, mites, winter), applied to the same noisy notes that Combwright's keeper has.
"""

from dataclasses import dataclass
from datetime import date
from typing import Protocol

from tests.validation.advice.truth import QUEENS_SOLD, TrueColony

from combwright.advice.counted import PARAMETERS as COUNTED
from combwright.advice.decisions.winter import WEAKEST
from combwright.terms.entries import Visit
from combwright.terms.set_up import SetUp

LITRE_THIN_G = 1230.0  # a litre of 1:1 syrup, 50 % sugar
THICK = 0.61  # 1 kg to 0.63 L
FEEDER_G = 5800.0  # a 4.5 L contact feeder of thick syrup
HALVED = COUNTED["halved"].value  # of the count before, as in the plan
ROTATION = ("thymol", "amitraz", "formic acid")


class Keeper(Protocol):
    """Decides at each visit, and when the next one is."""

    def visit(self, colony: TrueColony) -> int:
        """Do the work of a visit; give the days until the next one."""


def fits(hive_frames: int, frames: int) -> int:
    """Give the dummy boards that stand beside so many frames in a National box."""
    if frames <= hive_frames - 2:
        return 2
    return 1 if frames <= hive_frames else 0


@dataclass
class Careful:
    """Follows the rules of thumb of the trade with care, and feeds nothing under supers.

    On demand with a mated queen at each division, or with one nuc a year made on purpose, with a
    mated queen, and supers two frames of bees sooner; or that nuc with the colony's own queen, and
    the mated one in her place. Where nobody buys nucs, one may keep to honey: it gives no brood
    away, has supers on sooner and cuts cells in place of dividing.
    """

    queen_since: date
    buys_queens: bool = False
    makes_nuc: bool = False
    sells_her: bool = False
    keeps_to_honey: bool = False
    last_nuc: date | None = None
    waits_until: date | None = None
    without_eggs: int = 0
    drones_seen: int = 0
    treated_in: int = 0
    cleaned_in: date | None = None
    counted: float | None = None

    def visit(self, colony: TrueColony) -> int:
        """Go through the questions of an inspection in their order."""
        on = colony.on
        colony.tally.visits[colony.year] += 1.0
        opened = 3 <= on.month <= 9
        seen = colony.look(opened=opened)
        if not opened:
            self._winter(colony, seen)
            return 28 if on.month != 2 else 21
        self._queen(colony, seen)
        self._honey(colony)
        self._room(colony, seen)
        self._nuc(colony, seen)
        self._mites(colony)
        is_odd = self._is_odd(seen)
        if is_odd or not self._unite(colony, seen):
            self._food(colony, seen)
        return 7 if is_odd and on.month == 9 else {3: 14, 8: 14, 9: 21}.get(on.month, 7)

    def _queen(self, colony: TrueColony, seen: Visit) -> None:
        """Check for cells every week; nucleus method; requeen every second year."""
        on = colony.on
        if self.waits_until is not None and on < self.waits_until:
            return
        if seen.brood_kind in {"drone brood only", "several eggs a cell"}:
            self._only_drones(colony)
            return
        self.drones_seen = 0
        if seen.eggs:
            self.without_eggs = 0
            strong = (seen.frames_of_bees or 0.0) >= 5.0  # who has fewer does not divide
            if strong and seen.queen_cells in {"charged", "sealed"} and 4 <= on.month <= 8:
                if self.keeps_to_honey:
                    colony.cut_cells()
                    return
                bought = self.buys_queens and on.month in QUEENS_SOLD
                colony.nucleus_method(with_queen=bought)
                self._wait(on, 7 if bought else 28)
            elif on.month in {7, 8} and (on - self.queen_since).days > 700:
                colony.requeen()
                self.queen_since = on
            return
        if seen.queen_cells in {"charged", "sealed"}:
            colony.leave_one_cell()
            self._wait(on, 24)
            return
        if seen.queen_seen:
            return  # she is there: eggs will follow
        self.without_eggs += 1
        if colony.is_queenless_by_test_frame() and colony.give_queen():
            self.queen_since, self.without_eggs = on, 0

    def _only_drones(self, colony: TrueColony) -> None:
        """Replace a drone layer when drone brood alone is seen twice, while queens are for sale."""
        self.drones_seen += 1
        if self.drones_seen > 1 and colony.requeen():
            self.queen_since, self.drones_seen = colony.on, 0

    def _wait(self, on: date, days: int) -> None:
        self.waits_until = date.fromordinal(on.toordinal() + days)
        self.queen_since, self.without_eggs = self.waits_until, 0

    def _honey(self, colony: TrueColony) -> None:
        """Take supers three quarters sealed but one in the season, and all in early August."""
        on, supers = colony.on, colony.set_up.supers
        if (on.month, on.day) >= (8, 5):
            colony.take_supers(supers)
        elif on.month in {6, 7} and supers >= 2 and colony.super_share() >= 0.75:
            colony.take_supers(supers - 1)

    def _room(self, colony: TrueColony, seen: Visit) -> None:
        """Add a frame when the outer face is covered; super at 5-6 of brood; next at half full."""
        on, now = colony.on, colony.set_up
        bees, brood = seen.frames_of_bees or 0.0, seen.frames_of_brood or 0.0
        most = colony.hive.frames
        frames, supers = now.frames, now.supers
        if bees >= frames - 0.5 and frames < most and on.month <= 8:
            pace = 2 if bees >= frames + 0.5 and (on.month, on.day) >= (4, 15) else 1
            frames = min(most, frames + pace)
        if bees >= 9.5 and on.month in {4, 5, 6, 7}:
            frames = most
        season = (4, 10) <= (on.month, on.day) <= (7, 25)
        sooner = 2.0 if self.makes_nuc or self.keeps_to_honey else 0.0
        crowded = brood >= 5.5 - sooner / 2.0 or bees >= most - 0.5 - sooner
        if season and supers == 0 and frames >= most - 1 and crowded:
            supers = 1
        elif season and 0 < supers < 4 and colony.super_share() >= 0.5:
            supers += 1
        if on.month in {3, 9} and bees <= frames - 3.0 and frames > 5:
            frames -= 1
        self._set(colony, now, frames, supers)

    def _set(self, colony: TrueColony, now: SetUp, frames: int, supers: int) -> None:
        update = {
            "frames": frames,
            "dummy_boards": fits(colony.hive.frames, frames),
            "supers": supers,
            "excluder": supers > 0,
            "entrance_mm": 60 if colony.on.month in {3, 8, 9} else 120,
            "tray_open_mm": 100,
        }
        wanted = now.model_copy(update=update)
        if wanted != now:
            colony.arrange(wanted)

    def _nuc(self, colony: TrueColony, seen: Visit) -> None:
        """Take one nuc from a donor with seven frames of brood, three weeks apart."""
        on = colony.on
        rested = self.last_nuc is None or (on - self.last_nuc).days >= 21
        strong = (seen.frames_of_brood or 0.0) >= 7.0 and (seen.frames_of_bees or 0.0) >= 10.0
        in_season = (5, 1) <= (on.month, on.day) <= (7, 15)
        if self.keeps_to_honey:
            return
        if self.makes_nuc:
            self._nuc_on_purpose(colony, seen)
            return
        if in_season and rested and strong and seen.eggs and (seen.stores_kg or 0.0) >= 8.0:
            colony.take_nuc(2.0, 2.0, 1.0, "cell")
            self.last_nuc = on

    def _nuc_on_purpose(self, colony: TrueColony, seen: Visit) -> None:
        """Make one nuc a year with a mated queen, from nine frames of bees after 10 May."""
        on = colony.on
        made = self.last_nuc is not None and self.last_nuc.year == on.year
        in_season = (5, 10) <= (on.month, on.day) <= (7, 1)
        if in_season and not made and seen.eggs and (seen.frames_of_bees or 0.0) >= 9.0:
            self.last_nuc = on
            if self.sells_her:
                colony.nuc_with_her()
                self._wait(on, 7)
            else:
                colony.take_nuc(2.0, 3.0, 1.0, "mated queen")

    def _mites(self, colony: TrueColony) -> None:
        """Treat in mid-August, substances in turn."""
        on = colony.on
        due = (8, 10) <= (on.month, on.day) <= (9, 15) and self.treated_in != on.year
        if due and colony.set_up.supers == 0:
            colony.treat(ROTATION[on.year % len(ROTATION)])
            self.treated_in = on.year

    def _is_odd(self, seen: Visit) -> bool:
        """Tell whether so few bees after so many should be counted again before it is united."""
        before, self.counted = self.counted, seen.frames_of_bees
        return before is not None and (seen.frames_of_bees or 0.0) < HALVED * before

    def _unite(self, colony: TrueColony, seen: Visit) -> bool:
        """Unite what is weak in September: it is no colony of its own any more."""
        weak = (seen.frames_of_bees or 0.0) < WEAKEST  # as in the plan
        if colony.on.month == 9 and weak:
            colony.is_gone = True
        return colony.is_gone

    def _food(self, colony: TrueColony, seen: Visit) -> None:
        on, stores = colony.on, seen.stores_kg or 0.0
        bees = seen.frames_of_bees or 0.0
        if on.month in {8, 9} and colony.set_up.supers == 0:
            left = (seen.syrup_left_g or 0.0) / 1000.0
            short = 20.0 - stores - left
            if short > 0.7:
                colony.feed(min(1250.0 * short, 2.0 * FEEDER_G), THICK)
            return
        if colony.set_up.supers > 0:
            if stores < 3.0:  # hungry under empty supers: they come off and it is fed
                colony.take_supers(colony.set_up.supers)
                colony.feed(2.5 * LITRE_THIN_G, 0.5)
            return
        if stores < 3.0:
            litres = 5.0 if bees >= 7.0 else 2.5
            cold = on.month == 3
            colony.feed(2500.0 if cold else litres * LITRE_THIN_G, 0.85 if cold else 0.5)
        elif stores < 9.0 and (seen.syrup_left_g or 0.0) < 100.0 and on.month >= 3:
            cold = on.month == 3 and on.day < 20
            if not cold:
                colony.feed((1.0 if bees >= 6.0 else 0.5) * LITRE_THIN_G, 0.5)
        elif stores < 9.0:
            colony.feed(0.25 * LITRE_THIN_G, 0.5)

    def _winter(self, colony: TrueColony, seen: Visit) -> None:
        """Heft; fondant when light; the mites of midwinter."""
        on = colony.on
        if (seen.stores_kg or 0.0) < 5.0 and not colony.has_feeder:
            colony.feed(2500.0, 0.85)
        midwinter = (on.month == 12 and on.day >= 5) or (on.month == 1 and on.day <= 8)
        clean = self.cleaned_in is not None and (on - self.cleaned_in).days < 60
        if midwinter and not clean:
            colony.treat("oxalic acid")
            self.cleaned_in = on
        if on.month == 11 and colony.set_up.tray_open_mm != 460:
            colony.arrange(colony.set_up.model_copy(update={"tray_open_mm": 460}))
