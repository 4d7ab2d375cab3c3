"""What is locked is looked up in a stored list, which can be renewed from the export of OSV."""

import json
import subprocess
import sys
from datetime import date
from pathlib import Path
from types import ModuleType
from typing import Any
from zipfile import ZipFile

import pytest

DOCS = Path(__file__).parent.parent / "docs"


@pytest.fixture(scope="module")
def tool() -> ModuleType:
    with pytest.MonkeyPatch.context() as patch:
        patch.syspath_prepend(str(DOCS))
        import known_holes  # type: ignore[import-not-found]

        return known_holes  # type: ignore[no-any-return]


def test_no_locked_version_is_in_the_stored_list() -> None:
    done = subprocess.run(
        [sys.executable, DOCS / "known_holes.py"], capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stdout
    assert "0 known holes" in done.stdout


def test_a_version_with_a_hole_is_named_with_what_mends_it(tool: ModuleType) -> None:
    stored = json.loads((DOCS / "known_holes.json").read_text("utf-8"))
    packages = {("starlette", "1.3.0"), ("starlette", "1.3.1"), ("jinja2", "3.1.5")}
    found = [(one.package, one.version, one.fixed) for one in tool.holes(packages, stored)]
    assert found == [("jinja2", "3.1.5", "3.1.6"), ("starlette", "1.3.0", "1.3.1")]


def test_the_list_is_made_anew_from_an_export(tool: ModuleType, tmp_path: Path) -> None:
    def told(name: str, *events: dict[str, str]) -> dict[str, Any]:
        about = {
            "package": {"name": "Jinja2"},
            "ranges": [{"type": "ECOSYSTEM", "events": list(events)}],
        }
        return {"id": name, "affected": [about]}

    archive = tmp_path / "all.zip"
    with ZipFile(archive, "w") as file:
        twice = ({"introduced": "0"}, {"fixed": "2.1"}, {"introduced": "3"}, {"fixed": "3.2"})
        for each in (
            told("A", *twice),
            told("B", {"introduced": "1"}, {"last_affected": "1.9"}),
            told("C", {"introduced": "4"}),
            told("D", {"introduced": "0"}) | {"withdrawn": "2026-01-01"},
        ):
            file.writestr(f"{each['id']}.json", json.dumps(each))
    made = tool.renewed(archive, {"jinja2"}, date(2026, 11, 27))
    assert made["as_of"] == "2026-11-27"

    def hit(version: str) -> list[str]:
        return [one.advisory for one in tool.holes({("jinja2", version)}, made)]

    assert [hit(version) for version in ("2.0", "2.1", "1.9", "3.1", "3.2", "4.1")] == [
        ["A"], [], ["A", "B"], ["A"], [], ["C"],
    ]  # fmt: skip
    assert tool.renewed(archive, {"mako"}, date(2026, 11, 27))["advisories"] == []
