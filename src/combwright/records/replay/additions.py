"""What a file would add to a book, and which of its lines can be taken."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from uuid import UUID

from combwright.kit.catalogue import Catalogue
from combwright.records.notebook.entry_table import from_csv, from_json, is_entry_table, is_json
from combwright.records.notebook.from_lines import Line, read_notebook
from combwright.records.notebook.reminders import wrong_reminders
from combwright.records.problems import Problem, refused
from combwright.records.replay.clashes import check
from combwright.records.replay.corrections import standing, subject
from combwright.terms.dated import dated
from combwright.terms.entries import AnyEntry, Colony, Correction, Split, Yard
from combwright.terms.errors import NotebookError


@dataclass(frozen=True, slots=True)
class Addition:
    """Lines that can be taken, what is wrong with others, and whether all must be refused."""

    lines: tuple[Line, ...]
    problems: tuple[Problem, ...] = ()
    hopeless: bool = False
    notebook: bool = True

    @property
    def entries(self) -> list[AnyEntry]:
        """What the lines say."""
        return [each for line in self.lines for each in line.entries]

    @property
    def blocked(self) -> bool:
        """Tell whether anything stands in the way of taking the whole file."""
        return any(problem.blocks for problem in self.problems)


def additions(data: bytes, whole: Sequence[AnyEntry]) -> Addition:
    """Read a file that is to be added to a book: a notebook, or entries that were exported."""
    if is_json(data) or is_entry_table(data):
        return exported(data)
    stand = standing(whole)
    yards = {each.yard for each in stand if isinstance(each, Yard)}
    colonies = {each.colony for each in stand if isinstance(each, Colony)}
    colonies |= {each.new_colony for each in stand if isinstance(each, Split)}
    found = read_notebook(data, yards, colonies)
    return sorted_out(found.lines, found.problems)


def exported(data: bytes) -> Addition:
    """Read entries that were exported."""
    try:
        rows = list((from_json if is_json(data) else from_csv)(data))
    except NotebookError as error:
        return Addition((), (refused(error),), hopeless=True)
    lines = tuple(
        Line(at, problems=(one,)) if isinstance(one, Problem) else Line(at, entries=(one,))
        for at, one in rows
    )
    return replace(sorted_out(lines, ()), notebook=False)


def sorted_out(lines: Sequence[Line], problems: Sequence[Problem]) -> Addition:
    """Part the lines that can be taken from the problems of the others."""
    good = tuple(line for line in lines if not any(one.blocks for one in line.problems))
    told = [*problems, *(one for line in lines for one in line.problems)]
    return Addition(good, tuple(told), hopeless=bool(problems))


def settled(added: Addition, whole: Sequence[AnyEntry], kit: Catalogue, today: date) -> Addition:
    """Leave out line after line until what remains agrees with the book and with itself.

    Corrections that come with the file stand at the end of the whole book.
    """
    old: set[tuple[UUID | None, str]] | None = None
    while True:
        found = clashes(added, whole, kit, today)
        if old is None and any(one.blocks and one.line is None for one in found):
            # what was wrong with the book before is not this file's fault
            old = {(one.entry, one.what) for one in check(whole, kit, today)}
        found = [one for one in found if (one.entry, one.what) not in (old or ())]
        bad = {one.line for one in found if one.blocks and one.line is not None}
        told = replace(added, problems=(*added.problems, *found))
        if not bad:
            return replace(told, hopeless=told.hopeless or any(one.blocks for one in found))
        lines = tuple(line for line in added.lines if line.number not in bad)
        mine = tuple(one for one in found if one.line in bad)
        added = replace(added, lines=lines, problems=(*added.problems, *mine))


def clashes(
    added: Addition, whole: Sequence[AnyEntry], kit: Catalogue, today: date
) -> list[Problem]:
    """Find what would clash if the lines were added, each with its line."""
    line_of = {key: line.number for line in added.lines for key in by_id(line.entries)}
    known = by_id(whole)
    everything = [*whole, *(each for each in added.entries if each.id not in known)]
    told = [
        located(one, line_of, known)
        for one in check(everything, kit, today)
        if one.blocks or (one.entry in line_of and one.entry not in known)
    ]
    return [*told, *wrong_reminders(added.lines, standing(everything))]


def located(
    problem: Problem, line_of: Mapping[UUID, int], known: Mapping[UUID, AnyEntry]
) -> Problem:
    """Say in which line, or else in which entry of the book, a problem lies."""
    if problem.entry is None:
        return problem
    if problem.entry in line_of:
        return replace(problem, line=line_of[problem.entry])
    each = known[problem.entry]
    about = "" if isinstance(each, Correction) else subject(each) or getattr(each, "yard", "")
    return replace(problem, column=f"in the book, {each.kind} “{about}” of {dated(each.on)}")


def by_id(entries: Iterable[AnyEntry]) -> dict[UUID, AnyEntry]:
    """Look entries up by their ids, the replacements in corrections included."""
    found: dict[UUID, AnyEntry] = {}
    for each in entries:
        found[each.id] = each
        if isinstance(each, Correction) and each.replacement is not None:
            found.setdefault(each.replacement.id, each.replacement)
    return found
