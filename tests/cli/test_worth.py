"""``combwright worth``: the curves as data and as a figure."""

import json
from pathlib import Path

from tests.cli.typed import typed


def test_worth_is_told_and_drawn(tmp_path: Path) -> None:
    drawn = tmp_path / "worth.svg"
    done = typed("worth", "--json", "--svg", str(drawn))
    assert done.returncode == 0, done.stderr
    told = json.loads(done.stdout)
    assert len(told["weeks"]) == len(told["curves"]["a frame of bees"]) > 20
    assert drawn.read_text("utf-8").startswith("<svg")
    lines = typed("worth").stdout.splitlines()
    assert lines[0].split()[:2] == ["week", "of"]
    assert len(lines) == 1 + len(told["weeks"])
    assert float(lines[1].split()[-1]) == round(told["curves"]["a queen a year younger"][0], 1)
