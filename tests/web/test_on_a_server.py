"""The page on a book that is kept on PostgreSQL."""

from concurrent.futures import ThreadPoolExecutor
from contextlib import closing
from pathlib import Path
from typing import TYPE_CHECKING
from uuid import uuid4

import pytest
from tests.noted import noted_in
from tests.web.desks import PAGE, client_of, desk_on

if TYPE_CHECKING:
    from tests.postgres import Server

OAK = "2027-04-03,Top,Oak,national timber,2026,Dublin Airport,7,3,yes,1"


@pytest.mark.postgresql
def test_many_note_at_the_same_moment_and_nothing_is_lost(server: "Server", tmp_path: Path) -> None:
    with closing(desk_on(server.new().replace("keeper@", "keeper:hush@"))) as desk:
        before = noted_in(desk.book, tmp_path, OAK).now().last
        client = client_of(desk)
        notes = [
            {"id": str(uuid4()), "kind": "visit", "on": "2027-04-24", "colony": "Oak"}
            for _ in range(24)
        ]
        with ThreadPoolExecutor(8) as people:
            sent = people.map(lambda note: client.post("/api/entries", json=[note]), notes)
            assert {answer.status_code for answer in sent} == {200}
        there = [str(each.id) for each in desk.book.now().history[before:]]
        assert sorted(there) == sorted(note["id"] for note in notes)
        assert desk.book.check() == []
        assert "hush" not in client.get("/settings", headers=PAGE).text
