"""Two hundred slow connections beside ten people noting, 300 colonies: pages come as ever."""

import os
import socket
import threading
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from time import monotonic, sleep
from typing import Final

import httpx
import numpy as np
import pytest
import uvicorn
from tests.demo import many_colonies
from tests.web.desks import desk_on, planned

from combwright.services.demo import ON
from combwright.web.app import build
from combwright.web.connections import Punctual
from combwright.web.desk import Desk

pytestmark = pytest.mark.validation
SLOW: Final = 200
PEOPLE: Final = 10
COLONIES: Final = int(os.environ.get("COLONIES", "300"))
PAGES: Final = ("/yards", "/colony/Bramble 0", f"/round/{ON}", "/settings")
LONGEST_S: Final = 0.15


@pytest.fixture
def served(tmp_path: Path) -> Iterator[tuple[Desk, int]]:
    desk = desk_on(Path(many_colonies(tmp_path, COLONIES).place))
    desk.rounds.sheet(ON, 7)
    config = uvicorn.Config(build(desk), port=0, http=Punctual, log_level="critical")
    server = uvicorn.Server(config)
    runs = threading.Thread(target=server.run)
    runs.start()
    while not server.started:
        sleep(0.01)
    yield desk, server.servers[0].sockets[0].getsockname()[1]
    server.should_exit = True
    runs.join()


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


def test_pages_come_quickly_beside_slow_connections(served: tuple[Desk, int]) -> None:
    desk, port = served
    note = planned(desk, "Bramble 0")
    until = monotonic() + 20

    def person(number: int) -> list[float]:
        took: list[float] = []
        with httpx.Client(base_url=f"http://localhost:{port}", timeout=30) as asks:
            while monotonic() < until:
                sleep(0.5)
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
