"""The situations that a book leaves its colonies in on a day: what is advised rests on them."""

import math
from collections.abc import Sequence
from collections.abc import Set as AbstractSet
from dataclasses import dataclass, field, replace
from datetime import date, timedelta
from functools import cached_property
from typing import Final

from combwright.advice.decisions.disease import noted_signs
from combwright.advice.decisions.visits import LONGEST_WAIT
from combwright.advice.prices import Prices
from combwright.advice.season_ahead import SeasonDays, season_ends
from combwright.advice.situation import MARGIN_DAYS, HoneyWaits, Limits, Situation
from combwright.belief.following.replay import Followed, Replay
from combwright.records.replay.colonies import standings
from combwright.records.replay.far_days import EARLIEST
from combwright.records.replay.first_day import known_on, newcomers
from combwright.records.replay.on_shelf import on_shelf
from combwright.records.replay.withheld import waits_on
from combwright.records.store.book_handle import Book
from combwright.services.beliefs.resumed_replay import resumed_replay
from combwright.services.rounds.price_list import prices_on
from combwright.services.weather.surroundings import Surroundings, surroundings
from combwright.simulation.luck import luck
from combwright.terms.dated import dated
from combwright.terms.entries import PAPERS, Kit, Limit, Noted, Product, Yard
from combwright.terms.errors import NotFoundError, OutOfRangeError

SYRUP_FRACTION: Final = 0.60  # 1.5 : 1 by weight
LONGEST_SILENCE_DAYS: Final = 730  # after the last note, beyond which nothing is said; judgement
LOOK_AHEAD_DAYS: Final = LONGEST_WAIT + 1  # for the next visit


@dataclass(frozen=True)
class AskedRound:
    """What round is asked for."""

    on: date
    yard: str | None = None
    days: int = 7
    members: int = 200
    seed: int = 1
    limits: Limits = field(default_factory=Limits)


@dataclass(frozen=True)
class Beside:
    """What a decision about a colony must know beside its belief, by the names of a situation."""

    days: int
    limits: Limits
    prices: Prices
    syrup_fraction: float
    drawn_frames_to_hand: bool
    history: tuple[Noted, ...]
    signs_at: str | None
    honey_waits: HoneyWaits | None


@dataclass(frozen=True)
class Situations:
    """A book's beliefs up to a day, and the days after it.

    ``too_old`` are notes of a day that nobody can mean, which an older book may hold: none counts.
    """

    asked: AskedRound
    entries: tuple[Noted, ...]
    around: Surroundings
    replay: Replay
    newcomers: AbstractSet[str] = frozenset()
    too_old: tuple[Noted, ...] = ()

    def of(self, followed: Followed) -> Situation:
        """Give what a decision about a colony must know."""
        asked, belief = self.asked, followed.belief
        days = max(asked.days + MARGIN_DAYS, LOOK_AHEAD_DAYS)
        until = asked.on + timedelta(days=days)
        return Situation(
            colony=belief.colony,
            on=asked.on,
            colonies=belief.colonies,
            standing=followed.standing,
            conditions=self.around.season(followed.yard, asked.on, until)[belief.shared["year"]],
            luck=luck(asked.seed, belief.colony, asked.on, days, belief.members),
            season=SeasonDays(
                self.around.season(followed.yard, asked.on, season_ends(asked.on, days)),
                belief.shared["year"],
            ),
            pitch_mm=followed.standing.pitch_mm,
            robbed=belief.chances.get("robbed", 0.0),
            **vars(self.beside(belief.colony, followed.yard)),
        )

    def beside(self, colony: str, yard: str) -> Beside:
        """Give what the book says beside the belief of a colony in a yard."""
        return Beside(
            self.asked.days,
            self._limits,
            self._prices,
            SYRUP_FRACTION,
            self._has_drawn_frames,
            self._history.get(colony, ()),
            self._signs_beside(colony, yard),
            self._honey_waits.get(colony),
        )

    @cached_property
    def yards(self) -> list[Yard]:
        """The yards as last noted."""
        return list({each.yard: each for each in self.entries if isinstance(each, Yard)}.values())

    def is_suspected(self, colony: str) -> bool:
        """Tell whether signs of disease stand noted at a colony."""
        return colony in self._with_signs

    def driven_to(self, yard: str) -> tuple[bool, float]:
        """Give a yard's place in the order of driving: the keeper's own, and shut ones last."""
        stops = {each.yard: each.stop for each in self.yards}
        return self.is_shut(yard), stops.get(yard) or math.inf

    def is_shut(self, yard: str) -> bool:
        """Tell whether signs of disease stand noted at a colony of a yard."""
        return yard in self._with_signs.values()

    def _signs_beside(self, colony: str, yard: str) -> str | None:
        sick = (name for name, place in self._with_signs.items() if place == yard)
        return next((name for name in sick if name != colony), None)

    @cached_property
    def _with_signs(self) -> dict[str, str]:
        """Yards of the colonies at which signs of disease stand noted, by colony."""
        sick = [colony for colony, entries in self._history.items() if noted_signs(entries)]
        if not sick:
            return {}
        standing = standings(self.entries, self.replay.catalogue, self.asked.on - timedelta(days=1))
        return {
            colony: standing[colony].yard
            for colony in sick
            if colony in standing and standing[colony].ended is None
        }

    @cached_property
    def _limits(self) -> Limits:
        return limits_on(self.entries, self.asked.on, self.asked.limits)

    @cached_property
    def _prices(self) -> Prices:
        return prices_on(self.entries, self.asked.on)

    @cached_property
    def on_shelf(self) -> dict[str, float]:
        """Kit that should be left in the morning, by what was counted up to the day."""
        on = self.asked.on
        some = (e for e in self.entries if e.on < on or (e.on == on and isinstance(e, Kit)))
        return {item: one.left for item, one in on_shelf(some).items()}

    @cached_property
    def _has_drawn_frames(self) -> bool:
        """Tell whether there are drawn frames to hand; who never counted them has some."""
        return self.on_shelf.get("drawn frame", 1.0) > 0.0

    @cached_property
    def _honey_waits(self) -> dict[str, HoneyWaits]:
        on = self.asked.on
        before = (each for each in self.entries if each.on < on or isinstance(each, Product))
        return {
            colony: HoneyWaits(one.free, one.product)
            for colony, one in waits_on(before, on).items()
        }

    @cached_property
    def _history(self) -> dict[str, tuple[Noted, ...]]:
        """Entries before the day by the colony that they are of."""
        found: dict[str, list[Noted]] = {}
        for entry in self.entries:
            colony = vars(entry).get("colony")
            if colony is not None and entry.on < self.asked.on:
                found.setdefault(colony, []).append(entry)
        return {colony: tuple(entries) for colony, entries in found.items()}

    def follow(self, colony: str) -> Followed:
        """Follow one colony; an unknown or ended one is answered with those that stand."""
        found = self.replay.follow(colony, self.asked.on)
        if found is None or found.has_ended:
            known = ", ".join(self.replay.colonies)
            raise NotFoundError(
                f"No colony “{colony}” stands in the book on {dated(self.asked.on)}.",
                remedy=f"The book knows: {known}.",
            )
        return found


