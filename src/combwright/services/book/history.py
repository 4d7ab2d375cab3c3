"""The book as a history: one line a visit with what changed, by colony, by yard, by year."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from itertools import groupby
from typing import Final
from uuid import UUID

from combwright.records.replay.corrections import names
from combwright.records.store.book_handle import Book
from combwright.records.store.contents import Contents
from combwright.records.store.kept_entries import entries_of
from combwright.services.book.book import near
from combwright.services.book.entry_words import said, spoken
from combwright.terms.entries import Noted, ScaleReading, Visit
from combwright.terms.entries.fields import fields_of
from combwright.terms.errors import NotFoundError

# what is compared with the visit before it
COMPARED: Final = (
    *("frames_of_bees", "seams_of_bees", "frames_of_brood", "combs_with_brood"),
    *("frames_of_stores", "stores_kg", "hive_weight_kg"),
)


@dataclass(frozen=True, slots=True)
class VisitLine:
    """All that was noted of a colony on one day, in one line, with the notes that it is made of."""

    on: date
    colony: str
    yard: str
    says: str
    remarks: str
    entries: tuple[UUID, ...]
    kinds: tuple[str, ...]


def visit_lines(
    book: Book, *, colony: str = "", yard: str = "", year: int | None = None
) -> list[VisitLine]:
    """Give the history of a colony, of a yard's colonies or of all, newest first."""
    if colony:
        lines = list(_of(_noted_of(book, colony), colony, yard))
    else:
        lines = _of_many(book.now(), yard)
    return sorted(
        (line for line in lines if year in {None, line.on.year}),
        key=lambda line: (line.on, line.colony),
        reverse=True,
    )


def _noted_of(book: Book, colony: str) -> list[Noted]:
    """Read what is noted of one colony, and not the whole book."""
    with book.reading() as db:
        found = entries_of(db, colony)
    if not found:
        raise NotFoundError(
            f"There is no colony “{colony}” in the book.",
            remedy=near(colony, list(book.now().standings)),
        )
    return found


def _of_many(now: Contents, yard: str) -> list[VisitLine]:
    if yard and yard not in now.yards:
        raise NotFoundError(
            f"There is no yard “{yard}” in the book.", remedy=f"It knows: {', '.join(now.yards)}."
        )
    return [
        line
        for name, each in now.standings.items()
        if yard in {"", each.yard}
        for line in _of(now.of(name), name, each.yard)
    ]


def _of(noted: Sequence[Noted], colony: str, yard: str) -> Iterator[VisitLine]:
    """Go through the days of a colony, each held against what was seen before it."""
    before: dict[str, float] = {}
    for on, some in groupby(noted, key=lambda each: each.on):
        today = list(some)
        told = [part for each in today for part in _parts(each, colony, before)]
        remarks = "; ".join(each.remark for each in today if each.remark)
        yield VisitLine(
            on,
            colony,
            yard,
            ", ".join(told),
            remarks,
            tuple(each.id for each in today),
            tuple(each.kind for each in today),
        )


def _parts(each: Noted, colony: str, before: dict[str, float]) -> Iterable[str]:
    """Say what a note adds to the line of its day."""
    if isinstance(each, ScaleReading):
        change = round(each.weight_kg - before.get("scale", each.weight_kg), 2)
        before["scale"] = each.weight_kg
        return (f"scale {each.weight_kg:g} kg" + (f" ({change:+g})" if change else ""),)
    if not isinstance(each, Visit):
        told = said(each.model_copy(update={"remark": ""}))
        other = [name for name in names(each) if name != colony]
        return (" ".join(part for part in (f"{each.kind}:", told, *other) if part),)
    return tuple(_seen(each, before))


def _seen(visit: Visit, before: dict[str, float]) -> Iterator[str]:
    fields = fields_of(Visit)
    for name, value in visit.model_dump(exclude_none=True).items():
        if name not in fields or name in {"on", "colony", "remark"} or value == "":
            continue
        words = spoken(fields[name], value)
        if name in COMPARED:
            change = value - before.get(name, value)
            before[name] = value
            words += f" ({change:+g})" if change else ""
        yield words


def years_of(lines: Sequence[VisitLine]) -> list[int]:
    """Name the years that a history tells of, newest first."""
    return sorted({line.on.year for line in lines}, reverse=True)
