"""``combwright bees``: what was sold, hand-over sheets, the sales register, what to report."""

from datetime import date
from typing import Annotated

import typer

from combwright.cli.options import (
    BookOption,
    CsvOption,
    JsonOption,
    PdfOption,
    day_of,
    named_book,
    print_json,
)
from combwright.cli.register import show_record
from combwright.terms.dated import dated

commands = typer.Typer(no_args_is_help=True, help="Bees sold and moved, and what to report.")


@commands.command("list", epilog="Example: `combwright bees list --book yard.book`")
def list_sales(book: BookOption = None, as_json: JsonOption = False) -> None:
    """List sales, yards from which nothing may leave, and what your country wants reported."""
    from combwright.advice.words.wording import many
    from combwright.services.bees_sold.reporting import bees_page

    found = bees_page(named_book(book, must_exist=True))
    if as_json:
        print_json(found)
        return
    for sold in found.sales:
        typer.echo(f"{sold.on} {sold.sale}: {many(sold.count, sold.what)} to {sold.buyer}")
    for one in found.stopped:
        typer.echo(f"Nothing may leave {one.yard}: {one.of} is suspected since {dated(one.since)}.")
    if found.varroa_notices:
        typer.echo(f"Varroa: {found.varroa_notices} places are still to be reported.")
    for duty in found.duties:
        typer.echo(
            f"{duty.name} ({found.place}): {duty.duty}; tell {duty.to}. {_capital(duty.sign)}."
        )
    typer.echo(found.caution)


def _capital(sentence: str) -> str:
    return sentence[:1].upper() + sentence[1:]


@commands.command(epilog="Example: `combwright bees sheet 26-1 --pdf hand-over.pdf`")
def sheet(
    sale: Annotated[str, typer.Argument(help="The number of the sale.")],
    pdf: PdfOption = None,
    book: BookOption = None,
    as_json: JsonOption = False,
) -> None:
    """Make the hand-over sheet of a sale, and say what it does not tell."""
    from combwright.services.bees_sold.hand_over import hand_over
    from combwright.services.book.book import save

    opened = named_book(book, must_exist=True)
    found = hand_over(opened, sale)
    if pdf is not None:
        from combwright.paper.hand_over_sheet import hand_over_pdf

        save(pdf, hand_over_pdf(found, words=opened.now().place_word))
    if as_json:
        print_json(found)
        return
    typer.echo(f"{found.title}, {dated(found.on)}")
    for one in found.missing:
        typer.echo(f"Not told: {one}.")
    for title, rows in found.sections:
        typer.echo(title)
        for word, told in rows:
            typer.echo(f"  {word}: {told}")
    typer.echo("Treatments in the last 12 months")
    for one in found.treatments:
        typer.echo(f"  {one}")
    for one in (*found.cautions, found.law):
        typer.echo(one)


@commands.command(epilog="Example: `combwright bees register --since 2027-01-01 --pdf sales.pdf`")
def register(
    since: Annotated[str, typer.Option(help="The first day, 2027-01-01.")],
    until: Annotated[str | None, typer.Option(help="The last day; today without it.")] = None,
    yard: Annotated[str, typer.Option(help="Of this yard alone.")] = "",
    pdf: PdfOption = None,
    csv: CsvOption = None,
    book: BookOption = None,
    as_json: JsonOption = False,
) -> None:
    """Write who got bees, what was moved and what was lost, as an inspector may ask for it."""
    from combwright.services.bees_sold.sales_register import sales_register
    from combwright.services.book.book import save
    from combwright.services.register.record import as_csv

    last = day_of(until) if until else date.today()  # noqa: DTZ011  (the keeper's own calendar)
    opened = named_book(book, must_exist=True)
    found = sales_register(opened, day_of(since), last, yard)
    if pdf is not None:
        from combwright.paper.record_paper import record_pdf

        save(pdf, record_pdf(found, words=opened.now().place_word))
    if csv is not None:
        save(csv, as_csv(found))
    if as_json:
        print_json(found)
    else:
        show_record(found)


@commands.command("eu-move", epilog="Example: `combwright bees eu-move --afb-km 2.9 --afb-days 29`")
def eu_move(
    afb_km: Annotated[float, typer.Option(min=0, help="Nearest American foulbrood reported.")],
    afb_days: Annotated[float, typer.Option(min=0, help="How many days ago it was reported.")],
    beetle_km: Annotated[float, typer.Option(min=0, help="Nearest small hive beetle.")] = 1000.0,
    tropilaelaps_km: Annotated[float, typer.Option(min=0, help="Nearest Tropilaelaps.")] = 1000.0,
    as_json: JsonOption = False,
) -> None:
    """Say what stands against taking bees from one EU country to another."""
    from combwright.science.health.bees_for_sale import DATA, eu_move_faults

    faults = eu_move_faults(
        afb_km=afb_km, afb_days=afb_days, beetle_km=beetle_km, tropilaelaps_km=tropilaelaps_km
    )
    rule = DATA["moving"]
    if as_json:
        print_json({"faults": faults, "law": rule["law"], "checked_on": rule["checked_on"]})
        return
    for one in faults or (
        "Nothing of these distances stands against it; a certificate is needed.",
    ):
        typer.echo(one)
    typer.echo(f"{rule['law']} (checked on {rule['checked_on']}). Check the current law.")
