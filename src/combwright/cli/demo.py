"""The demo: an invented keeper's book, and its round."""

from pathlib import Path
from typing import Annotated

import typer

from combwright.cli.options import JsonOption, print_json


def demo(
    folder: Annotated[Path, typer.Option("--dir", help="Folder to write into.")] = Path("demo"),
    json: JsonOption = False,
) -> None:
    """Write an invented keeper's spring into a folder, and plan its next round.

    Example: `combwright demo --dir demo`
    """
    from combwright.cli.options import named_book
    from combwright.cli.progress import counted
    from combwright.services.demo import write_demo

    with counted(shown=not json) as progress:
        paths = write_demo(folder, progress=progress)

    from combwright.paper.round_sheet import round_pdf
    from combwright.services.book.book import save
    from combwright.services.rounds.from_book import round_sheet

    with counted(shown=not json) as progress:
        sheet = round_sheet(named_book(str(paths.book)), paths.on, progress=progress)
    pdf = paths.book.with_name("round.pdf")
    save(pdf, round_pdf(sheet))
    if json:
        files = {"book": paths.book, "notebook": paths.notebook, "weather": paths.weather}
        print_json(files | {"pdf": pdf, "on": paths.on})
        return

    from combwright.cli.round import show

    show(sheet)
    typer.echo(f"\nThe sheet to print is {pdf}.")
    book = f"--book {paths.book}"
    typer.echo("\nThree things to try:")
    typer.echo(f"  combwright serve {book}  (the page for phone and desk)")
    typer.echo(f"  combwright why Bramble --on {paths.on} {book}")
    typer.echo(f"  combwright whatif Bramble --on {paths.on} --feed-g 1500 {book}")