def situations_of(book: Book, asked: AskedRound) -> Situations:
    """Read a book and make ready to follow its colonies to the day asked for."""
    too_old, written = _too_old(book.now().entries)
    entries = known_on(written, asked.on)
    first = _first_note(entries, asked.on, book.place)
    until = season_ends(asked.on, max(asked.days + MARGIN_DAYS, LOOK_AHEAD_DAYS))
    around = surroundings(book, first, until, members=asked.members, seed=asked.seed)
    replay = resumed_replay(
        book, entries, around.season, on=asked.on, members=asked.members, seed=asked.seed
    )
    return Situations(asked, tuple(entries), around, replay, newcomers(written, asked.on), too_old)


def _too_old(entries: Sequence[Noted]) -> tuple[tuple[Noted, ...], list[Noted]]:
    """Tell notes of a day that nobody can mean from the others; papers may be of any age."""
    old = [each.on < EARLIEST and not isinstance(each, PAPERS) for each in entries]
    found = tuple(each for each, is_old in zip(entries, old, strict=True) if is_old)
    return found, [each for each, is_old in zip(entries, old, strict=True) if not is_old]


def usual_day(book: Book, today: date) -> date:
    """Give the day that is meant when none is asked for: today, or the day after the last note.

    The latter for a book that lies in the future, as the demo's does.
    """
    last = book.now().last_day(today)
    return today if last is None else max(today, last + timedelta(days=1))


def limits_on(entries: Sequence[Noted], on: date, usual: Limits | None = None) -> Limits:
    """Give the limits on harm as the keeper last set them up to a day."""
    set_by_keeper = {
        entry.harm.replace(" ", "_"): entry.percent / 100.0
        for entry in entries
        if isinstance(entry, Limit) and entry.on <= on
    }
    return replace(usual or Limits(), **set_by_keeper)


def _first_note(entries: Sequence[Noted], on: date, place: str) -> date:
    days = [entry.on for entry in entries if not isinstance(entry, PAPERS)]
    if not days:
        raise NotFoundError(
            "The book is empty.", where=place, remedy="Add notes with “combwright book add”."
        )
    if on <= min(days):
        raise OutOfRangeError(
            f"{dated(on)} lies before the first note, which is of {dated(min(days))}.",
            where=place,
            remedy="Ask for a later day.",
        )
    last = max(day for day in days if day < on)
    if (on - last).days > LONGEST_SILENCE_DAYS:
        raise OutOfRangeError(
            f"{dated(on)} is more than two years after the last note, of "
            f"{dated(last)}: nothing can be said of it.",
            where=place,
            remedy="Ask for an earlier day, or note what has been seen since.",
        )
    return min(days)
