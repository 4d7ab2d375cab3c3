"""From the book to what is believed: every colony's notes, in order, through the filter."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from combwright.belief import observation
from combwright.belief.asking import questions
from combwright.belief.filter import Belief, update
from combwright.belief.scoring import Scored, noted, score
from combwright.belief.standing import Standing, act, after_change, stack_noted, usual
from combwright.kit.catalogue import Catalogue
from combwright.simulation.begin import Described, begin
from combwright.simulation.dividing import split, unite
from combwright.simulation.luck import luck, stream
from combwright.simulation.run import run
from combwright.terms.entries import (
    Change,
    Colony,
    End,
    Noted,
    Split,
    Stack,
    TrayCount,
    Unite,
    Visit,
    WashCount,
)

Floats = NDArray[np.float64]
Season = Callable[[str, date, date], Floats]  # yard, first day, day after the last -> conditions
# What is seen comes before what is done on the same day.
ORDER: Final = {"colony": 0, "split": 1, "visit": 2, "tray count": 3, "wash count": 4}


@dataclass(frozen=True)
class Followed:
    """A colony followed through the book to a day."""

    belief: Belief
    standing: Standing
    yard: str
    scored: tuple[Scored, ...] = ()
    notes: Mapping[str, tuple[tuple[date, float], ...]] = field(default_factory=dict)
    has_ended: bool = False
    pitch_mm: float | None = None
    last_visit: date | None = None


class Replay:
    """Follows the colonies of one book; splits and unites make one depend on another."""

    def __init__(
        self,
        entries: Sequence[Noted],
        season: Season,
        catalogue: Catalogue,
        *,
        members: int,
        seed: int,
    ) -> None:
        self.season, self.catalogue = season, catalogue
        self.members, self.seed = members, seed
        self._by_colony: dict[str, list[Noted]] = {}
        for entry in entries:
            for name in _concerned(entry):
                self._by_colony.setdefault(name, []).append(entry)
        self._followed: dict[tuple[str, date], Followed] = {}

    @property
    def colonies(self) -> list[str]:
        """Names of all colonies in the book, in the order of their first entry."""
        return list(self._by_colony)

    def follow(self, colony: str, on: date) -> Followed | None:
        """Follow a colony to the morning of a day; ``None`` when it is not in the book by then.

        What was noted on that day itself is not yet taken in.
        """
        key = (colony, on)
        if key not in self._followed:
            past = [entry for entry in self._by_colony.get(colony, []) if entry.on < on]
            past.sort(key=lambda entry: (entry.on, ORDER.get(entry.kind, 9)))
            found = self._walk(colony, past, on)
            if found is None:
                return None
            self._followed[key] = found
        return self._followed[key]

    def _walk(self, colony: str, past: Sequence[Noted], on: date) -> Followed | None:
        followed: Followed | None = None
        for day, entries in _by_day(past):
            if followed is None:
                followed = self._enter(colony, entries)
                if followed is None:
                    continue
            else:
                followed = self._wait(followed, day)
                followed = self._look(followed, entries)
            followed = self._do(followed, entries, day)
        return self._wait(followed, on) if followed is not None else None

    def _enter(self, colony: str, entries: Sequence[Noted]) -> Followed | None:
        """Begin a colony from its first entries: bought or overwintered, or split from another."""
        for entry in entries:
            if isinstance(entry, Colony):
                return self._begin(colony, entry, entries)
            if isinstance(entry, Split) and entry.new_colony == colony:
                return self._split_off(entry)
        return None

    def _begin(self, colony: str, entry: Colony, entries: Sequence[Noted]) -> Followed:
        hive = self.catalogue.hive(entry.hive)
        standing, pitch = Standing(hive, usual(hive)), None
        for other in entries:
            if isinstance(other, Stack):
                standing = stack_noted(standing, other, self.catalogue)
                pitch = other.pitch_mm or pitch
        described = _described([e for e in entries if isinstance(e, Visit)], entry.queen_year)
        # what the frames' changes of the first day added was not there when it was looked at
        before = standing
        for other in entries:
            if isinstance(other, Change):
                before = after_change(before, other.model_copy(update={"count": -other.count}))
        colonies = begin(
            hive,
            before.set_up,
            described,
            on=entry.on,
            members=self.members,
            seed=self.seed,
            colony=colony,
        )
        belief = Belief(colony, entry.on, colonies, entry.on)
        seen = Followed(belief, before, entry.yard, pitch_mm=pitch)
        return self._remember(seen, entries)

    def _split_off(self, entry: Split) -> Followed | None:
        parent = self.follow(entry.colony, entry.on)
        if parent is None:
            return None
        hive = self.catalogue.hive(entry.hive)
        standing = Standing(hive, usual(hive))
        new = split(
            parent.belief.colonies.copy(),
            hive,
            standing.set_up,
            frames_of_bees=entry.frames_of_bees,
            frames_of_brood=entry.frames_of_brood,
            frames_of_stores=entry.frames_of_stores,
            goes_with=entry.goes_with,
        )
        belief = Belief(entry.new_colony, entry.on, new, entry.on)
        return Followed(belief, standing, parent.yard)

    def _wait(self, followed: Followed, until: date) -> Followed:
        """Let the days pass until the morning of a day."""
        belief = followed.belief
        days = (until - belief.on).days
        if days <= 0 or followed.has_ended:
            return followed
        colonies = belief.colonies.copy()
        weather = self.season(followed.yard, belief.on, until)
        run(colonies, weather, luck(self.seed, belief.colony, belief.on, days, len(colonies)))
        return replace(followed, belief=replace(belief, on=until, colonies=colonies))

    def _look(self, followed: Followed, entries: Iterable[Noted]) -> Followed:
        """Take in what was seen on a day."""
        entries = list(entries)
        seen = [e for e in entries if isinstance(e, Visit | TrayCount | WashCount)]
        if not seen:
            return followed
        before = followed.belief
        scored = score(
            before,
            [e for e in seen if isinstance(e, Visit)],
            followed.notes,
            followed.standing.hive.frame.stores_full_kg,
        )
        described = _described([e for e in seen if isinstance(e, Visit)], None)
        fresh = begin(
            followed.standing.hive,
            followed.standing.set_up,
            described,
            on=before.on,
            members=max(20, before.members // 4),
            seed=self.seed + before.on.toordinal(),
            colony=before.colony,
        )

        def log_likelihood(colonies: Any) -> Floats:
            total = np.zeros(len(colonies))
            for entry in seen:
                if isinstance(entry, Visit):
                    empty_kg = followed.standing.empty_kg
                    total += observation.of_visit(entry, colonies, empty_kg=empty_kg)
                elif isinstance(entry, TrayCount):
                    total += observation.of_tray(entry, colonies)
                else:
                    total += observation.of_wash(entry, colonies)
            return total

        after = update(before, log_likelihood, fresh, seed=self.seed)
        after = replace(after, questions=questions(scored, after))
        followed = replace(followed, belief=after, scored=(*followed.scored, *scored))
        return self._remember(followed, entries)

    def _remember(self, followed: Followed, entries: Iterable[Noted]) -> Followed:
        notes = {name: list(values) for name, values in followed.notes.items()}
        last_visit = followed.last_visit
        for entry in entries:
            if isinstance(entry, Visit):
                last_visit = entry.on
                for quantity, value in noted(
                    entry, followed.standing.hive.frame.stores_full_kg
                ).items():
                    notes.setdefault(quantity, []).append((entry.on, value))
        kept = {name: tuple(values) for name, values in notes.items()}
        return replace(followed, notes=kept, last_visit=last_visit)

    def _do(self, followed: Followed, entries: Iterable[Noted], day: date) -> Followed:
        """Do to the members what was done on a day."""
        belief, standing = followed.belief, followed.standing
        colonies = belief.colonies.copy()
        rng = stream(self.seed, belief.colony, "done", day.toordinal())
        yard, ended, pitch = followed.yard, followed.has_ended, followed.pitch_mm
        for entry in entries:
            if isinstance(entry, Split) and entry.colony == belief.colony:
                hive = self.catalogue.hive(entry.hive)
                split(
                    colonies,
                    hive,
                    usual(hive),
                    frames_of_bees=entry.frames_of_bees,
                    frames_of_brood=entry.frames_of_brood,
                    frames_of_stores=entry.frames_of_stores,
                    goes_with=entry.goes_with,
                )
            elif isinstance(entry, Unite):
                ended = ended or entry.colony == belief.colony
                self._join(entry, colonies, belief.colony)
            elif isinstance(entry, End):
                ended = True
            elif entry.kind == "move":
                yard = entry.yard
            else:
                standing = act(entry, colonies, standing, self.catalogue, rng)
            if isinstance(entry, Stack) and entry.pitch_mm is not None:
                pitch = entry.pitch_mm
        return replace(
            followed,
            belief=replace(belief, colonies=colonies),
            standing=standing,
            yard=yard,
            has_ended=ended,
            pitch_mm=pitch,
        )

    def _join(self, entry: Unite, colonies: Any, colony: str) -> None:
        if entry.into != colony:
            return
        other = self.follow(entry.colony, entry.on)
        if other is not None:
            unite(other.belief.colonies.copy(), colonies)


def _concerned(entry: Noted) -> list[str]:
    """Colonies that an entry speaks of."""
    names = [getattr(entry, name, None) for name in ("colony", "new_colony", "into")]
    return [name for name in names if name is not None]


def _by_day(entries: Sequence[Noted]) -> list[tuple[date, list[Noted]]]:
    days: dict[date, list[Noted]] = {}
    for entry in entries:
        days.setdefault(entry.on, []).append(entry)
    return list(days.items())


def _described(visits: Sequence[Visit], queen_year: int | None) -> Described:
    if not visits:
        return Described(queen_year=queen_year)
    visit = visits[-1]
    stores = visit.stores_kg
    if stores is None and visit.frames_of_stores is not None:
        stores = 2.1 * visit.frames_of_stores
    has_queen = True if visit.eggs or visit.queen_seen else None
    return Described(
        frames_of_bees=visit.frames_of_bees,
        frames_of_brood=visit.frames_of_brood,
        stores_kg=stores,
        queen_year=queen_year,
        has_queen=has_queen,
    )
