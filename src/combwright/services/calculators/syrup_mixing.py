"""What a keeper can ask about syrup: how much to mix, what it makes, and what to beware of."""

from dataclasses import dataclass

from combwright.science.syrup.keeping import (
    Keeps,
    freezing_c,
    keeps_for,
    saturation_temperature_c,
    solubility_fraction,
    water_activity,
)
from combwright.science.syrup.recipes import Recipe
from combwright.science.syrup.strength import (
    KG_PER_POUND,
    LITRES_PER_IMPERIAL_PINT,
)
from combwright.science.syrup.sucrose import viscosity_mpa_s
from combwright.services.calculators.syrup_batch import Wanted, recipe_for
from combwright.terms.parameters import Parameter

WARM_C = 30.0  # feed given warm is compared with this
GRANULATED_KG_PER_L = Parameter(
    0.85, "kg/L", 0.8, 0.9, "Granulated sugar levelled in a jug", "common practice"
)
HINTS = """\
White granulated sugar only: brown sugar upsets their gut, bought honey can carry foulbrood.
Take hot water off the heat and stir the sugar in until it is clear. Do not boil the syrup and \
add no acid: both make HMF, which harms bees.
Hot syrup sticks to the skin and scalds: lids on, children away, and let it cool to hand warmth \
before it travels.
Feed in the evening, spill none, narrow the entrance, and give none while honey supers are on: \
syrup in honey for sale is adulteration.""".splitlines()
KEEPS: dict[Keeps, str] = {
    "days": "Keeps for days when warm, longer in the cold: most yeasts can grow in it.",
    "weeks": "Keeps for some weeks if clean and cool: common yeasts grow slowly in it.",
    "months": "Keeps for some months if clean and closed; only sugar-loving yeasts grow in it.",
}


@dataclass(frozen=True, slots=True)
class Mix:
    """What to take, what it makes, and what to know about it."""

    sugar_kg: float
    water_kg: float
    water_l: float
    syrup_kg: float
    syrup_l: float
    at_c: float
    ratio: float
    sugar_fraction: float
    sugar_percent: float
    density_kg_per_l: float
    sugar_g_per_l: float
    stores_kg: float
    crystallises_below_c: float | None
    freezes_c: float
    water_activity: float
    viscosity_mpa_s: float
    thickness: str
    keeps: str
    measures: list[str]
    warnings: list[str]
    hints: list[str]


def mix(wanted: Wanted) -> Mix:
    """Work out a batch of syrup from whatever the keeper knows of it.

    Examples
    --------
    >>> mix(Wanted(ratio=1.0, litres=10.0)).sugar_kg
    6.148

    """
    recipe = recipe_for(wanted)
    fraction = recipe.sugar_fraction
    below = _crystallises_below(fraction)
    keeps = keeps_for(fraction)
    return Mix(
        sugar_kg=round(recipe.sugar_kg, 3),
        water_kg=round(recipe.water_kg, 3),
        water_l=round(recipe.water_l, 3),
        syrup_kg=round(recipe.syrup_kg, 3),
        syrup_l=round(recipe.syrup_l, 3),
        at_c=recipe.at_c,
        ratio=round(recipe.sugar_kg / recipe.water_kg, 3),
        sugar_fraction=round(fraction, 4),
        sugar_percent=round(100.0 * fraction, 1),
        density_kg_per_l=round(recipe.density_kg_per_l, 4),
        sugar_g_per_l=round(1000.0 * recipe.sugar_kg / recipe.syrup_l, 1),
        stores_kg=round(recipe.stores_kg, 3),
        crystallises_below_c=None if below is None else round(below, 1),
        freezes_c=round(float(freezing_c(min(fraction, 0.7))), 1),
        water_activity=round(float(water_activity(fraction)), 3),
        viscosity_mpa_s=float(f"{float(viscosity_mpa_s(fraction, recipe.at_c)):.3g}"),
        thickness=_thickness(fraction, recipe.at_c),
        keeps=KEEPS[keeps],
        measures=_measures(recipe),
        warnings=[*_imperial_trap(wanted, fraction), *_warnings(recipe, below, keeps)],
        hints=HINTS,
    )


def _imperial_trap(wanted: Wanted, fraction: float) -> list[str]:
    if wanted.pounds is None or wanted.pints is None:
        return []
    by_weight = 100.0 * wanted.pounds / (wanted.pounds + wanted.pints)
    said = (
        f"{wanted.pounds:g} lb to {wanted.pints:g} imperial pints is {100 * fraction:.1f} % sugar, "
        f"not the {by_weight:.1f} % of {wanted.pounds:g}:{wanted.pints:g} by weight: a pint of "
        "water weighs 1.25 lb."
    )
    return [said]


def _crystallises_below(fraction: float) -> float | None:
    if fraction <= float(solubility_fraction(0.0)):
        return None
    return float(saturation_temperature_c(fraction))


def _warnings(recipe: Recipe, below: float | None, keeps: Keeps) -> list[str]:
    said = []
    if below is not None:
        said.append(
            f"It crystallises below about {below:.0f} °C: feed it fresh and warm, or mix 5:3 "
            "(62.5 %), which stays clear down to freezing."
        )
        if recipe.at_c < below:
            said.append(
                f"At {recipe.at_c:g} °C it holds more sugar than stays dissolved: it will set "
                "crystals in the feeder in time."
            )
    if keeps == "days":
        said.append("It sours within days when warm: mix no more than the next round takes.")
    return said


def _thickness(fraction: float, at_c: float) -> str:
    now = float(viscosity_mpa_s(fraction, at_c))
    times = now / float(viscosity_mpa_s(fraction, WARM_C))
    if times < 1.0:
        return f"at {at_c:g} °C thinner than at {WARM_C:g} °C, by a factor of {1 / times:.1f}"
    words = {1: "about as thick as", 2: "twice as thick as", 3: "three times as thick as"}
    whole = round(times)
    close = abs(times - whole) <= 0.2 and whole in words  # noqa: PLR2004  # what "twice" may mean
    said = words[whole] if close else f"{times:.1f} times as thick as"
    return f"at {at_c:g} °C {said} at {WARM_C:g} °C"


def _measures(recipe: Recipe) -> list[str]:
    pounds, ounces = divmod(round(recipe.sugar_kg / KG_PER_POUND * 16.0), 16)
    jugs = recipe.sugar_kg / GRANULATED_KG_PER_L.value
    pints = recipe.water_l / LITRES_PER_IMPERIAL_PINT
    bags, vessel = recipe.sugar_kg, 1.15 * recipe.syrup_l
    sugar = f"sugar: {bags:.1f} one-kilogram bags, {pounds} lb {ounces} oz, or without a scale "
    return [
        f"{sugar}about {jugs:.1f} litre jugs levelled",
        f"water: {recipe.water_l:.2f} litre jugs, {pints:.1f} imperial pints",
        f"vessel: at least {vessel:.1f} L, to stir in",
    ]
