"""The command line: parse, call a service, print."""

import sys

import typer

from combwright.cli import book, demo, evidence, mites, mix, ripe, serve, warm, weather, whatif, why
from combwright.cli import round as round_command
from combwright.terms.errors import CombwrightError

app = typer.Typer(
    name="combwright",
    no_args_is_help=True,
    add_completion=False,
    pretty_exceptions_enable=False,
    rich_markup_mode="markdown",
    help="From the keeper's notes to the next round: room, warmth, food and care, with reasons.",
)
book.register(app)
demo.register(app)
evidence.register(app)
mites.register(app)
mix.register(app)
ripe.register(app)
round_command.register(app)
serve.register(app)
warm.register(app)
weather.register(app)
whatif.register(app)
why.register(app)


def main() -> None:
    """Run a command; what a person can put right is shown in one sentence, with exit code 2."""
    try:
        app()
    except CombwrightError as error:
        sys.stderr.write(f"combwright: {error}\n")
        sys.exit(2)
