"""Notes of one colony on one day that contradict each other."""

from collections import defaultdict
from collections.abc import Iterable, Iterator
from datetime import date

from combwright.records.problems import Problem, odd, wrong
from combwright.terms.dated import dated
from combwright.terms.entries import Entry, Feed, Noted, Queen, TrayCount, Visit

ABOUT = {"id", "on", "remark", "kind", "colony"}
REMEDY = "If both are right, leave the value blank in one of them."
IN_FILE = "If this line puts the earlier one right, add the file with --correct."

SECOND_LOOK = "Check both, and correct the one that is wrong."


def same_day(stand: Iterable[Noted]) -> Iterator[Problem]:
    """Compare the notes of each colony day by day.

    Two visits that differ in a value are refused: as a rule a line of the notebook was changed
    after it had been added. Two feeds of one day may well be right and are only mentioned.
    """
    told = list(stand)
    yield from odd_queens(told)
    groups: defaultdict[tuple[str, date, str], list[Noted]] = defaultdict(list)
    for each in told:
        if isinstance(each, Visit | Feed | TrayCount):
            groups[each.colony, each.on, each.kind].append(each)
    for (colony, on, _), notes in groups.items():
        for at, each in enumerate(notes[1:], 1):
            if isinstance(each, Visit | TrayCount):
                yield from contradictions(each, notes[:at], colony, on)
            elif isinstance(each, Feed) and fed_already(each, notes[:at]):
                yield odd(
                    each,
                    f"“{colony}” was fed {each.feed} already on {dated(on)}.",
                    "Nothing to do if it was fed twice that day; otherwise correct it.",
                )


def odd_queens(told: list[Noted]) -> Iterator[Problem]:
    """Find what was seen of a queen or her cells and what was done that day to contradict it."""
    visits = {(each.colony, each.on): each for each in told if isinstance(each, Visit)}
    for each in told:
        visit = visits.get((each.colony, each.on)) if isinstance(each, Queen) else None
        if visit is None or not isinstance(each, Queen):
            continue
        if each.event == "virgin" and visit.eggs:
            yield odd(each, "A virgin queen, but eggs on the same day.", SECOND_LOOK)
        if each.event == "lost" and visit.queen_seen:
            yield odd(each, "The queen was lost, but seen on the same day.", SECOND_LOOK)
        if each.event == "cells knocked down" and visit.queen_cells == "none":
            yield odd(each, "Queen cells knocked down, but none seen that day.", SECOND_LOOK)


def fed_already(each: Feed, earlier: list[Noted]) -> bool:
    """Tell whether the same kind of feed was given earlier that day."""
    return any(isinstance(one, Feed) and one.feed == each.feed for one in earlier)


def contradictions(each: Entry, earlier: list[Noted], colony: str, on: date) -> Iterator[Problem]:
    """Find values that differ from those of an earlier note of the day."""
    for field in sorted(type(each).model_fields.keys() - ABOUT):
        value = getattr(each, field)
        for one in earlier:
            other = getattr(one, field)
            if value is not None and other is not None and value != other:
                yield wrong(
                    each,
                    field,
                    f"{field.replace('_', ' ')} of “{colony}” on {dated(on)} is {said(value)} "
                    f"here and {said(other)} in another note.",
                    REMEDY,
                    IN_FILE,
                )


def said(value: object) -> str:
    """Say a value as the notebook does."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    return f"{value:g}" if isinstance(value, float) else str(value)
