"""A real Chromium before a real server: the server can be stopped, the browser killed."""

import socket
import threading
import time
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest
import uvicorn
from playwright.sync_api import BrowserContext, Playwright, ViewportSize, sync_playwright
from tests.browser.chromium import chromium
from tests.demo import copied
from tests.web.desks import Clock, desk_on

from combwright.services.demo import ON, Paths
from combwright.web.app import build
from combwright.web.desk import Desk

ARGUMENTS = [
    *("--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run"),
    *("--disable-background-networking", "--disable-component-update", "--disable-sync"),
]
PHONE: ViewportSize = {"width": 360, "height": 740}


@dataclass
class House:
    """The server on its book; it can lose its connection and come back at the same address."""

    desk: Desk
    clock: Clock
    port: int
    server: uvicorn.Server | None = None
    thread: threading.Thread | None = None

    @property
    def address(self) -> str:
        return f"http://localhost:{self.port}"

    def open(self) -> None:
        config = uvicorn.Config(
            build(self.desk),
            port=self.port,
            log_level="error",
            lifespan="off",
            timeout_keep_alive=1,
        )
        self.server = uvicorn.Server(config)
        self.thread = threading.Thread(target=self.server.run)
        self.thread.start()
        for _ in range(500):
            if self.server.started:
                return
            time.sleep(0.02)
        pytest.fail("the server did not start within ten seconds")

    def shut(self) -> None:
        if self.server is not None and self.thread is not None:
            self.server.should_exit = True
            self.server.force_exit = True
            self.thread.join(10)
        self.server = None


def free_port() -> int:
    with socket.socket() as found:
        found.bind(("127.0.0.1", 0))
        port: int = found.getsockname()[1]
        return port


@dataclass
class Telephone:
    """A browser with storage of its own on disk, as a phone has."""

    playwright: Playwright
    folder: Path
    context: BrowserContext | None = None

    def start(self) -> BrowserContext:
        self.context = self.playwright.chromium.launch_persistent_context(
            self.folder,
            executable_path=chromium(),
            args=ARGUMENTS,
            viewport=PHONE,
            has_touch=True,
        )
        self.context.set_default_timeout(15_000)
        return self.context

    def stop(self) -> None:
        if self.context is not None:
            self.context.close()
            self.context = None


@pytest.fixture(scope="session")
def playwright() -> Iterator[Playwright]:
    if chromium() is None:
        pytest.skip("there is no Chromium or Chrome that starts here")
    with sync_playwright() as found:
        yield found


def keep_house(book: Path) -> Iterator[House]:
    """Open a house on a book, its round ready, and shut it afterwards."""
    clock = Clock()
    desk = desk_on(book, clock)
    desk.rounds.sheet(ON, 7)
    made = House(desk, clock, free_port())
    made.open()
    yield made
    made.shut()
    desk.close()


@pytest.fixture(scope="session")
def shared_house(demo: Paths, tmp_path_factory: pytest.TempPathFactory) -> Iterator[House]:
    """A house for tests that only look."""
    yield from keep_house(copied(demo, tmp_path_factory.mktemp("shown")))


@pytest.fixture
def house(demo: Paths, tmp_path: Path) -> Iterator[House]:
    yield from keep_house(copied(demo, tmp_path))


@pytest.fixture
def telephone(playwright: Playwright, tmp_path: Path) -> Iterator[Telephone]:
    made = Telephone(playwright, tmp_path / "telephone")
    made.start()
    yield made
    made.stop()


@pytest.fixture
def second_telephone(playwright: Playwright, tmp_path: Path) -> Iterator[Telephone]:
    made = Telephone(playwright, tmp_path / "second")
    made.start()
    yield made
    made.stop()
