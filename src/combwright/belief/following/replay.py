"""From the book to what is believed: every colony's notes, in order, through the filter."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from datetime import date
from itertools import groupby
from typing import Final, Protocol

from combwright.belief.following.causes import Since
from combwright.belief.following.doing import divide, do
from combwright.belief.following.entering import enter
from combwright.belief.following.followed import Followed
from combwright.belief.following.keys import Keys, Season
from combwright.belief.following.looking import look
from combwright.belief.following.noted import NotesOfColonies
from combwright.belief.numbers import number
from combwright.belief.sharing.pooling import NOTHING, Pooled
from combwright.belief.weighing.filter import Belief
from combwright.belief.worlds import WORLDS
from combwright.kit.catalogue import Catalogue
from combwright.kit.standing import another_day
from combwright.simulation.columns import copied
from combwright.simulation.luck import luck
from combwright.simulation.run import run
from combwright.terms.entries import PAPERS, Colony, Noted, Split

__all__ = ["Followed", "KeptStates", "Replay", "Season"]

CROWD: Final = int(number("crowd"))  # times more members weigh notes than are handed on


class KeptStates(Protocol):
    """Where states on the way are kept, by a key that stands for all that led to them."""

    def get(self, colony: str, key: str) -> Followed | None:
        """Give a state that was put there, if it still is."""

    def put(self, colony: str, key: str, followed: Followed, *, number: int, of: int) -> None:
        """Offer a state: that after day ``number`` of ``of`` days with entries."""


class Replay:
    """Follows the colonies of one book; splits and unites make one depend on another."""

    def __init__(
        self,
        notes: NotesOfColonies,
        season: Season,
        catalogue: Catalogue,
        *,
        members: int,
        seed: int,
        pooled: Mapping[str, Pooled] | None = None,
        kept: KeptStates | None = None,
        version: str = "",
    ) -> None:
        self.season, self.catalogue = season, catalogue
        self.members, self.seed = members, seed
        self.crowd = CROWD * members
        self.pooled, self.kept = {} if pooled is None else pooled, kept
        self._by_colony, self.doubts = notes.of, notes.doubts
        self._followed: dict[tuple[str, date], Followed] = {}
        root = f"{version} {members} {seed} {sorted(self.doubts.items())}"
        self._keys = Keys(self._by_colony, season, self.pooled, root)

    @property
    def colonies(self) -> list[str]:
        """Names of all colonies that notes speak of, in the order of their first entry."""
        return list(self._by_colony)

    def strangers(self, on: date) -> list[str]:
        """Names in notes before a day of colonies that had not come into the book by then."""
        return [
            name
            for name, entries in self._by_colony.items()
            if entries[0].on < on and not self._comes_in(name, on)
        ]

    def key(self, colony: str, on: date) -> tuple[str, str]:
        """Tell one state of a colony's notes before a day from another, and name its yard."""
        return self._keys.before(colony, on)

    def follow(self, colony: str, on: date) -> Followed | None:
        """Follow a colony to the morning of a day; ``None`` when it is not in the book by then.

        What was noted on that day itself is not yet taken in.
        """
        found = self._walk(colony, self._before(colony, on))
        if found is None:
            return None
        # thinned before the days since the last note: nobody weighs another one on them
        return self._wait(replace(found, belief=found.belief.every(CROWD)), on)

    def course(self, colony: str, on: date) -> list[tuple[Followed, Followed]]:
        """Follow a colony to a day, keeping how it stood on the way.

        Gives for each day with entries the belief in the morning, before they were taken in, and
        that after all was seen and done.
        """
        passed: list[tuple[Followed, Followed]] = []
        self._walk(colony, self._before(colony, on), passed)
        return passed

    def _before(self, colony: str, on: date) -> list[Noted]:
        return [entry for entry in self._by_colony.get(colony, []) if entry.on < on]

    def _comes_in(self, colony: str, on: date) -> bool:
        """Tell whether a colony came into the book before a day, by itself or from one that did."""
        first = _first_of(colony, self._before(colony, on))
        if not isinstance(first, Split):
            return first is not None
        bought = any(
            isinstance(entry, Colony) and entry.colony == first.colony and entry.on == first.on
            for entry in self._by_colony[first.colony]
        )
        return bought or self._comes_in(first.colony, first.on)

    def _full(self, colony: str, on: date) -> Followed | None:
        """Follow a colony with all the members that weigh its notes."""
        at = (colony, on)
        if at not in self._followed:
            found = self._walk(colony, self._before(colony, on))
            if found is None:
                return None
            self._followed[at] = self._wait(found, on)
        return self._followed[at]

    def _walk(
        self,
        colony: str,
        past: Sequence[Noted],
        passed: list[tuple[Followed, Followed]] | None = None,
    ) -> Followed | None:
        """Go through the days with entries: all of them, or from the last one that is kept."""
        days = [(day, list(found)) for day, found in groupby(past, lambda entry: entry.on)]
        early = next((n for n, (_, e) in enumerate(days) if _first_of(colony, e)), len(days))
        days, before = days[early:], [entry for _, found in days[:early] for entry in found]
        if not days:
            return None
        keys = list(self._keys.chain(colony, days)) if self.kept else []
        start, followed = self._resume(colony, keys) if passed is None else (0, None)
        for place in range(start, len(days)):
            day, entries = days[place]
            morning = self._morning(colony, followed, day, entries)
            if morning is None:
                return None
            if followed is None:
                morning = morning.told(*map(_too_early, of_bees(before)))
            if morning.has_ended:
                followed = morning.told(*map(_too_late, of_bees(entries)))
                continue
            followed = self._look(morning, entries if followed else _still(entries))
            followed = do(
                followed,
                entries,
                day,
                catalogue=self.catalogue,
                seed=self.seed,
                other=self._full,
            )
            if passed is not None:
                passed.append((morning, followed))
            if self.kept:
                self.kept.put(colony, keys[place], followed, number=place, of=len(days))
        return followed

    def _morning(
        self, colony: str, followed: Followed | None, day: date, entries: Sequence[Noted]
    ) -> Followed | None:
        """Give a colony in the morning of a day with entries: as it came in, or some days older."""
        return self._wait(followed, day) if followed else self._enter(colony, entries)

    def _look(self, followed: Followed, entries: Sequence[Noted]) -> Followed:
        on = followed.belief.on
        versions = len(self.season(followed.yard, on, on))
        return look(followed, entries, versions=versions, seed=self.seed)

    def _enter(self, colony: str, entries: Sequence[Noted]) -> Followed | None:
        """Begin a colony from its first entries: bought or overwintered, or split from another."""
        first = _first_of(colony, entries)
        if isinstance(first, Split):
            return self._split_off(first)
        if first is None:
            return None
        return enter(
            first,
            entries,
            self.catalogue,
            members=self.crowd,
            versions=len(self.season(first.yard, first.on, first.on)),
            seed=self.seed,
            pooled=self.pooled.get(first.yard, NOTHING),
            doubts=self.doubts,
        )

    def _split_off(self, entry: Split) -> Followed | None:
        parent = self._seen(entry.colony, entry.on)
        if parent is None:
            return None
        belief = parent.belief
        new, standing = divide(copied(belief.colonies), entry, self.catalogue)
        since = (Since.now(new), Since.now(new))
        young = Belief(entry.new_colony, entry.on, new, belief.shared, since, entry.on)
        return Followed(young, standing, parent.yard)

    def _seen(self, colony: str, on: date) -> Followed | None:
        """Follow a colony to a day, with what was seen on it but before anything was done."""
        today = [entry for entry in self._by_colony.get(colony, []) if entry.on == on]
        followed = self._full(colony, on)
        if followed is not None:
            return self._look(followed, today)
        bought = any(isinstance(entry, Colony) for entry in today)
        return self._enter(colony, today) if bought else None

    def _wait(self, followed: Followed, until: date) -> Followed:
        """Let the days pass until the morning of a day."""
        belief = followed.belief
        days = (until - belief.on).days
        if days <= 0 or followed.has_ended:
            return followed
        colonies = copied(belief.colonies)
        weather = self.season(followed.yard, belief.on, until)[belief.shared["year"]]
        chance = luck(self.seed, belief.colony, belief.on, days, len(colonies))
        run(colonies, weather, chance, worlds=WORLDS)
        return replace(
            followed,
            belief=replace(belief, on=until, colonies=colonies),
            standing=another_day(followed.standing),
        )

    def _resume(self, colony: str, keys: Sequence[str]) -> tuple[int, Followed | None]:
        for place in range(len(keys) - 1, -1, -1):
            found = self.kept.get(colony, keys[place]) if self.kept else None
            if found is not None:
                return place + 1, found
        return 0, None


