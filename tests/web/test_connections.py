"""Slow connections, against a server of our own on this machine."""

import gc
import socket
import threading
from collections.abc import Iterator
from pathlib import Path
from time import monotonic, sleep

import pytest
import uvicorn
from starlette.requests import Request
from starlette.responses import PlainTextResponse
from starlette.types import Receive, Scope, Send
from tests.web.desks import client_of, desk_on

from combwright.web import connections
from combwright.web.connections import Punctual
from combwright.web.showing import environment

HEAD = b"POST / HTTP/1.1\r\nHost: here\r\nContent-Length: 20\r\n\r\n"
QUICK_S = 0.3


async def echo(scope: Scope, receive: Receive, send: Send) -> None:
    """Answer with the body."""
    body = await Request(scope, receive).body()
    await PlainTextResponse(body or b"none")(scope, receive, send)


@pytest.fixture
def port(monkeypatch: pytest.MonkeyPatch) -> Iterator[int]:
    for name in ("HEAD_S", "BODY_S"):
        monkeypatch.setattr(connections, name, QUICK_S)
    monkeypatch.setattr(connections, "MOST", 20)
    config = uvicorn.Config(echo, port=0, http=Punctual, log_level="critical", lifespan="off")
    server = uvicorn.Server(config)
    runs = threading.Thread(target=server.run)
    runs.start()
    while not server.started:
        sleep(0.01)
    yield server.servers[0].sockets[0].getsockname()[1]
    server.should_exit = True
    runs.join()


def answer(to: socket.socket) -> bytes:
    """Take what comes until the connection is closed."""
    told = b""
    try:
        while part := to.recv(4096):
            told += part
    except ConnectionError:
        pass
    return told


@pytest.mark.parametrize("begun", [b"", b"POST / HT", HEAD, HEAD + b"half"])
def test_a_request_that_does_not_come_is_given_up(port: int, begun: bytes) -> None:
    with socket.create_connection(("127.0.0.1", port), timeout=5) as slow:
        slow.sendall(begun)
        began = monotonic()
        assert answer(slow) == b""
        assert monotonic() - began < 2


def test_dripping_does_not_help(port: int) -> None:
    with socket.create_connection(("127.0.0.1", port), timeout=5) as slow:
        began = monotonic()
        with pytest.raises(ConnectionError):  # noqa: PT012  (which byte it is does not matter)
            while monotonic() - began < 5:
                slow.sendall(b"G")
                sleep(0.02)
        assert monotonic() - began < 2


def test_a_body_in_time_is_taken_and_the_next_request_too(port: int) -> None:
    with socket.create_connection(("127.0.0.1", port), timeout=5) as quick:
        for _ in range(2):
            quick.sendall(HEAD + b"half of it ")
            sleep(QUICK_S / 3)
            quick.sendall(b"and more.")
            told = b""
            while not told.endswith(b"half of it and more."):
                told += quick.recv(4096)


def test_of_very_many_the_longest_awaited_make_room(port: int) -> None:
    many = [socket.create_connection(("127.0.0.1", port), timeout=5) for _ in range(60)]
    with socket.create_connection(("127.0.0.1", port), timeout=5) as one:
        one.sendall(b"GET / HTTP/1.1\r\nHost: here\r\nConnection: close\r\n\r\n")
        assert b"none" in answer(one)
    for each in many:
        each.close()


def test_all_is_made_ready_before_the_first_page(tmp_path: Path) -> None:
    """Templates are compiled, and what stays for good is not looked through for what may go."""
    environment.cache_clear()
    desk = desk_on(tmp_path / "new.book")
    with client_of(desk):
        made = environment()
        assert made.cache is not None
        assert len(made.cache) >= len(made.list_templates())
        assert gc.get_freeze_count() > 0
    gc.unfreeze()
