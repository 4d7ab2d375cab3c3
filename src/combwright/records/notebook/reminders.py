"""Yards and queen years that a line repeats, held against what the book says."""

from bisect import bisect_left
from collections import defaultdict
from collections.abc import Iterable, Iterator
from datetime import date

from combwright.records.notebook.from_lines import Line
from combwright.records.problems import Problem
from combwright.records.replay.colonies import KnownColony, replay
from combwright.records.replay.corrections import names
from combwright.terms.entries import Noted, Yard

Known = tuple[date, str, int | None]


def wrong_reminders(lines: Iterable[Line], stand: Iterable[Noted]) -> Iterator[Problem]:
    """Find lines that name another yard, or year of the queen, than the book that holds them."""
    told = list(stand)
    past = histories(told)
    climates = {each.yard: each.climate for each in told if isinstance(each, Yard)}
    for line in lines:
        if line.climate and line.climate != climates.get(line.yard, line.climate):
            yield Problem(
                f"“{line.yard}” has the climate “{climates[line.yard]}” in the book.",
                "Leave the cell blank, or write the same.",
                line.number,
                "“climate”",
            )
        known = on_day(past.get(line.colony, []), line.on) if line.on else []
        if not known:
            continue
        yards = {yard for _, yard, _ in known}
        years = {year for _, _, year in known}
        if line.yard and line.yard not in yards:
            yield Problem(
                f"“{line.colony}” stands at “{known[-1][1]}”, not at “{line.yard}”.",
                "Correct the yard or the colony; if it was taken there, write so under “moved to”.",
                line.number,
                "“yard”",
            )
        if line.queen_year is not None and line.queen_year not in years:
            year = known[-1][2]
            yield Problem(
                f"By the book, the queen of “{line.colony}” is of "
                + (f"{year}, not of {line.queen_year}." if year else "a year that is not known."),
                "Correct the year, or write under “queen event” how it became known.",
                line.number,
                "“queen year”",
            )


def histories(stand: Iterable[Noted]) -> dict[str, list[Known]]:
    """Tell for each colony from which day on it stood where, with a queen of which year."""
    past: defaultdict[str, list[Known]] = defaultdict(list)
    found: dict[str, KnownColony] = {}
    for each in stand:
        replay(found, each)
        for colony in names(each):
            if colony in found:
                now = (each.on, found[colony].yard, found[colony].queen_year)
                if not past[colony] or past[colony][-1][1:] != now[1:]:
                    past[colony].append(now)
    return past


def on_day(past: list[Known], on: date) -> list[Known]:
    """Pick what held in the morning and what came to hold during a day."""
    first = bisect_left(past, on, key=lambda known: known[0])
    last = bisect_left(past, date.fromordinal(on.toordinal() + 1), key=lambda known: known[0])
    return past[max(0, first - 1) : last]
