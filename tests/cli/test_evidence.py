"""``combwright evidence`` as a keeper types it."""

import json

import pytest
import typer
from typer.testing import CliRunner

from combwright.cli.evidence import tell
from combwright.cli.main import app
from combwright.evidence.check_files import read_checks
from combwright.evidence.running import run_all

FIELDS = {"id", "topic", "says", "expected", "tolerance", "got", "unit", "source", "verified"}
FIELDS |= {"passes", "conflict", "note", "fails_because", "stands", "year", "spread"}


def test_json_tells_everything_about_every_check() -> None:
    result = CliRunner().invoke(app, ["evidence", "mites", "--json"])
    given = json.loads(result.stdout)
    told, counts = given["checks"], given["counts"]
    assert len(told) == counts["checks"] == len(read_checks("mites"))
    assert {entry["topic"] for entry in told} == {"mites"}
    assert all(set(entry) >= FIELDS for entry in told)
    independent = [one for one in told if one["stands"] == "independent"]
    read = [one for one in independent if one["verified"] in {"read", "second-hand"}]
    assert len(read) == counts["independent"]
    assert sum(one["year"] != "" for one in read) == counts["on simulated colonies"]
    unexplained = [e["id"] for e in told if not e["passes"] and not e["fails_because"]]
    assert result.exit_code == (1 if unexplained else 0)


def test_the_table_says_who_and_how_and_where_sources_disagree() -> None:
    shown = CliRunner().invoke(app, ["evidence", "honey"]).stdout
    assert "independent values were read" in shown.splitlines()[0]
    shown = " ".join(shown.split())
    for words in ("who says so", "Chataway", "Sources disagree", "0 fail unexplained"):
        assert words in shown


def test_an_unexplained_failure_ends_with_exit_code_1(
    capsys: pytest.CaptureFixture[str],
) -> None:
    wrong = read_checks("syrup")[0].model_copy(update={"expected": 9.9})
    with pytest.raises(typer.Exit) as ending:
        tell(run_all([wrong]), as_json=False)
    assert ending.value.exit_code == 1
    assert "FAILS" in capsys.readouterr().out


def test_an_unknown_topic_names_the_known() -> None:
    result = CliRunner().invoke(app, ["evidence", "wasps"])
    assert "The topics are: syrup, honey" in str(result.exception)
