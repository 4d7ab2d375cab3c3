"""``combwright mix``: sugar and water in, litres of syrup out."""

from dataclasses import asdict
from typing import TYPE_CHECKING, Annotated

import typer

from combwright.cli.options import JsonOption, print_json

if TYPE_CHECKING:
    from combwright.services.calculators.feeder_cooling import FeederCooling
    from combwright.services.calculators.syrup_mixing import Mix

EXAMPLE = "Example: `combwright mix --ratio 2 --sugar-kg 10`"


def mix(
    *,
    ratio: Annotated[
        float | None, typer.Option(help="Sugar to water by weight; 2 for 2:1, 1.667 for 5:3.")
    ] = None,
    percent: Annotated[float | None, typer.Option(help="Sugar by weight, in percent.")] = None,
    sugar_kg: Annotated[
        float | None,
        typer.Option("--sugar-kg", "--feed-sugar-kg", help="Sugar to use, or to be fed, in kg."),
    ] = None,
    water_kg: Annotated[float | None, typer.Option(help="Water by weight.")] = None,
    water_l: Annotated[float | None, typer.Option(help="Water by volume, at 20 °C.")] = None,
    litres: Annotated[float | None, typer.Option(help="Litres of syrup wanted.")] = None,
    pounds: Annotated[float | None, typer.Option(help="Sugar in pounds, with --pints.")] = None,
    pints: Annotated[
        float | None, typer.Option(help="Water in imperial pints (568 ml), with --pounds.")
    ] = None,
    at_c: Annotated[float, typer.Option(help="Temperature at which the syrup is measured.")] = 20.0,
    poured_c: Annotated[
        float | None, typer.Option(help="Warmth of syrup poured into a feeder: how fast it cools.")
    ] = None,
    outside_c: Annotated[float, typer.Option(help="Outside temperature, with --poured-c.")] = 5.0,
    feeder: Annotated[str, typer.Option(help="Feeder, with --poured-c.")] = "rapid feeder",
    as_json: JsonOption = False,
) -> None:
    """Work out a batch of syrup: what to take, what it makes, when it crystallises.

    Give a strength (--ratio or --percent) and one amount, or sugar and water. "2:1" means two
    kilograms of sugar to one of water here; two pounds to the pint is weaker, and has its own form.
    """
    from combwright.services.calculators import syrup_mixing
    from combwright.services.calculators.syrup_batch import Wanted

    wanted = Wanted(
        ratio=ratio,
        percent=percent,
        sugar_kg=sugar_kg,
        water_kg=water_kg,
        water_l=water_l,
        litres=litres,
        pounds=pounds,
        pints=pints,
        at_c=at_c,
    )
    told = syrup_mixing.mix(wanted)
    cooling = None
    if poured_c is not None:
        from combwright.services.calculators.feeder_cooling import feeder_cooling

        cooling = feeder_cooling(
            told.sugar_fraction,
            poured_c=poured_c,
            outside_c=outside_c,
            feeder=feeder,
            litres=told.syrup_l,
        )
    if as_json:
        print_json(asdict(told) | ({} if cooling is None else {"in_feeder": cooling}))
        return
    _show(told)
    if cooling is not None:
        _show_cooling(cooling)


def _show(told: "Mix") -> None:
    below = told.crystallises_below_c
    crystals = "" if below is None else f"crystallises below {below:.0f} °C, "
    water = f"{told.water_kg:.2f} kg ({told.water_l:.2f} L) water"
    rows = {
        "take": f"{told.sugar_kg:.2f} kg sugar, {water}",
        "makes": f"{told.syrup_l:.2f} L = {told.syrup_kg:.2f} kg of syrup at {told.at_c:g} °C",
        "strength": f"{told.sugar_percent:.1f} % sugar, {told.ratio:.2f}:1 by weight, "
        f"{told.sugar_g_per_l:.0f} g sugar a litre, {told.density_kg_per_l:.3f} kg/L",
        "stores": f"about {told.stores_kg:.1f} kg once the bees have ripened it",
        "cold": f"{crystals}freezes near {told.freezes_c:.0f} °C",
        "flow": f"{told.thickness} ({told.viscosity_mpa_s:g} mPa·s)",
        "keeps": told.keeps,
    }
    for name, words in rows.items():
        typer.echo(f"{name:>9}  {words}")
    for heading, sentences in (
        ("Beware", told.warnings),
        ("Measures", told.measures),
        ("Mixing", told.hints),
    ):
        if sentences:
            typer.echo(f"\n{heading}")
        for sentence in sentences:
            typer.echo(f"  - {sentence}")


def _show_cooling(cooling: "FeederCooling") -> None:
    typer.echo(
        f"\n{cooling.feeder}: {cooling.litres:.1f} L poured at {cooling.poured_c:g} °C, "
        f"outside {cooling.outside_c:g} °C"
    )
    rows = {
        "after": [f"{hours} h" for hours in cooling.hours],
        "bare": [f"{degrees:.0f} °C" for degrees in cooling.bare_c],
        "cushion": [f"{degrees:.0f} °C" for degrees in cooling.under_cushion_c],
    }
    for name, cells in rows.items():
        typer.echo(f"{name:>9}  {''.join(f'{cell:<8}' for cell in cells).rstrip()}")
    for sentence in cooling.how_sure:
        typer.echo(f"  - {sentence}")
