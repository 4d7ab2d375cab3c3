"""Two hundred slow connections beside ten people noting, 300 colonies: pages come as ever."""

import os
import socket
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from multiprocessing import get_context
from pathlib import Path
from time import monotonic, sleep
from typing import Final

import httpx
import numpy as np
import pytest
import uvicorn
from tests.browser.conftest import free_port
from tests.demo import many_colonies
from tests.web.desks import desk_on, planned

from combwright.services.demo import ON
from combwright.web.app import build
from combwright.web.connections import Punctual

pytestmark = pytest.mark.validation
SLOW: Final = 200
PEOPLE: Final = 10
COLONIES: Final = int(os.environ.get("COLONIES", "300"))
PAGES: Final = ("/yards", "/colony/Bramble 0", f"/round/{ON}", "/settings")
PAUSE_S: Final = (0.5, 1.5)  # between what one of them presses
LONGEST_S: Final = 0.15


def serve(book: str, port: int) -> None:
    """Serve a book from a process of its own, as it is in use."""
    desk = desk_on(book)
    desk.rounds.sheet(ON, 7)
    uvicorn.run(build(desk), port=port, http=Punctual, log_level="critical")


@pytest.fixture
def served(tmp_path: Path) -> Iterator[tuple[dict[str, str], int]]:
    book, port = many_colonies(tmp_path, COLONIES), free_port()
    desk = desk_on(book.place)
    note = planned(desk, "Bramble 0")
    desk.close()
    server = get_context("spawn").Process(target=serve, args=(book.place, port))
    server.start()
    try:
        for _ in range(600):
            try:
                httpx.get(f"http://localhost:{port}/health")
                break
            except httpx.ConnectError:
                sleep(0.5)
        yield note, port
    finally:
        server.terminate()
        server.join()


def drip(port: int, until: float) -> None:
    """Open a connection again and again, and send a sign every second."""
    while monotonic() < until:
        with socket.create_connection(("127.0.0.1", port)) as slow:
            try:
                while monotonic() < until:
                    slow.sendall(b"G")
                    sleep(1)
            except OSError:
                continue


def test_pages_come_quickly_beside_slow_connections(served: tuple[dict[str, str], int]) -> None:
    note, port = served
    until = monotonic() + 60

    def person(number: int) -> list[float]:
        took: list[float] = []
        pauses = np.random.default_rng(number)  # people do not all press at the same moment
        with httpx.Client(base_url=f"http://localhost:{port}", timeout=30) as asks:
            while monotonic() < until:
                sleep(pauses.uniform(*PAUSE_S))
                began = monotonic()
                if len(took) % 5 == 4:
                    answer = asks.post("/note", data=note)
                else:
                    answer = asks.get(PAGES[(len(took) + number) % len(PAGES)])
                took.append(monotonic() - began)
                assert answer.status_code < 400
        return took

    with ThreadPoolExecutor(SLOW + PEOPLE) as many:
        slow = [many.submit(drip, port, until) for _ in range(SLOW)]
        times = [one for some in many.map(person, range(PEOPLE)) for one in some]
        assert all(each.result() is None for each in slow)
    print(  # noqa: T201
        f"{len(times)} requests, {COLONIES} colonies: middle {1000 * np.median(times):.0f} ms, "
        f"95 % under {1000 * np.quantile(times, 0.95):.0f} ms"
    )
    assert np.quantile(times, 0.95) < LONGEST_S, f"{1000 * np.quantile(times, 0.95):.0f} ms"
