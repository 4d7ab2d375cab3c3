"""The command that opens the page."""

import json
import signal
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import TYPE_CHECKING
from uuid import uuid4

import httpx
import pytest
from tests.browser.conftest import free_port
from tests.cli.typed import typed
from tests.noted import noted_in
from tests.web.test_on_a_server import OAK
from typer.testing import CliRunner

from combwright.cli.main import app
from combwright.records.store.book_handle import Book

if TYPE_CHECKING:
    from tests.postgres import Server

PROGRAM = Path(sys.executable).parent / "combwright"


@contextmanager
def serving(*told: str) -> Iterator[httpx.Client]:
    """The real program, from when it answers until it has been asked to stop and has done so."""
    port = free_port()
    with subprocess.Popen(
        [PROGRAM, "serve", "--port", str(port), "--json", *told], stdout=subprocess.PIPE
    ) as program:
        try:
            assert program.stdout
            address = json.loads(program.stdout.readline())["address"]
            assert address == f"http://127.0.0.1:{port}/"
            with httpx.Client(base_url=address) as client:
                for _ in range(600):
                    with suppress(httpx.ConnectError):
                        client.get("/health")
                        break
                    time.sleep(0.1)
                yield client
        finally:
            program.terminate()
    assert program.returncode in {0, -signal.SIGTERM}


def test_without_a_book_it_asks_which_one_to_begin(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path))
    with serving() as client:
        answer = client.get("/", follow_redirects=True)
    assert "Begin my own" in answer.text
    assert "Look around in an example" in answer.text


@pytest.mark.postgresql
def test_a_visit_noted_on_the_page_is_in_the_book_on_the_server(
    server: "Server", tmp_path: Path
) -> None:
    place = server.new()
    noted_in(Book(place), tmp_path, OAK).close()
    with serving("--book", place) as client:
        visit = {"id": str(uuid4()), "kind": "visit", "on": "2027-04-24", "colony": "Oak"}
        sent = client.post("/api/entries", json=[visit | {"remark": "calm in the rain"}])
        assert sent.status_code == 200
    shown = typed("book", "show", "Oak", "--book", place)
    assert shown.returncode == 0, shown.stderr
    assert "calm in the rain" in shown.stdout


def test_it_refuses_to_open_a_book_without_passphrase_to_the_network(tmp_path: Path) -> None:
    ran = typed("serve", "--host", "0.0.0.0", "--book", str(tmp_path / "my.book"))  # noqa: S104
    assert ran.returncode == 2
    assert "--set-passphrase" in ran.stderr


def test_a_passphrase_is_asked_for_twice_and_kept(tmp_path: Path) -> None:
    book = tmp_path / "my.book"
    words = "four unlikely words together\n"
    given = ["serve", "--set-passphrase", "--book", str(book)]
    ran = CliRunner().invoke(app, given, input=words * 2)
    assert ran.exit_code == 0, ran.output
    assert "is set" in ran.output
    assert Path(f"{book}.access").exists()


@pytest.mark.parametrize("port", ["0", "70000"])
def test_an_impossible_port_is_refused(tmp_path: Path, port: str) -> None:
    ran = typed("serve", "--port", port, "--book", str(tmp_path / "my.book"))
    assert ran.returncode == 2
    assert "no port" in ran.stderr


def test_a_port_that_another_program_uses_is_said_in_a_sentence(tmp_path: Path) -> None:
    words = ("serve", "--measures", "--book", str(tmp_path / "my.book"), "--port")
    with socket.socket() as other, ThreadPoolExecutor(1) as apart:  # with an event loop of its own
        other.bind(("127.0.0.1", 0))
        other.listen()
        port = str(other.getsockname()[1])
        ran = apart.submit(typed, *words, port).result()
    assert ran.returncode == 2
    assert f"could not be opened at http://127.0.0.1:{port}/" in ran.stderr
    assert "choose one with --port" in ran.stderr
    assert port in ran.stdout
