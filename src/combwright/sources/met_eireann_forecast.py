"""Point forecasts of Met Éireann (XML)."""

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from xml.etree import ElementTree as ET

from combwright.sources.days import Read, gather
from combwright.sources.hours import Instant, Stretch, to_days
from combwright.sources.problems import WeatherProblem
from combwright.terms.errors import SourceError

ATTRIBUTION = (
    "Met Éireann forecast, © Met Éireann, Met Éireann Open Data Custom Licence; heed its weather "
    "warnings"
)


def read_met_eireann_forecast(text: str, name: str) -> Read:
    """Read the days of a forecast.

    Blocks whose ``from`` is their ``to`` hold what is so at that time; the others hold rain of
    the time between. Neither their order nor their number is relied on.
    """
    blocks = list(_parsed(text, name).iter("time"))
    places = [block.find("location") for block in blocks]
    if not blocks or any(place is None for place in places):
        raise SourceError("There are no times with a location in it.", where=name)
    moments: list[Instant] = []
    rain: dict[datetime, Stretch] = {}
    light: dict[datetime, float] = {}
    latitude = longitude = 0.0
    for block, place in zip(blocks, places, strict=True):
        if place is None:
            continue
        latitude = _number(place, ".", "latitude", name) or latitude
        longitude = _number(place, ".", "longitude", name) or longitude
        ahead = timedelta(hours=round(longitude / 15))
        begins, ends = (_time(block.get(one), name) + ahead for one in ("from", "to"))
        if begins == ends:
            cloud = _number(place, "cloudiness", "percent", name)
            moments.append(
                Instant(
                    ends,
                    _number(place, "temperature", "value", name),
                    _number(place, "windSpeed", "mps", name),
                    None if cloud is None else cloud / 100,
                )
            )
            watts = _number(place, "globalRadiation", "value", name)
            light |= {} if watts is None else {ends: watts}
        else:
            fallen = _number(place, "precipitation", "value", name)
            shorter = ends not in rain or ends - begins < rain[ends].ends - rain[ends].begins
            if fallen is not None and shorter:
                rain[ends] = Stretch(begins, ends, fallen)
    steps = list(_lit(rain, light))
    problems: list[WeatherProblem] = []
    days = list(to_days(moments, steps, latitude, problems))
    return gather(days, name, ATTRIBUTION, problems)


def _lit(rain: dict[datetime, Stretch], light: dict[datetime, float]) -> Iterator[Stretch]:
    """Join what is said of radiation to the steps that end there."""
    for ends, step in rain.items():
        yield Stretch(step.begins, ends, step.rain_mm, radiation_w_m2=light.get(ends))


def _parsed(text: str, name: str) -> ET.Element:
    if "<!DOCTYPE" in text or "<!ENTITY" in text:
        raise SourceError("A forecast has no document type of its own.", where=name)
    try:
        return ET.fromstring(text.removeprefix("\ufeff"))  # noqa: S314  # no entities, see above
    except ET.ParseError as error:
        line, column = error.position
        raise SourceError(
            "This is not whole XML.",
            where=f"{name}, line {line}, column {column}",
            remedy="Fetch it again.",
        ) from error


def _time(said: str | None, where: str) -> datetime:
    try:
        return datetime.fromisoformat(said or "").astimezone(UTC).replace(tzinfo=None)
    except ValueError as error:
        raise SourceError(f"“{said}” is no time.", where=where) from error


def _number(place: ET.Element, path: str, attribute: str, where: str) -> float | None:
    found = place.find(path)
    said = None if found is None else found.get(attribute)
    try:
        return None if said is None else float(said)
    except ValueError as error:
        raise SourceError(f"{path} {attribute} is no number: “{said}”.", where=where) from error
