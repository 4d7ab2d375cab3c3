"""``combwright ripe``: is this honey ripe, may it be sold, will it keep."""

from typing import TYPE_CHECKING, Annotated

import typer

from combwright.cli.options import JsonOption, print_json

if TYPE_CHECKING:
    from combwright.services.calculators.honey_ripeness import Jars, Ripeness

EXAMPLE = "Example: `combwright ripe --index 1.4915 --at-c 20`"


def ripe(
    *,
    index: Annotated[
        float | None, typer.Option(help="Refractive index as read, such as 1.4915.")
    ] = None,
    brix: Annotated[
        float | None, typer.Option(help="Reading of a sugar refractometer, such as 80.3.")
    ] = None,
    water: Annotated[float | None, typer.Option(help="Water in percent, if known.")] = None,
    at_c: Annotated[
        float, typer.Option(help="Temperature of the prism; 20 if the instrument corrects itself.")
    ] = 20.0,
    kind: Annotated[
        str, typer.Option(help="general, heather, baker or baker-heather.")
    ] = "general",
    law: Annotated[str, typer.Option(help="eu or uk.")] = "eu",
    yeasts_per_g: Annotated[
        float | None, typer.Option(help="Living yeasts per gram, if a laboratory counted them.")
    ] = None,
    bucket_kg: Annotated[float | None, typer.Option(help="Honey to put into jars.")] = None,
    jar_g: Annotated[float, typer.Option(help="Net weight of a jar in grams.")] = 340.0,
    as_json: JsonOption = False,
) -> None:
    """Judge honey by its water: legal limit, fermentation, and the jars that a bucket fills."""
    from combwright.services.calculators.honey_ripeness import Reading, ripeness

    told = ripeness(
        Reading(
            index=index,
            brix=brix,
            water=water,
            at_c=at_c,
            kind=kind,
            law=law,
            yeasts_per_g=yeasts_per_g,
            bucket_kg=bucket_kg,
            jar_g=jar_g,
        )
    )
    if as_json:
        print_json(told)
    else:
        _show(told)


def _show(told: "Ripeness") -> None:
    rows = {
        "water": f"{told.water_percent:.1f} % ({told.measured})",
        "law": told.says,
        "keeping": told.fermentation.says,
    }
    if told.density_kg_per_l and told.water_activity:
        rows["honey"] = (
            f"{told.density_kg_per_l:.3f} kg/L, water activity {told.water_activity:.3f}"
        )
    if told.jars:
        rows["jars"] = _jars(told.jars)
    for name, words in rows.items():
        typer.echo(f"{name:>9}  {words}")
    limits = ", ".join(f"{kind} {most:g} %" for kind, most in told.limits.items())
    typer.echo(f"\nLimits: {limits}\n  {told.law_text}; {told.law_as_of}")
    for heading, sentences in (("Beware", told.warnings), ("Always", told.cautions)):
        if sentences:
            typer.echo(f"\n{heading}")
        for sentence in sentences:
            typer.echo(f"  - {sentence}")


def _jars(jars: "Jars") -> str:
    return (
        f"{jars.full_jars} of {jars.jar_g:g} g ({jars.volume_ml:.0f} ml) and {jars.left_g:.0f} g "
        f"left; one jar may lack {jars.tolerable_error_g:g} g, the mean nothing; "
        f"figures at least {jars.figure_height_mm:g} mm high"
    )
