"""What a keeper can ask about honey: is it ripe, may it be sold, will it keep."""

from dataclasses import dataclass
from typing import get_args

from combwright.science.honey.honey_law import Kind, WaterLimit, is_legal, water_limit
from combwright.science.honey.jars import (
    figure_height_mm,
    full_jars,
    jar_volume_ml,
    tolerable_error_g,
)
from combwright.science.honey.moisture import (
    density_kg_per_l,
    water_activity,
    water_percent_of_brix,
    water_percent_of_index,
    water_within,
)
from combwright.science.honey.spoiling import ferments, yeasts_allowed_per_g
from combwright.terms.errors import CombwrightError
from combwright.terms.parameters import Parameter
from combwright.terms.ranges import within

HAND_ERROR_PERCENT = Parameter(
    0.3, "%", 0.1, 0.5, "What two readings on a hand refractometer differ by", "judgement"
)
TABLE_DRIEST, TABLE_WETTEST = 13.0, 25.0
CAUTIONS = """\
Not for infants under one year: honey can carry spores of botulism.
Check the instrument with its test oil or block, clean and dry, at the temperature you give; stir \
the bucket and take the mean of three readings.
Keep it as food: clean dry vessels, lids on, nothing that was used for treatments.
The law is quoted as we know it; label, registration and limits are for your food authority to \
say. Check the text in force.""".splitlines()


@dataclass(frozen=True, slots=True)
class Fermentation:
    """Whether honey ferments."""

    verdict: str
    yeasts_allowed_per_g: float | None
    says: str


@dataclass(frozen=True, slots=True)
class Jars:
    """What a bucket fills, and what scale and label must keep to."""

    jar_g: float
    full_jars: int
    left_g: float
    volume_ml: float
    tolerable_error_g: float
    figure_height_mm: float


@dataclass(frozen=True, slots=True)
class Ripeness:
    """Water in honey, and what follows from it."""

    water_percent: float
    measured: str
    legal: bool
    kind: str
    law: str
    limit_percent: float
    limits: dict[str, float]
    law_text: str
    law_as_of: str
    says: str
    fermentation: Fermentation
    density_kg_per_l: float | None
    water_activity: float | None
    jars: Jars | None
    warnings: list[str]
    cautions: list[str]


@dataclass(frozen=True, slots=True)
class Reading:
    """What was measured, and of which honey."""

    index: float | None = None
    brix: float | None = None
    water: float | None = None
    at_c: float = 20.0
    kind: str = "general"
    law: str = "eu"
    yeasts_per_g: float | None = None
    bucket_kg: float | None = None
    jar_g: float = 340.0


def ripeness(reading: Reading) -> Ripeness:
    """Judge honey by its water, rounded to the tenth of a percent that instruments resolve.

    Examples
    --------
    >>> ripeness(Reading(index=1.4915)).water_percent
    18.0

    """
    exact, measured = _water(reading)
    water = round(exact, 1)
    limit = water_limit(reading.kind, reading.law)
    legal = is_legal(water, reading.kind, reading.law)
    in_table = TABLE_DRIEST <= water <= TABLE_WETTEST
    return Ripeness(
        water_percent=water,
        measured=measured,
        legal=legal,
        kind=limit.kind,
        law=limit.law,
        limit_percent=limit.most_percent,
        limits={kind: water_limit(kind, reading.law).most_percent for kind in get_args(Kind)},
        law_text=limit.text,
        law_as_of=limit.as_of,
        says=_verdict(water, limit, legal=legal),
        fermentation=_keeping(water, reading.yeasts_per_g),
        density_kg_per_l=round(float(density_kg_per_l(water)), 3) if in_table else None,
        water_activity=round(float(water_activity(water)), 3) if in_table else None,
        jars=_jars(reading, water),
        warnings=_warnings(water, limit, reading.kind),
        cautions=CAUTIONS,
    )


def _water(reading: Reading) -> tuple[float, str]:
    """Give the water and how it was measured."""
    given = [value for value in (reading.index, reading.brix, reading.water) if value is not None]
    if len(given) != 1:
        raise CombwrightError(
            "One reading is needed, and no more.",
            remedy="Give one of --index 1.4915, --brix 80.3 or --water 18.",
        )
    if reading.index is not None:
        water = float(water_percent_of_index(reading.index, reading.at_c))
        return water, f"refractive index {reading.index:g} at {reading.at_c:g} °C"
    if reading.brix is not None:
        water = float(water_percent_of_brix(reading.brix, reading.at_c))
        return water, f"{reading.brix:g} Brix at {reading.at_c:g} °C"
    return float(water_within(reading.water or 0.0)), "water as given"


def _verdict(water: float, limit: WaterLimit, *, legal: bool) -> str:
    most = f"{limit.most_percent:g} % that {limit.law.upper()} law allows in {limit.kind} honey"
    if legal:
        return f"{water:.1f} % is within the {most}."
    return f"{water:.1f} % is illegal: above the {most}. It may not be sold as such."


def _keeping(water: float, yeasts_per_g: float | None) -> Fermentation:
    allowed = float(yeasts_allowed_per_g(water))
    always, never = allowed == 0.0, allowed == float("inf")
    if yeasts_per_g is not None:
        count = float(within(yeasts_per_g, 0.0, 1e9, "The count of yeasts", "per gram"))
        at_risk = bool(ferments(water, count))
    else:
        at_risk = always
    if never:
        return Fermentation(
            "safe", None, "Keeps whatever the yeasts, while it stays closed and even."
        )
    if always:
        return Fermentation("at risk", 0.0, "Will ferment sooner or later, with any yeasts at all.")
    bound = f"fewer than {allowed:g} yeasts per gram"
    if yeasts_per_g is None:
        return Fermentation(
            "depends on the yeasts", allowed, f"Keeps only with {bound}; keep it cool."
        )
    if at_risk:
        return Fermentation("at risk", allowed, f"At risk: it would need {bound}.")
    return Fermentation("safe", allowed, f"Keeps: it has {bound}.")


def _jars(reading: Reading, water: float) -> Jars | None:
    if reading.bucket_kg is None:
        return None
    count = int(full_jars(reading.bucket_kg, reading.jar_g))
    return Jars(
        jar_g=reading.jar_g,
        full_jars=count,
        left_g=round(max(0.0, 1000.0 * reading.bucket_kg - count * reading.jar_g), 1),
        volume_ml=round(float(jar_volume_ml(reading.jar_g, water)), 1),
        tolerable_error_g=round(float(tolerable_error_g(reading.jar_g)), 1),
        figure_height_mm=float(figure_height_mm(reading.jar_g)),
    )


def _warnings(water: float, limit: WaterLimit, kind: str) -> list[str]:
    said = []
    if abs(water - limit.most_percent) <= HAND_ERROR_PERCENT.value:
        said.append(
            f"That is within {HAND_ERROR_PERCENT.value:g} % of the limit, about what a hand "
            "refractometer errs by: measure again, with another instrument if you can."
        )
    if not TABLE_DRIEST <= water <= TABLE_WETTEST:
        said.append(
            f"The published table runs from {TABLE_DRIEST:g} to {TABLE_WETTEST:g} % of water; "
            "outside it the figure is a guess."
        )
    if kind.startswith("baker"):
        said.append("Baker's honey is for industry or as an ingredient, and must be labelled so.")
    if water > limit.most_percent:
        said.append(
            "Leave unsealed combs with the bees, or dry supers in warm dry air before extracting; "
            "do not mix wet honey away into dry."
        )
    return said
