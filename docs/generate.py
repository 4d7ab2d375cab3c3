"""Writes the pages that are made from the code: ``python docs/generate.py [--check] [PAGE ...]``.

With ``--check`` nothing is written; pages that are not current are named, with exit code 1.
"""

import json
import os
import sys
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path

os.environ |= {"TERMINAL_WIDTH": "92", "COLUMNS": "92", "NO_COLOR": "1", "TERM": "dumb"}

import typer
from supply import licences  # type: ignore[import-not-found]  # beside this file
from typer.testing import CliRunner

from combwright.cli.main import app
from combwright.evidence import page
from combwright.evidence.assumptions import Assumption, assumptions
from combwright.evidence.check_files import read_checks
from combwright.evidence.running import run_all
from combwright.planning.sheet import RoundSheet
from combwright.terms import glossary
from combwright.terms.entries import ENTRY

DOCS = Path(__file__).parent

COMMANDS = """# Commands

Made from the program: `combwright COMMAND --help` prints the same. Every command has `--json`,
which prints JSON and nothing else. What a person can put right is said in one sentence, with
exit code 2.
"""
NUMBERS = """# Numbers one could argue about

Every parameter of the science, the model and the advice, with its plausible range, its source
and how far that source was checked: see
[how sure the numbers are](concepts.md#how-sure-the-numbers-are).
"""


def commands(group: object, path: tuple[str, ...] = ()) -> Iterator[tuple[str, ...]]:
    """Give the words of every command, in the order in which ``--help`` lists them."""
    for name, command in getattr(group, "commands", {}).items():
        yield (*path, name)
        yield from commands(command, (*path, name))


def command_line() -> str:
    """Write the help of every command."""
    parts = [COMMANDS]
    for words in ((), *commands(typer.main.get_command(app))):
        title = " ".join(("combwright", *words))
        shown = CliRunner().invoke(app, [*words, "--help"], prog_name="combwright")
        lines = "\n".join(line.rstrip() for line in shown.output.strip().splitlines())
        parts.append(f"\n## {title}\n\n```text\n{lines.strip()}\n```\n")
    return "".join(parts)


def words() -> str:
    """Write the glossary."""
    sections = [("Our words", glossary.OURS), ("Words of the trade", glossary.OF_THE_TRADE)]
    tables = "".join(
        f"\n## {title}\n\n| word | meaning |\n|---|---|\n"
        + "".join(f"| {word} | {meaning} |\n" for word, meaning in sorted(table.items()))
        for title, table in sections
    )
    return f"# Glossary\n\nOne word for one thing, in code, screens, paper and docs.\n{tables}"


def _row(found: Assumption) -> str:
    number = found.parameter
    source = " ".join(number.source.split()).replace("|", "\\|")
    name = found.name.removeprefix("PARAMETERS ").replace("_", " ").lower()
    return (
        f"| {name} | {number.value:g} | {number.low:g} to {number.high:g} | {number.unit} "
        f"| {source} | {number.verified} |\n"
    )


def numbers() -> str:
    """Write the table of every number that one could argue about."""
    parts = [NUMBERS]
    module = ""
    for found in assumptions():
        if found.module != module:
            module = found.module
            parts.append(
                f"\n## {module}\n\n| number | value | range | unit | source | verified |\n"
                "|---|---|---|---|---|---|\n"
            )
        parts.append(_row(found))
    return "".join(parts)


def evidence() -> str:
    """Write the published checks and what we get."""
    return page.markdown(run_all(read_checks()))


def schema() -> str:
    """Write the JSON Schema of the round sheet."""
    return json.dumps(RoundSheet.model_json_schema(), indent=2, ensure_ascii=False) + "\n"


def entry_schema() -> str:
    """Write the JSON Schema of the entries of a book."""
    return json.dumps(ENTRY.json_schema(), indent=2, ensure_ascii=False) + "\n"


PAGES: dict[str, Callable[[], str]] = {
    "cli.md": command_line,
    "entries.schema.json": entry_schema,
    "evidence.md": evidence,
    "glossary.md": words,
    "licences.md": licences,
    "numbers.md": numbers,
    "round.schema.json": schema,
}


def main(*, check: bool, names: Iterable[str]) -> int:
    """Write the pages, or say which are not current."""
    stale = []
    for name in names:
        path, text = DOCS / name, PAGES[name]()
        if not path.exists() or path.read_text("utf-8") != text:
            stale.append(f"docs/{name}")
            if not check:
                path.write_text(text, "utf-8", newline="\n")
    if stale:
        said = "not current, run `make docs`" if check else "written"
        sys.stdout.write(f"{', '.join(stale)}: {said}\n")
    return int(check and bool(stale))


if __name__ == "__main__":
    asked = sys.argv[1:]
    named = [name for name in asked if name != "--check"]
    sys.exit(main(check="--check" in asked, names=named or PAGES))
