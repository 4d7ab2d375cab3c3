"""Any file of weather that is known, by what is in it."""

from combwright.sources.days import Read
from combwright.sources.json_text import parsed
from combwright.sources.met_eireann_daily import is_met_eireann_daily, read_met_eireann_daily
from combwright.sources.met_eireann_forecast import read_met_eireann_forecast
from combwright.sources.met_norway import read_met_norway
from combwright.sources.open_meteo import read_open_meteo
from combwright.sources.table import HEADINGS, read_table
from combwright.terms.errors import SourceError


def read_weather(text: str, name: str) -> Read:
    """Read days of weather from a file, whichever of the known kinds it is.

    A table of our own, a daily file of Met Éireann, an answer of Open-Meteo or of MET Norway, or a
    forecast of Met Éireann.
    """
    begins = text.removeprefix("\ufeff").lstrip()
    if begins.startswith(("{", "[")):
        data = parsed(begins, name)
        norwegian = isinstance(data, dict) and "properties" in data
        return read_met_norway(begins, name) if norwegian else read_open_meteo(begins, name)
    if begins.startswith("<"):
        return read_met_eireann_forecast(begins, name)
    if is_met_eireann_daily(begins):
        return read_met_eireann_daily(text, name)
    if begins[: begins.find("\n")].casefold().startswith("date"):
        return read_table(begins, name)
    raise SourceError(
        "This is no weather file that Combwright knows.",
        where=name,
        remedy=f"A table with the headings {','.join(HEADINGS)} will do.",
    )
