"""A page asks the database as often for many rows as for few."""

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import timedelta
from pathlib import Path
from uuid import uuid4

import sqlalchemy as sa
from tests.noted import noted
from tests.web.desks import PAGE, ROUND, client_of, desk_on

from combwright.records.store.book_handle import Book
from combwright.records.store.kept_entries import keep
from combwright.services.demo import ON

MOST = 8  # queries of a page, one of them for who is at it
PAGES = (
    *(ROUND, f"{ROUND}/note/Oak", f"/bench/{ON}", "/yards", "/colony/Oak", "/kit"),
    *("/settings", "/api/colonies", "/api/entries?colony=Oak"),
)
LINES = (
    "2027-04-17,Top,Oak,national timber,2026,Dublin Airport,7,3,yes,2",
    "2027-04-17,Low,Ash,nuc 6 polystyrene,2026,Dublin Airport,3,1.5,yes,1",
)


@contextmanager
def counted() -> Iterator[list[str]]:
    """Collect what is asked of any database, beside where a transaction begins."""
    sent: list[str] = []

    def note(*told: object) -> None:
        if told[2] != "BEGIN":
            sent.append(str(told[2]))

    sa.event.listen(sa.Engine, "before_cursor_execute", note)
    try:
        yield sent
    finally:
        sa.event.remove(sa.Engine, "before_cursor_execute", note)


def twofold(path: Path) -> Path:
    """Say everything twice, of other colonies in other yards."""
    book = Book(path)
    entries = book.now().entries
    with book.writing() as db:
        keep(
            db,
            [
                each.model_copy(
                    update={"id": uuid4(), "on": each.on - timedelta(days=1)}
                    | {
                        name: f"{getattr(each, name)} again"
                        for name in ("colony", "yard")
                        if hasattr(each, name)
                    }
                )
                for each in entries
            ],
        )
    book.close()
    return path


def test_the_number_of_queries_does_not_grow_with_rows(tmp_path: Path) -> None:
    """Neither of an unchanged book nor after a note."""
    for name in ("few", "many"):
        (tmp_path / name).mkdir()
    books = [noted(tmp_path / "few", *LINES), twofold(noted(tmp_path / "many", *LINES))]
    counts = []
    for book in books:
        desk = desk_on(book)
        desk.rounds.sheet(ON, 7)
        client = client_of(desk)
        here = []
        for path in PAGES:
            client.get(path, headers=PAGE)
            for is_new in (False, True):
                if is_new:
                    note = {"note": str(uuid4()), "on": str(ON), "colony": "Oak"}
                    assert client.post("/note", data=note).status_code == 200
                with counted() as sent:
                    assert client.get(path, headers=PAGE).status_code == 200
                here.append((path, is_new, len(sent)))
        counts.append(here)
        desk.close()
    assert counts[0] == counts[1]
    assert [one for one in counts[0] if not 0 < one[-1] < MOST] == []
