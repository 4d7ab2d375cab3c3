"""``combwright honey``: tanks and jars, labels, and where honey came from and went."""

from datetime import date
from typing import TYPE_CHECKING, Annotated

import typer

from combwright.cli.options import (
    BookOption,
    CsvOption,
    JsonOption,
    PdfOption,
    named_book,
    print_json,
)
from combwright.cli.register import show_record
from combwright.terms.dated import dated

if TYPE_CHECKING:
    from combwright.services.honey.tanks import HoneyPage

commands = typer.Typer(no_args_is_help=True, help="Honey from the hives to the jars.")
Traced = Annotated[str, typer.Argument(help="A lot, a batch of honey, a colony, a yard, a seller.")]


@commands.command("list", epilog="Example: `combwright honey list --book yard.book`")
def list_honey(book: BookOption = None, as_json: JsonOption = False) -> None:
    """List tanks and lots as they stand, and the code of the next lot."""
    from combwright.services.honey.tanks import honey_now

    today = date.today()  # noqa: DTZ011  (the keeper's own calendar)
    found = honey_now(named_book(book, must_exist=True), today)
    if as_json:
        print_json(found)
    else:
        _show(found)


def _show(found: "HoneyPage") -> None:
    for one in found.tanks:
        came = "" if one.in_kg is None else f" of {one.in_kg:g} kg that came in"
        typer.echo(f"{one.honey}, {dated(one.on)}: {one.kg:g} kg{came}, {one.left_kg:g} kg left.")
        typer.echo(f"  {one.says}")
    for lot in found.shelves:
        typer.echo(
            f"{lot.lot} of {lot.honey}: {lot.jars} jars of {lot.jar_g:g} g, {lot.left} left; "
            f"{lot.best_before}; keep its papers until {dated(lot.kept_until)}."
        )
        for sample in lot.weighed:
            verdict = " ".join(sample.faults) or "as the label says"
            typer.echo(f"  {sample.jars} weighed, mean {sample.mean_g:.1f} g: {verdict}")
    if not found.tanks:
        typer.echo("No batch of honey is in the book yet.")
    typer.echo(f"The next lot today: {found.next_lot}")


@commands.command(epilog="Example: `combwright honey trace L26232-1 --pdf trace.pdf`")
def trace(
    name: Traced,
    pdf: PdfOption = None,
    csv: CsvOption = None,
    book: BookOption = None,
    as_json: JsonOption = False,
) -> None:
    """Follow honey both ways: where it came from, its jars, who has them; the list for a recall."""
    from combwright.services.book.book import save
    from combwright.services.honey import tracing
    from combwright.services.register.record import as_csv

    opened = named_book(book, must_exist=True)
    found = tracing.trace(opened, name)
    record = tracing.recall(found, date.today())  # noqa: DTZ011  (the keeper's own calendar)
    if pdf is not None:
        from combwright.paper.record_paper import record_pdf

        save(pdf, record_pdf(record, words=opened.now().place_word))
    if csv is not None:
        save(csv, as_csv(record))
    if as_json:
        print_json(found)
    else:
        show_record(record)


@commands.command(epilog="Example: `combwright honey labels L26232-1 --sheet 21 --pdf labels.pdf`")
def labels(
    lot: Annotated[str, typer.Argument(help="The lot.")],
    pdf: PdfOption = None,
    sheet: Annotated[int, typer.Option(help="Labels to an A4 sheet: 8, 12, 14, 21 or 24.")] = 21,
    count: Annotated[
        int | None, typer.Option(help="How many labels; one a jar without it.", min=1, max=5000)
    ] = None,
    used: Annotated[
        int, typer.Option(help="Labels of the first sheet that are gone.", min=0, max=23)
    ] = 0,
    article: Annotated[
        str, typer.Option(help="Its article number of GS1, for the text of a trade code.")
    ] = "",
    book: BookOption = None,
    as_json: JsonOption = False,
) -> None:
    """Make the labels of a lot, and say what they lack by the rules of your country."""
    from combwright.services.book.book import save
    from combwright.services.honey.labels import labels_of

    found = labels_of(named_book(book, must_exist=True), lot, article)
    if pdf is not None:
        from combwright.paper.label_sheet import label_pdf

        save(pdf, label_pdf(found, sheet=sheet, count=count, used=used))
    if as_json:
        print_json(found)
        return
    label = found.label
    for line in (
        f"{label.name}, {label.weight} (figures at least {label.figures_mm:g} mm high)",
        f"{label.operator}, {label.address}".strip(", "),
        found.origin,
        f"{label.best_before}, {label.lot}",
        *([found.trade_text] if found.trade_text else []),
        *(f"Missing: {one}" for one in found.faults),
        *found.cautions,
        found.rule.sentence,
    ):
        typer.echo(line)


@commands.command(epilog="Example: `combwright honey analysis --plant borage --sucrose 14`")
def analysis(
    plant: Annotated[str, typer.Option(help="What it is mainly from: ling, lime, borage …")] = "",
    hmf: Annotated[float | None, typer.Option(min=0, help="HMF, mg/kg.")] = None,
    diastase: Annotated[float | None, typer.Option(min=0, help="Diastase, Schade.")] = None,
    conductivity: Annotated[float | None, typer.Option(min=0, help="mS/cm.")] = None,
    sucrose: Annotated[float | None, typer.Option(min=0, help="g/100 g.")] = None,
    free_acid: Annotated[float | None, typer.Option(min=0, help="meq/kg.")] = None,
    as_json: JsonOption = False,
) -> None:
    """Hold a laboratory's figures of a honey against the law of its composition."""
    from combwright.science.honey import composition

    figures = composition.HoneyFigures(
        plant.lower(), hmf, diastase, conductivity, sucrose, free_acid
    )
    faults = composition.composition_faults(figures)
    told = composition.DATA["source"]
    if as_json:
        print_json({"figures": figures, "faults": faults, "source": told})
        return
    for one in faults or ("Nothing of these figures is beyond the law that is known here.",):
        typer.echo(one)
    typer.echo(f"Directive 2001/110/EC, annex II: {told}. Check the current law of your country.")
