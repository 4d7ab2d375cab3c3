"""The page on a disk that is really full: it says so, keeps nothing by half, and goes on after."""

import os
import subprocess
from collections.abc import Iterator
from pathlib import Path
from uuid import uuid4

import pytest
from fastapi.testclient import TestClient
from tests.demo import copied
from tests.web.desks import PAGE, client_of, desk_on

from combwright.services.demo import ON, Paths

pytestmark = pytest.mark.skipif(os.geteuid() != 0, reason="only root may mount a small disk")
ROOM = "size=4m"


@pytest.fixture
def disk(tmp_path: Path) -> Iterator[Path]:
    """A small disk in memory."""
    mounting = ["mount", "-t", "tmpfs", "-o", ROOM, "none", str(tmp_path)]
    done = subprocess.run(mounting, check=False, capture_output=True, text=True)
    if done.returncode:
        pytest.skip(f"nothing can be mounted here: {done.stderr.strip()}")
    try:
        yield tmp_path
    finally:
        subprocess.run(["umount", "-l", str(tmp_path)], check=True)


def fill(disk: Path) -> Path:
    """Leave no room at all."""
    found = disk / "full"
    with found.open("wb", buffering=0) as file:
        while True:
            try:
                file.write(bytes(4096))
            except OSError:
                return found


def noted(client: TestClient, note: str, **headers: str) -> tuple[int, str, str | None]:
    told = {"note": note, "on": str(ON), "colony": "Bramble", "remark": "x" * 900}
    answer = client.post("/note", data=told, headers=headers)
    return answer.status_code, answer.text, answer.headers.get("Retry-After")


def test_a_note_waits_until_there_is_room_again(demo: Paths, disk: Path) -> None:
    desk = desk_on(copied(demo, disk))
    client, before = client_of(desk), desk.book.now().last
    try:
        filling = fill(disk)
        some = [str(uuid4()) for _ in range(8)]  # what SQLite had set aside takes a few
        answers = {note: noted(client, note) for note in some}
        refused = [note for note, (status, *_) in answers.items() if status != 200]
        assert refused
        assert all("The disk " in answers[note][1] for note in refused)
        assert {(answers[note][0], answers[note][2]) for note in refused} == {(503, "10")}
        product = {"id": str(uuid4()), "on": str(ON), "product": "Gel", "withdrawal_days": "0"}
        sent = client.post("/enter/product", data=product, headers=PAGE)
        assert (sent.status_code, "The disk " in sent.text) == (503, True)
        # with no byte left even reading is: SQLite wants a small file beside the book for it
        looked = client.get("/yards", headers=PAGE)
        assert (looked.status_code, "The disk " in looked.text) == (503, True)
        filling.unlink()
        assert desk.book.now().last == before + len(some) - len(refused)
        assert {noted(client, note)[0] for note in some} == {200}
        assert desk.book.now().last == before + len(some)
        assert desk.book.check() == []
    finally:
        desk.close()
