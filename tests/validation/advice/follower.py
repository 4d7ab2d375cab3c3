"""The keeper who follows Combwright: a belief from noisy notes, a plan, and the plan carried out.

What is done is done to the colony as it is and, through the book's entries, to the belief. The
keeper knows the weather that was, as from a station; the flow and the days ahead are sampled.
"""

from dataclasses import dataclass, field, replace
from uuid import UUID

from pydantic import TypeAdapter
from tests.validation.advice.truth import TrueColony
from tests.validation.advice.weather import AHEAD, VERSIONS, Known

from combwright.advice.decisions.swarm import QUEENS_FROM
from combwright.advice.plan import Plan, plan
from combwright.advice.situation import Limits, Situation
from combwright.belief.following.causes import TOO_WEAK
from combwright.belief.following.doing import do
from combwright.belief.following.entering import enter
from combwright.belief.following.followed import Followed
from combwright.belief.following.looking import look
from combwright.belief.sharing.pooling import NOTHING
from combwright.kit.catalogue import catalogue
from combwright.simulation.luck import luck
from combwright.simulation.run import run
from combwright.terms.entries import (
    Colony,
    Noted,
    TrayCount,
    Visit,
)
from combwright.terms.set_up import SetUp
from combwright.terms.streams import stream

NOTED: TypeAdapter[Noted] = TypeAdapter(Noted)
SEED = 11  # of the belief; the truth has others
YARD = "yard"
# Days to the next visit unless the plan says sooner: weekly in the season of swarms.
USUAL = {1: 28, 2: 21, 3: 14, 4: 7, 5: 7, 6: 7, 7: 7, 8: 14, 9: 21, 10: 28, 11: 28, 12: 28}


