"""A Firefox that stands here, driven by the protocol that it brings along (Marionette).

No driver is needed: each message is its length, a colon, and JSON.
"""

import json
import os
import shutil
import socket
import subprocess
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

PORT = 2828
WAIT_S = 60.0


def firefox() -> str | None:
    """The Firefox that FIREFOX names, or the first that is installed."""
    named = os.environ.get("FIREFOX")
    return named or next(filter(None, map(shutil.which, ("firefox", "firefox-esr"))), None)


class Marionette:
    """A session with a Firefox."""

    def __init__(self) -> None:
        self.number = 0
        self.link = self._linked()
        self._read()
        self.ask("WebDriver:NewSession", capabilities={"alwaysMatch": {}})
        self.ask("WebDriver:SetTimeouts", script=60_000, pageLoad=60_000)

    def ask(self, command: str, **told: object) -> Any:  # noqa: ANN401 - what it answers
        """Send a command and give its answer."""
        self.number += 1
        message = json.dumps([0, self.number, command, told]).encode()
        self.link.sendall(str(len(message)).encode() + b":" + message)
        _, _, error, answer = self._read()
        assert error is None, error
        return answer

    def run(self, script: str) -> Any:  # noqa: ANN401 - as above
        """Run a script that may wait, and give what it returns."""
        wrapped = f"const done = arguments[0]; (async () => {{ {script} }})().then(done)"
        return self.ask("WebDriver:ExecuteAsyncScript", script=wrapped, args=[])["value"]

    def _linked(self) -> socket.socket:
        until = time.monotonic() + WAIT_S
        while True:
            try:
                return socket.create_connection(("127.0.0.1", PORT), timeout=WAIT_S)
            except OSError:
                assert time.monotonic() < until, "Firefox does not answer"
                time.sleep(0.2)

    def _read(self) -> Any:  # noqa: ANN401 - as above
        length = b""
        while not length.endswith(b":"):
            length += self.link.recv(1)
        message = b""
        while len(message) < int(length[:-1]):
            message += self.link.recv(int(length[:-1]) - len(message))
        return json.loads(message)


@contextmanager
def opened(program: str, profile: Path) -> Iterator[Marionette]:
    """Open a Firefox with a profile of its own, and end it whatever happens."""
    asked = [program, "--headless", "--marionette", "--no-remote", "--profile", str(profile)]
    process = subprocess.Popen(asked, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    try:
        session = Marionette()
        with session.link:
            yield session
    finally:
        process.terminate()
        process.wait(20)
