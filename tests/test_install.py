"""The files of docs/install are what the tools that read them take."""

import shutil
import subprocess
from pathlib import Path

import pytest
from tests.commands import COMMANDS


def words(text: str) -> list[str]:
    return [word.strip('",') for word in text.replace("[", " ").replace("]", " ").split()]


@pytest.mark.parametrize("name", ["combwright.service", "Containerfile"])
def test_every_option_exists(root: Path, name: str) -> None:
    options = {word for one in COMMANDS["serve"].params for word in one.opts}  # type: ignore[attr-defined]
    lines = (root / "docs" / "install" / name).read_text("utf-8").splitlines()
    served = [line for line in lines if "serve" in line and not line.startswith("#")]
    assert served
    for line in served:
        assert {word for word in words(line) if word.startswith("--")} <= options


@pytest.mark.skipif(shutil.which("systemd-analyze") is None, reason="no systemd here")
def test_systemd_finds_no_fault(root: Path, tmp_path: Path) -> None:
    unit = (root / "docs" / "install" / "combwright.service").read_text("utf-8")
    tried = tmp_path / "combwright.service"
    tried.write_text(unit.replace("/srv/combwright/.venv/bin/combwright", "/bin/true"), "utf-8")
    done = subprocess.run(
        ["systemd-analyze", "--man=no", "verify", tried],
        check=False,
        capture_output=True,
        text=True,
    )
    told = [line for line in done.stderr.splitlines() if "combwright.service" in line]
    assert told == []
