"""The keeper who follows Combwright: a belief from noisy notes, a plan, and the plan carried out.

What is done is done to the colony as it is and, through the book's entries, to the belief. The
keeper knows the weather that was, as from a station; the flow and the days ahead are sampled.
"""

from dataclasses import dataclass, field, replace
from uuid import UUID

from pydantic import TypeAdapter
from tests.validation.advice.truth import TrueColony
from tests.validation.advice.weather import AHEAD, VERSIONS, Known

from combwright.advice.actions import of_kind
from combwright.advice.bee_acts import CutCells, Divide, EggFrame, Give, Requeen, Uniting
from combwright.advice.decisions.found import is_swarm_season
from combwright.advice.decisions.swarm import repaired
from combwright.advice.kit_acts import Counting, Feeding, SuperOff, Treat
from combwright.advice.nuc_worth import PARAMETERS as NUCS
from combwright.advice.plan import Plan, plan
from combwright.advice.prices import Prices
from combwright.advice.season_ahead import SeasonDays, season_ends
from combwright.advice.situation import Limits, Situation
from combwright.belief.following.causes import TOO_WEAK
from combwright.belief.following.doing import do
from combwright.belief.following.entering import enter
from combwright.belief.following.followed import Followed
from combwright.belief.following.looking import look
from combwright.belief.sharing.pooling import NOTHING
from combwright.belief.worlds import WORLDS
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
FORTNIGHT = 17  # days: to the next visit and a little more
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
    lacks: str = ""
    prices: Prices = field(default_factory=Prices)

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
        done = self._carry_out(colony, decided, seen, situation)
        self.entries += done
        self.followed = do(
            self.followed, done, on, catalogue=catalogue(), seed=SEED, other=lambda *_: None
        )
        self.counting = bool(decided.asks(Counting)) and self.lacks != "looking"
        self.flagged.append((decided.chances["swarm"], False))
        return self._next(situation, decided)

    # --- believing ----------------------------------------------------------------------------

    def _begin(self, colony: TrueColony, seen: Visit) -> None:
        said = Colony(
            id=self._key(),
            on=colony.on,
            colony=colony.name,
            yard=YARD,
            hive=colony.hive.key,
            queen_year=colony.queen_since.year,
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
        chance = luck(SEED, belief.colony, belief.on, days, len(colonies))
        run(colonies, weather, chance, worlds=WORLDS)
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
        days = (season_ends(colony.on, AHEAD) - colony.on).days
        ahead, year = self.known.ahead(colony.on, days), belief.shared["year"]
        return Situation(
            colony=colony.name,
            on=colony.on,
            days=USUAL[colony.on.month],
            colonies=belief.colonies,
            standing=self.followed.standing,
            conditions=ahead[:, :AHEAD][year],
            luck=luck(SEED, colony.name, colony.on, AHEAD, belief.members),
            limits=Limits(),
            history=tuple(self.entries),
            prices=self.prices,
            season=SeasonDays(ahead[:, :FORTNIGHT] if self.lacks == "season" else ahead, year),
        )

    # --- doing --------------------------------------------------------------------------------

    def _divide(self, colony: TrueColony, how: Divide) -> Noted:
        """Carry out the nucleus method, or sell the queen with a nuc on purpose."""
        if how.way == "on purpose":
            colony.nuc_with_her()
        else:
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

    def _carry_out(
        self, colony: TrueColony, decided: Plan, seen: Visit, situation: Situation
    ) -> list[Noted]:
        done: list[Noted] = []
        if seen.queen_cells in {"charged", "sealed"} and not seen.eggs:
            colony.leave_one_cell()  # the branch for a colony that has swarmed
        told = decided.actions
        if _finds_cells(seen) and not decided.asks(Divide) + decided.asks(CutCells):
            told = (*told, *repaired(situation))
        divides = tuple(each for each in of_kind(told, Divide) if self._may(each))
        if divides:
            done.append(self._divide(colony, divides[0]))
        elif of_kind(told, CutCells) and self.lacks != "swarm":
            colony.cut_cells()
            done.append(self._said("queen", colony, event="cells knocked down"))
        done += self._take_honey(colony, decided)
        if decided.asks(Uniting):
            colony.is_gone = True
            return done
        done += self._restack(colony, decided.set_up)
        if not _finds_cells(seen):
            gifts = () if self.lacks == "nucs" else decided.asks(Give)
            done += [self._give_brood(colony, one) for one in gifts]
        for treat in decided.asks(Treat):
            colony.treat(treat.substance)
            done.append(self._said("treatment", colony, substance=treat.substance))
        done += [self._feed(colony, one) for one in decided.asks(Feeding)]
        if self._gets_a_queen(colony, decided, seen, divides):
            done.append(self._said("queen", colony, event="introduced", queen_year=colony.on.year))
        return done

    def _may(self, how: Divide) -> bool:
        """Tell whether a division is among the parts of the advice that are followed."""
        return self.lacks != ("nucs" if how.way == "on purpose" else "swarm")

    def _gets_a_queen(
        self,
        colony: TrueColony,
        decided: Plan,
        seen: Visit,
        divides: tuple[Divide, ...],
    ) -> bool:
        """Give a queen at a division where one is worth it, or where a test frame asks for one."""
        if divides and divides[0].way == "on purpose":
            return True  # given with the nuc
        if self.lacks == "queens":
            return False
        if divides:
            return divides[0].successor == "mated queen" and colony.give_queen()
        given = decided.asks(Requeen)
        if given:
            return colony.give_queen() if given[0].is_lost else colony.requeen()
        if (decided.asks(EggFrame) or colony.is_tested) and not seen.eggs:
            return colony.is_queenless_by_test_frame() and colony.give_queen()
        return False

    def _take_honey(self, colony: TrueColony, decided: Plan) -> list[Noted]:
        off = sum(each.supers for each in decided.asks(SuperOff) if each.why != "must be fed")
        if not off:
            return []
        kilos = colony.take_supers(off)
        return [self._said("harvest", colony, honey_kg=round(kilos, 1), supers=off)]

    def _feed(self, colony: TrueColony, portion: Feeding) -> Noted:
        colony.feed(float(portion.grams), portion.sugar_fraction)
        said = {"feed": portion.feed, "grams": float(portion.grams)}
        return self._said("feed", colony, **said, sugar_fraction=portion.sugar_fraction)

    def _give_brood(self, colony: TrueColony, gift: Give) -> Noted:
        frames = gift.frames_of_brood
        bees, stores = (NUCS[f"{what}_a_frame"].value * frames for what in ("bees", "stores"))
        colony.take_nuc(float(frames), bees, stores, gift.queen or "cell")
        return self._said(
            "split",
            colony,
            new_colony=f"{colony.name} nuc {self.keys}",
            hive=colony.hive.key,
            frames_of_bees=bees,
            frames_of_brood=float(frames),
            frames_of_stores=stores,
            goes_with=gift.queen or "cell",
        )

    def _next(self, situation: Situation, decided: Plan) -> int:
        if self.lacks == "looking":
            return situation.days
        return max(2, (decided.next_visit - situation.on).days)

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
    found = seen.eggs and seen.queen_cells in {"charged", "sealed"}
    return bool(strong and found and is_swarm_season(seen.on))
