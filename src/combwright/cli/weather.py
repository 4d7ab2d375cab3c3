"""``combwright weather``: look at weather, keep it in the book, fetch the forecast of a yard."""

from datetime import date, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

from combwright.cli.options import BookOption, JsonOption, day_of, named_book, print_json
from combwright.terms.dated import dated

if TYPE_CHECKING:
    from combwright.services.weather.kept_weather import KeptWeather, Outlook, WeatherSpread

weather = typer.Typer(no_args_is_help=True, help="Weather: of a file, a climate, a forecast.")

ClimateOption = Annotated[
    str, typer.Option("--climate", help="A built-in climate, such as Dublin, Cork or Oxford.")
]


@weather.command(epilog="Example: `combwright weather show --climate Cork --from 2026-04-01`")
def show(
    file: Annotated[Path | None, typer.Argument(help="A file of weather.")] = None,
    climate: ClimateOption = "Dublin",
    first: Annotated[
        str, typer.Option("--from", help="First day, for a climate, 2026-04-01; else today.")
    ] = "",
    days: Annotated[int, typer.Option(help="How many days, for a climate.")] = 28,
    table: Annotated[
        bool, typer.Option("--table", help="Print the days as a table (CSV), one version.")
    ] = False,
    as_json: JsonOption = False,
) -> None:
    """Show weather by week: warmth, rain, sun and flight hours.

    Of a file: a table with the headings date,tmax_c,tmin_c,rain_mm,sun_h,wind_m_s, a daily file
    or forecast of Met Éireann, or an answer of Open-Meteo or MET Norway. Of a climate: what nine
    of ten years bring.
    """
    from combwright.services.weather import kept_weather as service

    start = day_of(first) if first else date.today()  # noqa: DTZ011  # here and now
    if table and file is not None:
        typer.echo(service.file_table(file, climate), nl=False)
    elif table:
        typer.echo(service.sampled_table(climate, start, _days(days)), nl=False)
    elif file is not None:
        _show(service.file_outlook(file, climate), as_json=as_json)
    else:
        _show(service.sampled_outlook(climate, start, _days(days)), as_json=as_json)


@weather.command(
    epilog='Example: `combwright weather add april.csv --yard "Alder Bank" --book my.book`'
)
def add(
    file: Annotated[Path, typer.Argument(help="A file of weather.")],
    yard: Annotated[str | None, typer.Option(help="The yard that had this weather.")] = None,
    place: Annotated[
        str | None, typer.Option(help="Any other name; without one, all yards of the climate.")
    ] = None,
    climate: ClimateOption = "Dublin",
    named: BookOption = None,
    as_json: JsonOption = False,
) -> None:
    """Keep the weather of a file in the book. Adding it twice changes nothing."""
    from combwright.services.weather.kept_weather import add_file

    _told(add_file(named_book(named), file, place, yard, climate), as_json=as_json)


@weather.command(
    epilog='Example: `combwright weather forecast --yard "Alder Bank" --contact me@example.org`'
)
def forecast(
    yard: Annotated[str, typer.Option(help="A yard whose latitude and longitude are noted.")],
    contact: Annotated[
        str, typer.Option(help="Your e-mail address: the weather service wants to know who asks.")
    ],
    named: BookOption = None,
    as_json: JsonOption = False,
) -> None:
    """Fetch the forecast of a yard (MET Norway, CC BY 4.0) and keep it in the book.

    When the service cannot be reached, the last forecast is used and its age is said.
    """
    from platformdirs import user_cache_path

    from combwright.services.weather.kept_weather import add_forecast
    from combwright.sources.forecast import forecast as fetched

    now = datetime.now().astimezone()
    folder = user_cache_path("combwright", appauthor=False)

    def fetch(latitude: float, longitude: float) -> Any:  # noqa: ANN401  # loaded on demand
        name = f"forecast {latitude:.2f} {longitude:.2f}.json"
        return fetched(latitude, longitude, contact=contact, cache=folder / name, now=now)

    _told(add_forecast(named_book(named), yard, fetch, now), as_json=as_json)


def _days(days: int) -> int:
    from combwright.terms.ranges import within

    return int(within(days, 1, 3660, "--days"))


def _told(kept: "KeptWeather", *, as_json: bool) -> None:
    if as_json:
        print_json(kept)
        return
    typer.echo(f"{kept.place}: {kept.days} days kept, {dated(kept.first)} to {dated(kept.last)}")
    for remark in kept.remarks:
        typer.echo(f"  {remark}")


def _show(told: "Outlook", *, as_json: bool) -> None:
    if as_json:
        print_json(told)
        return
    typer.echo(f"{told.source}\n")
    typer.echo(
        f"{'week from':<12}{'max °C':>15}{'min °C':>15}{'rain mm':>16}"
        f"{'dry days':>10}{'sun h/day':>18}{'flight h/day':>18}"
    )
    for week in told.weeks:
        short = f" ({week.days} d)" if week.days < 7 else ""  # noqa: PLR2004  # a week
        typer.echo(
            f"{week.first}{short:<2}{_range(week.t_max_c):>15}{_range(week.t_min_c):>15}"
            f"{_range(week.rain_mm):>16}{week.dry_days.middle:>10.0f}"
            f"{_range(week.sun_h, 1):>18}{_range(week.flight_h, 1):>18}"
        )
    typer.echo("")
    for remark in (*told.remarks, told.attribution):
        if remark:
            typer.echo(remark)


def _range(spread: "WeatherSpread", digits: int = 0) -> str:
    if spread.low == spread.high:
        return f"{spread.middle:.1f}"
    low, middle, high = (f"{v:.{digits}f}" for v in (spread.low, spread.middle, spread.high))
    return f"{middle} ({low} to {high})"
