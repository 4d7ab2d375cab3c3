"""``combwright colony`` and ``combwright score`` as a keeper types them."""

import json
from pathlib import Path

import pytest
from typer.testing import CliRunner

from combwright.cli.main import app
from combwright.services.demo import Paths


def answered(demo: Paths, *words: str) -> str:
    given = ["--on", demo.on.isoformat(), "--book", str(demo.book), "--members", "30"]
    result = CliRunner().invoke(app, [*words, *given], env={"COLUMNS": "120"})
    assert result.exit_code == 0, result.output
    return result.stdout


def test_a_colony_in_the_terminal(demo: Paths) -> None:
    shown = answered(demo, "colony", "Bramble")
    assert "Bramble in Alder Bank" in shown
    assert "┼" in shown
    assert "noted" in shown
    assert "if nothing is done" in shown


def test_a_colony_as_json_and_nothing_else(demo: Paths) -> None:
    told = json.loads(answered(demo, "colony", "Bramble", "--json"))
    assert told["colony"] == "Bramble"
    assert len(told["days"]) == len(told["series"]["stores_kg"]["mid"])
    assert isinstance(told["notes"]["frames_of_bees"][0][1], float)


def test_charts_are_written(demo: Paths, tmp_path: Path) -> None:
    answered(demo, "colony", "Bramble", "--svg", str(tmp_path / "charts"))
    drawn = sorted(path.name for path in (tmp_path / "charts").iterdir())
    assert "frames-of-bees.svg" in drawn
    assert (tmp_path / "charts" / "mites.svg").read_text("utf-8").startswith("<svg")


def test_scores_in_the_terminal(demo: Paths) -> None:
    shown = answered(demo, "score")
    assert "notes lay within the band" in shown
    assert "Bramble" in shown


def test_scores_as_json(demo: Paths) -> None:
    told = json.loads(answered(demo, "score", "Bramble", "--json"))
    assert {line["colony"] for line in told["by_colony"]} == {"Bramble"}
    assert 0 <= told["together"][0]["within_90"] <= 1


@pytest.mark.parametrize("columns", [60, 80, 120])
def test_a_drawing_is_no_wider_than_the_terminal(demo: Paths, columns: int) -> None:
    given = ["colony", "Bramble", "--on", demo.on.isoformat(), "--book", str(demo.book)]
    shown = CliRunner().invoke(app, [*given, "--members", "30"], env={"COLUMNS": str(columns)})
    drawn = [line for line in shown.stdout.splitlines() if "┼" in line and "where" not in line]
    assert len(drawn) > 10
    assert max(map(len, drawn)) <= columns
