"""The demo on the command line: the files it names are there, and the sheet is shown."""

import json
from pathlib import Path

import pytest
from tests.cli.typed import typed
from typer.testing import CliRunner

from combwright.cli.main import app
from combwright.planning.sheet import RoundSheet

run = CliRunner()


@pytest.fixture(scope="module")
def told(tmp_path_factory: pytest.TempPathFactory) -> dict[str, str]:
    folder = tmp_path_factory.mktemp("demo")
    answer = run.invoke(app, ["demo", "--dir", str(folder), "--json"])
    assert answer.exit_code == 0
    named: dict[str, str] = json.loads(answer.stdout)
    return named


def test_json_names_files_that_are_there(told: dict[str, str]) -> None:
    assert list(told) == ["book", "notebook", "weather", "pdf", "on"]
    assert Path(told["book"]).name == "demo.book"
    for name in ("book", "notebook", "weather", "pdf"):
        assert Path(told[name]).stat().st_size > 500
    assert Path(told["pdf"]).read_bytes().startswith(b"%PDF")


def test_the_round_of_its_day_can_be_asked_for_again(told: dict[str, str]) -> None:
    asked = ["round", "--book", told["book"], "--on", told["on"], "--json"]
    sheet = RoundSheet.model_validate_json(run.invoke(app, asked).stdout)
    assert len(sheet.colonies) >= 16
    assert len(sheet.yards) == 3


def test_it_tells_how_far_it_is_then_shows_the_sheet_and_what_to_try_next(tmp_path: Path) -> None:
    done = typed("demo", "--dir", str(tmp_path))
    assert done.returncode == 0
    assert done.stderr.splitlines() == [
        "Noting the demo's spring: 16 of 16 colonies",
        "Learning from neighbours: 10 of 10 colonies",  # the first yard has by then
        "Reading the notes: 16 of 16 colonies",
        "Planning: 16 of 16 colonies",
    ]
    for part in ("Alder Bank", "Bench", "Load", "Three things to try:\n  combwright serve"):
        assert part in done.stdout
    assert str(tmp_path / "round.pdf") in done.stdout.replace("\n", "")


@pytest.mark.parametrize("name", ["/dev/full", "a file"])
def test_a_folder_that_cannot_be_is_said(name: str, tmp_path: Path) -> None:
    file = tmp_path / "a file"
    file.write_text("mine")
    done = typed("demo", "--dir", str(tmp_path / name))
    assert done.returncode == 2
    assert "Name a folder that you may write, with --dir." in done.stderr
    assert file.read_text() == "mine"
