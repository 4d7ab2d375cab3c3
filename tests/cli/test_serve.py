"""The command that opens the page."""

import json
import os
import socket
import subprocess
import sys
import time
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import httpx
import pytest
from tests.browser.conftest import free_port
from tests.cli.typed import typed
from typer.testing import CliRunner

from combwright.cli.main import app

PROGRAM = Path(sys.executable).parent / "combwright"


def test_without_a_book_it_asks_which_one_to_begin(tmp_path: Path) -> None:
    port = free_port()
    with subprocess.Popen(
        [PROGRAM, "serve", "--port", str(port), "--json"],
        stdout=subprocess.PIPE,
        env=os.environ | {"XDG_DATA_HOME": str(tmp_path)},
    ) as serving:
        try:
            assert serving.stdout
            told = json.loads(serving.stdout.readline())
            for _ in range(100):
                try:
                    answer = httpx.get(told["address"], follow_redirects=True)
                    break
                except httpx.ConnectError:
                    time.sleep(0.1)
        finally:
            serving.terminate()
    assert told["address"] == f"http://127.0.0.1:{port}/"
    assert "Begin my own" in answer.text
    assert "Look around in an example" in answer.text


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
