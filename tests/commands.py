"""The commands of the program, for the tests that go through all of them."""

import typer

from combwright.cli.main import app


def _below(group: object, path: tuple[str, ...]) -> dict[str, object]:
    found = getattr(group, "commands", None)
    if not found:
        return {" ".join(path): group}
    return {
        words: command
        for name in found
        for words, command in _below(found[name], (*path, name)).items()
    }


COMMANDS = _below(typer.main.get_command(app), ())
"""Every command that does something, by its words; groups only lead to others."""
