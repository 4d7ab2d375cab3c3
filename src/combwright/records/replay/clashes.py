"""Entries that cannot all be true, found by replaying the book from its first day."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from datetime import date
from difflib import get_close_matches
from typing import Final
from uuid import UUID

from combwright.kit.catalogue import Catalogue
from combwright.records.problems import Problem, wrong
from combwright.records.replay.colonies import KnownColony, by_day, replay
from combwright.records.replay.corrections import names, standing
from combwright.records.replay.far_days import LATEST, far_days
from combwright.records.replay.honey_clashes import honey_clashes
from combwright.records.replay.impossible_amounts import amounts
from combwright.records.replay.medicine_clashes import medicines
from combwright.records.replay.misspelt import misspelt
from combwright.records.replay.promises import promises
from combwright.records.replay.sale_clashes import sales
from combwright.records.replay.same_day import same_day
from combwright.records.replay.stacks import Stacks
from combwright.terms.dated import dated
from combwright.terms.entries import (
    AnyEntry,
    Colony,
    Correction,
    End,
    HoneySource,
    Move,
    Noted,
    Split,
    Unite,
    Yard,
)
from combwright.terms.errors import NotFoundError
from combwright.weather.climates import climate
from combwright.weather.forage import calendar

KNOWN_PLACES: Final[Mapping[str, Callable[[str], object]]] = {
    "climate": climate,
    "district": calendar,
}


def check(entries: Iterable[AnyEntry], kit: Catalogue, today: date = LATEST) -> list[Problem]:
    """Find what cannot be true in a book, with what is to be added at its end.

    Each problem has the id of the entry it is about; those that only seem odd do not block. Notes
    may lie ahead of ``today`` and of each other, but not by years.
    """
    written = list(entries)
    stand = standing(written)
    yards = {each.yard for each in stand if isinstance(each, Yard)}
    starts = {each.colony: each for each in reversed(stand) if isinstance(each, Colony)}
    problems = [*lost_corrections(written), *far_days(written, stand, today)]
    found: dict[str, KnownColony] = {}
    alike: dict[str, str] = {}
    spelt: set[str] = set()
    stacks = Stacks(kit)
    for _, noted in by_day(stand):
        day = stacks.pass_day(noted)
        for each in noted:
            problems += misspelt(each, spelt)
            told = [*places(each, yards), *newcomers(each, found, alike), *who(each, found, starts)]
            problems += told or amounts(each, day, kit)
            replay(found, each)
            alike |= {name.casefold(): name for name in names(each) if name in found}
    problems += [*same_day(stand), *promises(stand, kit), *medicines(stand), *sales(stand)]
    return [*problems, *honey_clashes(stand, written)]


def lost_corrections(written: list[AnyEntry]) -> Iterator[Problem]:
    """Find corrections that name nothing."""
    known: set[UUID] = set()
    for each in written:
        if isinstance(each, Correction):
            if each.corrects not in known:
                yield wrong(
                    each,
                    "corrects",
                    f"This correction names the entry {each.corrects}, but the book has none such.",
                    "Name the id of an entry that was written before it.",
                )
            if each.replacement is not None:
                known.add(each.replacement.id)
        known.add(each.id)


def places(each: Noted, yards: set[str]) -> Iterator[Problem]:
    """Find yards that were never named, and yards in a climate or district that is not known."""
    if isinstance(each, Colony | Move | HoneySource) and each.yard not in {None, *yards}:
        what = f"There is no yard “{each.yard}” in the book."
        yield wrong(each, "yard", what, guess(each.yard or "", yards, "yard"))
    for field, look_up in KNOWN_PLACES.items() if isinstance(each, Yard) else ():
        try:
            look_up(getattr(each, field))
        except NotFoundError as error:
            yield wrong(each, field, error.what, error.remedy)


def newcomers(
    each: Noted, found: Mapping[str, KnownColony], alike: Mapping[str, str]
) -> Iterator[Problem]:
    """Find colonies that enter the book under a name that is taken, or nearly."""
    if not isinstance(each, Colony | Split):
        return
    field = "colony" if isinstance(each, Colony) else "new_colony"
    new = getattr(each, field)
    if new in found:
        what = f"There is a colony “{new}” already, since {dated(found[new].since)}."
        yield wrong(each, field, what, "Give the new one another name.")
    elif new.casefold() in alike:
        what = f"“{new}” differs from “{alike[new.casefold()]}” only in its capitals."
        yield wrong(each, field, what, "Write the known name, or give the new one another.")


def who(
    each: Noted, found: Mapping[str, KnownColony], starts: Mapping[str, Colony]
) -> Iterator[Problem]:
    """Find colonies that are unknown, not there yet, or gone."""
    if isinstance(each, Unite | Split) and len(set(names(each))) == 1:
        field, done = (
            ("into", "united with itself")
            if isinstance(each, Unite)
            else ("new_colony", "split to its own name")
        )
        yield wrong(each, field, f"“{each.colony}” cannot be {done}.", "Name the other colony.")
        return
    for colony in () if isinstance(each, Colony) else names(each):
        now = found.get(colony)
        if isinstance(each, Split) and colony == each.new_colony:
            continue
        # papers of a desk may be older than the first note about the bees
        if isinstance(each, HoneySource) and now is None and colony in starts:
            continue
        if now is None:
            yield unknown(each, colony, found, starts)
        elif now.ended is not None and not says_it_again(each, now):
            yield wrong(
                each,
                named_in(each, colony),
                f"The colony “{colony}” left the book on {dated(now.ended)} ({now.ended_by}).",
                "Correct the day or the name, or start a new colony.",
            )


def unknown(
    each: Noted, colony: str, found: Mapping[str, KnownColony], starts: Mapping[str, Colony]
) -> Problem:
    """Say that a colony is not in the book, or not yet."""
    if colony in starts:
        return wrong(
            each,
            named_in(each, colony),
            f"The colony “{colony}” enters the book only on {dated(starts[colony].on)}, after this "
            f"{each.kind} of {dated(each.on)}.",
            "Correct one of the two days.",
        )
    what = f"There is no colony “{colony}” in the book."
    return wrong(each, named_in(each, colony), what, guess(colony, [*found, *starts], "colony"))


def named_in(each: Noted, colony: str) -> str:
    """Name the field in which an entry names a colony."""
    return "into" if isinstance(each, Unite) and colony == each.into else "colony"


def says_it_again(each: Noted, now: KnownColony) -> bool:
    """Allow “ended: united” beside the uniting itself."""
    return (
        isinstance(each, End) and each.reason == now.ended_by == "united" and each.on == now.ended
    )


def guess(name: str, known: Iterable[str], kind: str) -> str:
    """Name the nearest known name."""
    near = get_close_matches(name, list(known), n=1)
    if near:
        return f"Did you mean “{near[0]}”?"
    return f"Write a line that brings the {kind} into the book first."