def _still(entries: Sequence[Noted]) -> list[Noted]:
    """Give what of the first day was not yet taken in as the colony's description."""
    described = any(isinstance(entry, Colony) for entry in entries)
    return [entry for entry in entries if not (described and entry.kind == "visit")]


def _enters(entry: Noted, colony: str) -> bool:
    if isinstance(entry, Split):
        return entry.new_colony == colony
    return isinstance(entry, Colony) and entry.colony == colony


def _first_of(colony: str, entries: Sequence[Noted]) -> Colony | Split | None:
    """Give the entry with which a colony comes into the book, if it is among these."""
    found = [entry for entry in entries if _enters(entry, colony)]
    first = found[0] if found else None
    return first if isinstance(first, Colony | Split) else None


def of_bees(entries: Iterable[Noted]) -> list[Noted]:
    """Leave out papers, such as where a honey came from: the belief does without them anyhow."""
    return [each for each in entries if not isinstance(each, PAPERS)]


def _too_early(entry: Noted) -> str:
    return (
        f"{entry.on:%d %B %Y}: this {entry.kind} was written before the colony came into the book "
        "and is left out of the belief."
    )


def _too_late(entry: Noted) -> str:
    return (
        f"{entry.on:%d %B %Y}: this {entry.kind} was written after the colony had left the book "
        "and is left out of the belief."
    )