@dataclass
class Follower:
    """Follows the advice from its own notes only.

    It knows the weather that was; the year's flow and the days ahead are sampled.
    """

    known: Known
    members: int
    followed: Followed | None = None
    entries: list[Noted] = field(default_factory=list)
    counting: bool = False
    flagged: list[tuple[float, bool]] = field(default_factory=list)
    keys: int = 0

    def visit(self, colony: TrueColony) -> int:
        """Note, believe, plan, do."""
        on = colony.on
        colony.tally.visits[colony.year] += 1.0
        seen = colony.look(opened=on.month not in {11, 12, 1, 2})
        if self.followed is None:
            self._begin(colony, seen)
        else:
            self._believe(colony, seen)
        assert self.followed is not None
        situation = self._situation(colony)
        decided = plan(situation, with_branches=False)
        done = self._carry_out(colony, decided, seen)
        self.entries += done
        self.followed = do(
            self.followed, done, on, catalogue=catalogue(), seed=SEED, other=lambda *_: None
        )
        self.counting = any("tray in for a mite count" in job for job in decided.jobs)
        self.flagged.append((decided.chances["swarm"], False))
        return self._next(situation, decided)

    # --- believing ----------------------------------------------------------------------------

    def _begin(self, colony: TrueColony, seen: Visit) -> None:
        said = Colony(
            id=self._key(), on=colony.on, colony=colony.name, yard=YARD, hive=colony.hive.key
        )
        stack = self._stack(colony)
        self.followed = enter(
            said,
            [said, stack, seen],
            catalogue(),
            members=self.members,
            versions=VERSIONS,
            seed=SEED,
            pooled=NOTHING,
        )
        self.entries = [said, stack, seen]

    def _believe(self, colony: TrueColony, seen: Visit) -> None:
        assert self.followed is not None
        belief = self.followed.belief
        days = (colony.on - belief.on).days
        colonies = belief.colonies.copy()
        weather = self.known.was(belief.on, colony.on)[belief.shared["year"]]
        run(colonies, weather, luck(SEED, belief.colony, belief.on, days, len(colonies)))
        belief = replace(belief, on=colony.on, colonies=colonies)
        notes: list[Noted] = [seen]
        if self.counting:
            counted = min(7.0, float(days))
            fall = colony.count_fall(counted)
            notes.append(
                TrayCount(
                    id=self._key(), on=colony.on, colony=colony.name, mites=fall, days=counted
                )
            )
        self.followed = look(
            replace(self.followed, belief=belief), notes, versions=VERSIONS, seed=SEED
        )
        self.entries += notes

    def _situation(self, colony: TrueColony) -> Situation:
        assert self.followed is not None
        belief = self.followed.belief
        conditions = self.known.ahead(colony.on)[belief.shared["year"]]
        return Situation(
            colony=colony.name,
            on=colony.on,
            days=USUAL[colony.on.month],
            colonies=belief.colonies,
            standing=self.followed.standing,
            conditions=conditions,
            luck=luck(SEED, colony.name, colony.on, AHEAD, belief.members),
            limits=Limits(),
            history=tuple(entry for entry in self.entries if entry.on < colony.on),
        )

    # --- doing --------------------------------------------------------------------------------

    def _divide(self, colony: TrueColony) -> Noted:
        """Carry out the nucleus method."""
        colony.nucleus_method()
        return self._said(
            "split",
            colony,
            new_colony=f"{colony.name} nuc {self.keys}",
            hive=colony.hive.key,
            frames_of_bees=3.0,
            frames_of_brood=1.0,
            frames_of_stores=1.0,
            goes_with="queen",
        )

    def _carry_out(self, colony: TrueColony, decided: Plan, seen: Visit) -> list[Noted]:
        advised = decided.advised
        done: list[Noted] = []
        if seen.queen_cells in {"charged", "sealed"} and not seen.eggs:
            colony.leave_one_cell()  # the branch for a colony that has swarmed
        if advised.divide or _finds_cells(seen):
            done.append(self._divide(colony))
        if advised.supers_off:
            kilos = colony.take_supers(advised.supers_off)
            done.append(
                self._said("harvest", colony, honey_kg=round(kilos, 1), supers=advised.supers_off)
            )
        if advised.unite:
            colony.is_gone = True
            return done
        done += self._restack(colony, advised.set_up)
        if advised.brood_frames_to_give and not _finds_cells(seen):
            done.append(self._give_brood(colony, advised.brood_frames_to_give))
        if advised.treatment is not None:
            colony.treat(advised.treatment)
            done.append(self._said("treatment", colony, substance=advised.treatment))
        if advised.grams:
            colony.feed(float(advised.grams), advised.sugar_fraction)
            feed = "fondant" if advised.sugar_fraction >= 0.8 else "syrup"
            done.append(
                self._said(
                    "feed",
                    colony,
                    feed=feed,
                    grams=float(advised.grams),
                    sugar_fraction=advised.sugar_fraction,
                )
            )
        divided = advised.divide or _finds_cells(seen)
        without = divided or not seen.eggs
        has_one = divided and colony.on.timetuple().tm_yday >= QUEENS_FROM
        wanted = has_one or (advised.give_queen if without else advised.requeen)
        if wanted and (colony.give_queen() if without else colony.requeen()):
            done.append(self._said("queen", colony, event="introduced", queen_year=colony.on.year))
        return done

    def _give_brood(self, colony: TrueColony, frames: int) -> Noted:
        colony.take_nuc(float(frames), float(frames), 0.5 * frames, "cell")
        return self._said(
            "split",
            colony,
            new_colony=f"{colony.name} nuc {self.keys}",
            hive=colony.hive.key,
            frames_of_bees=float(frames),
            frames_of_brood=float(frames),
            frames_of_stores=0.5 * frames,
            goes_with="cell",
        )

    def _next(self, situation: Situation, decided: Plan) -> int:
        visit = next(each for each in decided.decisions if each.topic == "next visit")
        days = int(visit.inputs["days_at_most"])
        return max(2, min(situation.days, days))

    # --- noting -------------------------------------------------------------------------------

    def _restack(self, colony: TrueColony, set_up: SetUp) -> list[Noted]:
        """Set the stack up and note it; under a new super the feeder comes off."""
        if set_up == colony.set_up:
            return []
        rises = set_up.supers > colony.set_up.supers
        colony.arrange(set_up)
        off = [self._said("change", colony, part="feeder", count=-1)] if rises else []
        return [*off, self._stack(colony)]

    def _stack(self, colony: TrueColony) -> Noted:
        said = colony.set_up.model_dump(exclude={"hive"})
        return self._said("stack", colony, **said)

    def _said(self, kind: str, colony: TrueColony, **said: object) -> Noted:
        whole = {"kind": kind, "id": self._key(), "on": colony.on, "colony": colony.name, **said}
        return NOTED.validate_python(whole)

    def _key(self) -> UUID:
        self.keys += 1
        return UUID(bytes=stream(SEED, "key", self.keys).bytes(16), version=4)

    def start_afresh(self) -> None:
        """Forget a colony that was lost; another takes its place."""
        self.followed, self.entries, self.counting = None, [], False


def _finds_cells(seen: Visit) -> bool:
    """Tell whether the branch for queen cells holds: charged cells in a colony that may swarm."""
    strong = (seen.frames_of_bees or 0.0) >= TOO_WEAK
    return bool(strong and seen.eggs and seen.queen_cells in {"charged", "sealed"})
