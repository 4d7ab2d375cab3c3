"""What stands in a book, looked at by colony, by day, by yard."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date, timedelta
from functools import cached_property

from combwright.kit.catalogue import Catalogue
from combwright.records.replay.colonies import KnownColony, standings
from combwright.records.replay.corrections import names, standing
from combwright.records.replay.far_days import last_meant
from combwright.records.replay.first_day import openings
from combwright.records.replay.known_honey import KnownHoney, KnownLot, known_honey, known_lots
from combwright.records.replay.known_orders import KnownOrder, known_orders
from combwright.records.replay.known_queens import (
    KnownBatch,
    KnownQueen,
    known_batches,
    known_queens,
)
from combwright.records.replay.on_shelf import OnShelf, on_shelf
from combwright.records.store.words_index import WordsIndex
from combwright.terms.entries import PAPERS, AnyEntry, Correction, Kit, Noted, Wording, Yard
from combwright.terms.errors import NotFoundError
from combwright.terms.place_word import OURS, USUAL, PlaceWord, words_of

A_WEEK = timedelta(days=7)


@dataclass(frozen=True)
class Contents:
    """The book as it stood at one moment."""

    history: Sequence[AnyEntry] = field(repr=False)
    kit: Catalogue = field(repr=False)
    last: int = 0
    weather: str = ""

    @cached_property
    def entries(self) -> list[Noted]:
        """What stands, by day."""
        return standing(self.history)

    @cached_property
    def standings(self) -> Mapping[str, KnownColony]:
        """Every colony as it stands after the last note."""
        return standings(self.entries, self.kit)

    @cached_property
    def _by_colony(self) -> Mapping[str, list[Noted]]:
        found: defaultdict[str, list[Noted]] = defaultdict(list)
        for each in self.entries:
            for name in names(each):
                found[name].append(each)
        return found

    @cached_property
    def _by_day(self) -> Mapping[date, list[Noted]]:
        found: defaultdict[date, list[Noted]] = defaultdict(list)
        for each in self.entries:
            found[each.on].append(each)
        return found

    @cached_property
    def yards(self) -> Mapping[str, Yard]:
        """The yards by name, as last noted."""
        return {each.yard: each for each in self.entries if isinstance(each, Yard)}

    @cached_property
    def orders(self) -> Mapping[str, KnownOrder]:
        """The orders by name: first promised, first served."""
        return known_orders(self.entries)

    @cached_property
    def batches(self) -> Mapping[str, KnownBatch]:
        """The batches of cells by name, by their day 0."""
        return known_batches(self.entries)

    @cached_property
    def queens(self) -> Mapping[str, KnownQueen]:
        """The queens that have names."""
        return known_queens(self.entries)

    @cached_property
    def honey(self) -> Mapping[str, KnownHoney]:
        """The batches of honey by name."""
        return known_honey(self.entries)

    @cached_property
    def lots(self) -> Mapping[str, KnownLot]:
        """The lots of jars by their codes."""
        return known_lots(self.entries)

    @cached_property
    def shelf(self) -> Mapping[str, OnShelf]:
        """Kit as it was last counted, and what went since."""
        return on_shelf(self.entries)

    @cached_property
    def place_word(self) -> PlaceWord:
        """What the keeper calls a place with colonies."""
        chosen = [each.place for each in self.entries if isinstance(each, Wording)]
        if not chosen or chosen[-1] == OURS:
            return USUAL
        written = (vars(each).values() for each in self.entries)
        texts = (value for values in written for value in values if isinstance(value, str))
        return PlaceWord(chosen[-1], words_of(texts))

    @cached_property
    def words(self) -> WordsIndex:
        """The words of all entries, to find them by."""
        return WordsIndex(self.entries)

    @cached_property
    def first_note(self) -> date | None:
        """The day of the first note about bees; papers of a desk may be older."""
        return next((each.on for each in self.entries if not isinstance(each, PAPERS)), None)

    @property
    def living(self) -> list[KnownColony]:
        """The colonies that have not left the book, by yard and name."""
        found = (each for each in self.standings.values() if each.ended is None)
        return sorted(found, key=lambda each: (each.yard, each.colony))

    def of(self, colony: str) -> list[Noted]:
        """Give what stands in the book about one colony."""
        return self._by_colony.get(colony, [])

    def on(self, day: date) -> list[Noted]:
        """Give what was noted of one day."""
        return self._by_day.get(day, [])

    def colony(self, name: str) -> KnownColony:
        """Tell how one colony stands."""
        if name not in self.standings:
            raise NotFoundError(
                f"There is no colony “{name}” in the book.", remedy="Choose one from the list."
            )
        return self.standings[name]

    def mark(self, before: date) -> str:
        """Name everything that a plan for a day rests on; notes of that day leave it alone.

        But for kit that is counted, and what colonies come with into the book on that day.
        """
        early = {each.id for each in openings(self.entries, before)}
        counted = [
            at
            for at, each in enumerate(self.history)
            if isinstance(each, Correction | Kit) or each.on < before or each.id in early
        ]
        return f"{len(counted)}/{counted[-1] if counted else 0}/{self.weather}"

    def next_round(self, today: date) -> date:
        """Guess the day of the round: today, or a week after the last note of a later book."""
        last = self.last_day(today)
        return today if last is None or last <= today else last + A_WEEK

    def last_day(self, today: date) -> date | None:
        """Give the day of the last note; one that lies years ahead of all others was not meant."""
        return last_meant((each.on for each in self.entries), today)
