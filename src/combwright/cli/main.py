"""The command line: parse, call a service, print."""

import errno
import os
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import Annotated

import typer

from combwright.cli import (
    backup,
    bees,
    book,
    buyers,
    colony,
    demo,
    evidence,
    honey,
    looking_back,
    mites,
    mix,
    moving,
    own_sheet,
    people,
    prices,
    queens,
    register,
    ripe,
    score,
    season,
    serve,
    supply,
    warm,
    weather,
    whatif,
    why,
    worth,
)
from combwright.cli import round as round_command
from combwright.cli.options import KIT_FOLDER, in_own_words
from combwright.terms.errors import CombwrightError, NotFoundError, OutputError

NO_OUTPUT = {errno.ENOSPC, errno.EDQUOT, errno.EIO, errno.EBADF, errno.EFBIG}

app = typer.Typer(
    name="combwright",
    no_args_is_help=True,
    add_completion=False,
    pretty_exceptions_enable=False,
    rich_markup_mode="markdown",
    help="From the keeper's notes to the next round: room, warmth, food and care, with reasons.",
)


@app.callback()
def shared(
    kit: Annotated[
        Path | None,
        typer.Option(
            envvar="COMBWRIGHT_KIT",
            help="Folder with files of your own kit: see docs/kit.md.",
        ),
    ] = None,
) -> None:
    """From the keeper's notes to the next round: room, warmth, food and care, with reasons."""
    KIT_FOLDER.set(kit)


app.add_typer(bees.commands, name="bees")
book.commands.command("import", epilog=own_sheet.EXAMPLE)(own_sheet.import_sheet)
for look in (looking_back.find, looking_back.history, looking_back.photo):
    book.commands.command(epilog=looking_back.EXAMPLES[look.__name__])(look)
book.commands.command(epilog=moving.EXAMPLE)(moving.move)
app.command(epilog=backup.EXAMPLE)(backup.backup)
app.add_typer(book.commands, name="book")
app.add_typer(buyers.commands, name="buyers")
app.command(epilog=backup.EXAMPLE_CHECK)(backup.check)
app.command()(colony.colony)
app.command()(demo.demo)
app.command(epilog=evidence.EXAMPLE)(evidence.evidence)
app.add_typer(honey.commands, name="honey")
app.command(epilog=mites.EXAMPLE)(mites.mites)
app.command(epilog=mix.EXAMPLE)(mix.mix)
app.add_typer(people.commands, name="people")
app.command(epilog=prices.EXAMPLE)(prices.prices)
app.command()(register.register)
app.command(epilog=backup.EXAMPLE_RESTORE)(backup.restore)
app.command(epilog=queens.EXAMPLE)(queens.queens)
app.command(epilog=ripe.EXAMPLE)(ripe.ripe)
app.command()(score.score)
app.command("round")(round_command.plan_round)
app.command(epilog=season.EXAMPLE)(season.season)
app.command(epilog=serve.EXAMPLE)(serve.serve)
app.command(epilog=supply.EXAMPLE)(supply.supply)
app.command(epilog=warm.EXAMPLE)(warm.warm)
app.add_typer(weather.weather, name="weather")
app.command("whatif")(whatif.what_if)
app.command("why")(why.tell_why)
app.command(epilog=worth.EXAMPLE)(worth.worth)


def main() -> None:
    """Run a command; what a person can put right is shown in one sentence, with exit code 2."""
    try:
        if sys.stdout is None:
            raise OutputError(
                "There is nowhere to write the answer to: the output is closed.",
                remedy="Send it to a file, or leave it open.",
            )
        refuse_unreadable(sys.argv[1:])
        app()
    except CombwrightError as error:
        where = f"{error.where}: " if error.where else ""
        _end(where + in_own_words(f"{error.what} {error.remedy}".strip()))
    except OSError as error:
        # a file that fails is named where it is opened; without a name it is the output itself
        if error.filename is not None or error.errno not in NO_OUTPUT:
            raise
        _end(f"The answer cannot be written out: {error.strerror}. Send it somewhere with room.")


def refuse_unreadable(arguments: Sequence[str]) -> None:
    """Refuse what is no text: it could be neither shown nor written into a book."""
    for each in arguments:
        try:
            each.encode()
        except UnicodeEncodeError:
            told = each.encode("utf-8", "replace").decode()
            raise NotFoundError(
                f"“{told}” is not UTF-8 text.", remedy="Write it, or name the file, in UTF-8."
            ) from None
        if "\0" in each:
            raise NotFoundError("An argument holds a zero byte.", remedy="Leave it out.")


def _end(sentence: str) -> None:
    """Leave with a sentence; what the output still holds is dropped, for it cannot be written."""
    sys.stderr.write(f"combwright: {sentence}\n")
    sys.stderr.flush()
    if sys.stdout is not None:
        try:
            sys.stdout.flush()
        except OSError:
            os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    sys.exit(2)
