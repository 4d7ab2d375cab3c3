"""Entries of any kind for the laws, made from the classes themselves."""

from datetime import date
from uuid import UUID

from hypothesis import strategies as st

from combwright.terms.entries import ENTRY, AnyEntry, Correction, Feed, Noted, Visit

days = st.dates(date(2020, 1, 1), date(2030, 12, 31))
letters = st.characters(codec="utf-8", exclude_categories=["Cc", "Cs"])
names = st.text(letters, min_size=1, max_size=20).map(str.strip).filter(bool)
words = st.text(letters | st.sampled_from(",;\"'\n\t"), max_size=40)


def plain(lowest: float, highest: float) -> st.SearchStrategy[float]:
    return st.floats(lowest, highest, allow_nan=False)


visits = st.builds(
    Visit,
    id=st.uuids(),
    on=days,
    remark=words,
    colony=names,
    frames_of_bees=st.none() | plain(0, 40),
    stores_kg=st.none() | plain(0, 120),
    eggs=st.none() | st.booleans(),
    queen_cells=st.sampled_from([None, "none", "cups", "charged", "sealed"]),
    disease_signs=st.none() | words.filter(bool),
)
feeds = st.builds(
    Feed,
    id=st.uuids(),
    on=days,
    colony=names,
    grams=plain(0.001, 30000),
    temperature_c=st.none() | plain(0, 60),
)
noted: st.SearchStrategy[Noted] = visits | feeds


@st.composite
def histories(draw: st.DrawFn) -> list[AnyEntry]:
    """Some notes, and corrections of notes, of replacements and of corrections."""
    notes: list[Noted] = draw(st.lists(noted, max_size=6, unique_by=lambda each: each.id))
    entries: list[AnyEntry] = list(notes)
    ids = [each.id for each in notes]
    for _ in range(draw(st.integers(0, 4))):
        if not ids:
            break
        correction = Correction(
            id=draw(st.uuids().filter(lambda key: key not in ids)),
            on=draw(days),
            corrects=draw(st.sampled_from(ids)),
            replacement=draw(st.none() | noted),
        )
        entries.append(correction)
        ids.append(correction.id)
        if correction.replacement is not None:
            ids.append(correction.replacement.id)
    return entries


def a_visit(at: int = 1, colony: str = "Alder", **seen: object) -> Visit:
    """Make a visit with a short id."""
    values = {"kind": "visit", "id": UUID(int=at), "on": date(2026, 4, 1), "colony": colony, **seen}
    visit = ENTRY.validate_python(values)
    assert isinstance(visit, Visit)
    return visit


HEAD = (
    "date,yard,colony,hive,queen year,frames of bees,frames of brood,eggs,frames in box,"
    "syrup fed g,remark\n"
)
FIRST_LINE = "2026-04-03,Mill Lane,Alder,national timber,2025,6½,3,yes,8,500,calm\n"


def notebook(*lines: str) -> bytes:
    """Write a small notebook: the usual headings, one line that brings Alder in, and more."""
    return (HEAD + FIRST_LINE + "".join(f"{line}\n" for line in lines)).encode()


def noted_as(kind: str, at: int = 1, on: str = "2026-04-01", **told: object) -> Noted:
    """Make an entry of any kind with a short id."""
    entry = ENTRY.validate_python({"kind": kind, "id": UUID(int=at), "on": on, **told})
    assert not isinstance(entry, Correction)
    return entry
