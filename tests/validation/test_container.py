"""The container of docs/install: not root, writes only its data, tells its health, ends well.

``BASE`` names another image to build on. podman has to be there, and to be nobody's root.
"""

import os
import shutil
import subprocess
from collections.abc import Iterator
from pathlib import Path
from time import sleep

import httpx
import pytest
from tests.browser.conftest import free_port

pytestmark = [
    pytest.mark.validation,
    pytest.mark.skipif(shutil.which("podman") is None, reason="no podman here"),
]
BASE = os.environ.get("BASE", "docker.io/library/python:3.12-slim")
NAME = "combwright-tried"
WORDS = "four unlikely words together\n"
BOUND = ("--read-only", "--tmpfs", "/tmp", "--cap-drop", "all", "-v", f"{NAME}:/data")  # noqa: S108


def podman(*told: str, typed: str = "") -> str:
    done = subprocess.run(
        ["podman", *told], input=typed, check=False, capture_output=True, text=True, timeout=1800
    )
    assert done.returncode == 0, done.stderr
    return done.stdout


def is_done(*told: str) -> bool:
    return subprocess.run(["podman", *told], check=False, capture_output=True).returncode == 0


@pytest.fixture(scope="module")
def image(root: Path) -> str:
    if podman("info", "--format", "{{.Host.Security.Rootless}}") != "true\n":
        pytest.skip("podman is root's here")
    if not any(is_done("image", told, BASE) for told in ("exists", "pull")):
        pytest.skip(f"{BASE} is not to be had")
    file = str(root / "docs" / "install" / "Containerfile")
    wanted = ["build", "--format", "docker", "-t", NAME, "-f", file, "--build-arg", f"BASE={BASE}"]
    podman(*wanted, str(root))
    return NAME


@pytest.fixture
def address(image: str) -> Iterator[str]:
    """Where a container answers that was told a passphrase."""
    port = free_port()
    book = ("--book", "/data/keeper.book")
    try:
        podman(
            "run", "--rm", "-i", *BOUND, image, "serve", "--set-passphrase", *book, typed=2 * WORDS
        )
        podman("run", "-d", "--name", NAME, *BOUND, "-p", f"127.0.0.1:{port}:8321", image)
        yield f"http://127.0.0.1:{port}"
    finally:
        subprocess.run(["podman", "rm", "-f", NAME], check=False)
        subprocess.run(["podman", "volume", "rm", "-f", NAME], check=False)


def test_it_serves_without_rights_and_ends_when_told(address: str) -> None:
    for _ in range(300):
        try:
            assert httpx.get(f"{address}/health").json() == {"status": "well"}
            break
        except httpx.TransportError:
            sleep(0.2)
    assert httpx.get(f"{address}/yards").status_code == 401
    assert podman("exec", NAME, "id", "-u") == "10001\n"
    assert "CapEff:\t0000000000000000" in podman("exec", NAME, "cat", "/proc/1/status")
    refused = "touch /srv/x 2>/dev/null && exit 1; touch /data/x"
    podman("exec", NAME, "sh", "-c", refused)
    podman("healthcheck", "run", NAME)
    podman("stop", "-t", "30", NAME)
    assert podman("inspect", NAME, "--format", "{{.State.ExitCode}}") == "0\n"
