"""A desk on a copy of the demo's book, with a clock that tests can turn."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path
from uuid import uuid4

from fastapi.testclient import TestClient
from tests.demo import FEW, copied

from combwright.records.store.book_handle import Book
from combwright.services.demo import ON, Paths
from combwright.services.rounds.planned_note import as_advised
from combwright.web.app import build
from combwright.web.desk import Desk, lay_out

ROUND = f"/round/{ON}"
PAGE = {"Accept": "text/html"}


@dataclass
class Clock:
    """The time, which stands still until it is turned."""

    now: datetime = datetime(2027, 4, 24, 9, 0, tzinfo=UTC)

    def __call__(self) -> datetime:
        return self.now

    def pass_days(self, days: float) -> None:
        self.now += timedelta(days=days)


def desk_on(book: Path | str, clock: Clock | None = None) -> Desk:
    """Lay out a desk."""
    return lay_out(Book(book), clock=clock or Clock(), members=FEW)


def desk_with_round(demo: Paths, folder: Path) -> Iterator[Desk]:
    """A desk on a copy of the demo, with the round of the day at hand; closed in the end."""
    desk = desk_on(copied(demo, folder))
    desk.rounds.sheet(ON, 7)
    yield desk
    desk.close()


def planned(desk: Desk, colony: str) -> dict[str, str]:
    """Fill in the note of a colony as planned, with an id of its own."""
    sheet = desk.rounds.sheet(ON, 7)
    part = next(each for each in sheet.colonies if each.colony == colony)
    return {**as_advised(part, ON), "note": str(uuid4())}


def client_of(desk: Desk, host: str = "http://localhost:8321") -> TestClient:
    """A browser on this machine that does not follow where it is led."""
    return TestClient(
        build(desk), base_url=host, client=("127.0.0.1", 50000), follow_redirects=False
    )
