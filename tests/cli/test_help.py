"""What every command owes to a person who asks for help."""

import subprocess
import sys

import pytest
from tests.cli.typed import typed
from tests.commands import COMMANDS
from typer.testing import CliRunner

from combwright.cli.main import app

HEAVY = {"numpy", "scipy", "numba", "pydantic", "sqlalchemy", "rich", "altair", "typst", "httpx"}


def options(command: object) -> list[str]:
    return [word for param in getattr(command, "params", []) for word in param.opts]


@pytest.mark.parametrize("words", COMMANDS)
def test_help_says_what_it_does_and_gives_an_example(words: str) -> None:
    shown = CliRunner().invoke(app, [*words.split(), "--help"])
    assert shown.exit_code == 0
    assert "Example:" in shown.output
    assert getattr(COMMANDS[words], "help", "")


def test_every_option_is_explained() -> None:
    assert [
        (words, param.name)
        for words, command in COMMANDS.items()
        for param in getattr(command, "params", [])
        if not getattr(param, "help", None)
    ] == []


def test_every_command_prints_json() -> None:
    assert [words for words in COMMANDS if "--json" not in options(COMMANDS[words])] == []


def test_help_pays_for_no_heavy_library() -> None:
    asked = "import sys, combwright.cli.main; print(*sys.modules)"
    loaded = subprocess.run(
        [sys.executable, "-c", asked], capture_output=True, text=True, check=True
    ).stdout.split()
    assert not HEAVY & set(loaded)


def test_without_a_command_help_is_shown() -> None:
    shown = CliRunner().invoke(app, [])
    assert "evidence" in shown.output
    assert "Usage" in shown.output


def test_an_argument_that_is_no_text_is_refused_in_a_sentence() -> None:
    for argument in ("Al\udcffder", "Al\0der"):
        done = typed("book", "show", argument)
        assert done.returncode == 2
        assert "Traceback" not in done.stderr
        assert done.stderr.startswith("combwright: ")
