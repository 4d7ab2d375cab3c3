"""``combwright mites``: from a count to what it means and what to do by when."""

from dataclasses import asdict
from datetime import date
from typing import TYPE_CHECKING, Annotated, Any

import typer

from combwright.cli.options import JsonOption, print_json

if TYPE_CHECKING:
    from combwright.science.mites.counts import BroodState
    from combwright.science.mites.intervals import Estimate
    from combwright.science.mites.levels import Level
    from combwright.science.mites.treatments import Option
    from combwright.services.calculators.mite_report import MiteReport

EXAMPLE = (
    "Example: `combwright mites --tray 33 --days 1 --month 8` or "
    "`combwright mites --washed 9 --bees 300 --brood yes --bees-in-colony 30000`"
)


def mites(
    *,
    tray: Annotated[int | None, typer.Option(help="Mites fallen on the tray.")] = None,
    days: Annotated[float | None, typer.Option(help="Days that the tray was in.")] = None,
    washed: Annotated[int | None, typer.Option(help="Mites washed off a sample of bees.")] = None,
    sugar: Annotated[
        int | None, typer.Option(help="Mites shaken off a sample of bees with icing sugar.")
    ] = None,
    bees: Annotated[int | None, typer.Option(help="Bees in the sample, about 300.")] = None,
    month: Annotated[int | None, typer.Option(help="Month of the count, 1 to 12.")] = None,
    on: Annotated[
        str | None,
        typer.Option("--date", help="Day of the count, as 2026-08-15; today unless given."),
    ] = None,
    brood: Annotated[
        str | None, typer.Option(help="Whether the colony has brood: yes or no.")
    ] = None,
    supers: Annotated[int | None, typer.Option(help="Honey supers on the colony.")] = None,
    bees_in_colony: Annotated[
        float | None,
        typer.Option(help="Adult bees in the colony; the usual for the month unless given."),
    ] = None,
    temperature_c: Annotated[
        float | None, typer.Option(help="Temperature by day in the weeks ahead.")
    ] = None,
    as_json: JsonOption = False,
) -> None:
    """Tell what a mite count means, how sources disagree, and what to do by when."""
    from combwright.services.calculators.mite_report import Circumstances, MiteCount, assess

    counted = _count({"tray": tray, "washed": washed, "sugar": sugar}, days, bees)
    count = MiteCount(**counted, on=_day(on, month), day_given=on is not None or month is None)
    known = Circumstances(
        brood=_brood(brood),
        supers=_supers(supers),
        bees_in_colony=bees_in_colony,
        temperature_c=temperature_c,
    )
    report = assess(count, known)
    if as_json:
        print_json(_as_json(report))
    else:
        _show(report)


def _day(on: str | None, month: int | None) -> date:
    """Day of the count: as given, the middle of the month, or today."""
    from combwright.terms.errors import ClashError, OutOfRangeError
    from combwright.terms.ranges import within

    today = date.today()  # noqa: DTZ011  # the keeper's own calendar day
    try:
        day = date.fromisoformat(on) if on else None
    except ValueError as error:
        said = f"{on} is no day of the calendar."
        raise OutOfRangeError(said, remedy="Give year, month and day, as 2026-08-15.") from error
    if month is None:
        return day or today
    number = int(within(month, 1, 12, "The month", remedy="1 is January and 12 December."))
    if day is not None and day.month != number:
        raise ClashError(f"--month {month} and --date {on} differ.", remedy="Give only one.")
    return day or date(today.year, number, 15)


def _brood(brood: str | None) -> "BroodState":
    from combwright.terms.errors import OutOfRangeError

    if brood not in (None, "yes", "no"):
        raise OutOfRangeError(
            f"--brood cannot be {brood}.", remedy="Say yes or no, or leave it out."
        )
    return "not known" if brood is None else "brood" if brood == "yes" else "no brood"


def _supers(supers: int | None) -> int | None:
    from combwright.terms.ranges import within

    return None if supers is None else int(within(supers, 0, 8, "The number of supers", "supers"))


def _count(given: dict[str, int | None], days: float | None, bees: int | None) -> dict[str, Any]:
    """Sort out which count was given, with what it needs."""
    from combwright.terms.errors import ClashError, OutOfRangeError

    names = [name for name, value in given.items() if value is not None]
    if len(names) != 1:
        said = f"--{' and --'.join(names)} are two counts." if names else "No count is given."
        one = "Give one: --tray with --days, --washed with --bees, or --sugar with --bees."
        raise OutOfRangeError(said, remedy=one)
    name = names[0]
    needs, other, size = ("days", "bees", days) if name == "tray" else ("bees", "days", bees)
    if size is None:
        example = "--days 3" if needs == "days" else "--bees 300"
        raise OutOfRangeError(f"--{name} needs --{needs}.", remedy=f"Give it, such as {example}.")
    if None not in (days, bees):
        raise ClashError(f"--{name} and --{other} do not go together.", remedy="Leave one out.")
    method = "sugar" if name == "sugar" else "wash"
    return {"mites": given[name], needs: size, "method": method}


def _as_json(report: "MiteReport") -> dict[str, Any]:
    count, known = report.count, report.circumstances
    return {
        "date": count.on.isoformat(),
        "method": "tray" if count.days is not None else count.method,
        "brood": known.brood,
        "mites": _span(report.mites),
        "per_100_bees": round(report.per_100_bees.mid, 2),
        "per_100_bees_range": _span(report.per_100_bees, 2),
        "level": report.level,
        "levels": [
            _picked(each.level, "place", "measure", "value", "says")
            | {"reached": each.reached}
            | _picked(each.level, "source", "verified")
            for each in report.levels
        ],
        "sources": [{**asdict(each), "estimate": round(each.estimate)} for each in report.sources],
        "expected_without_treatment": [
            {"on": each.on.isoformat(), **_span(each.mites)} for each in report.expected
        ],
        "advice": report.advice,
        "options": [
            _picked(each.treatment, "substance", "way")
            | _picked(each, "possible", "because")
            | _picked(each.treatment, "days", "kill_percent", "cautions", "source", "verified")
            for each in report.options
        ],
        "warnings": report.warnings,
    }


def _picked(shown: object, *names: str) -> dict[str, Any]:
    return {name: getattr(shown, name) for name in names}


def _span(estimate: "Estimate", digits: int = 0) -> dict[str, float]:
    low, mid, high = (round(v, digits or None) for v in (estimate.low, estimate.mid, estimate.high))
    return {"low": low, "mid": mid, "high": high}


def _show(report: "MiteReport") -> None:
    percent = report.per_100_bees
    typer.echo(
        f"Mites in the colony   {_words(report.mites)}\n"
        f"Mites per 100 bees    {percent.mid:.1f} ({percent.low:.1f} to {percent.high:.1f})\n"
        f"Level                 {report.level}\n"
    )
    _section("Sources disagree", [f"{each.estimate:>8,.0f}  {each.name}: {each.note} "
                                  f"[{each.verified}]" for each in report.sources])  # fmt: skip
    _section("Levels of the month", [f"{'reached' if each.reached else 'below':<8}  "
                                     f"{each.level.place}, {_level(each.level)}: "
                                     f"{each.level.says} "
                                     f"[{each.level.verified}]"
                                     for each in report.levels])  # fmt: skip
    _section("Without treatment", [f"{each.on:%d %b %Y}  {_words(each.mites)}"
                                   for each in report.expected])  # fmt: skip
    _section("What to do", report.advice)
    _section("Treatments", [_option(each) for each in report.options])
    _section("Mind", report.warnings)


def _level(level: "Level") -> str:
    """Say a level as an amount of mites; one mite is one."""
    measure = level.measure.replace("mites", "mite", 1) if level.value == 1 else level.measure
    return f"{level.value:,g} {measure}"


def _option(option: "Option") -> str:
    way, kill = option.treatment, option.treatment.kill_percent
    kills = f"kills {kill[0]:g}-{kill[1]:g} % in trials" if kill else "kills all mites or few"
    reasons = "; ".join(option.because)
    because = f" {reasons[:1].upper()}{reasons[1:]}." if reasons else ""
    return (
        f"{option.possible:<5}  {way.substance} ({way.way}), {way.days[0]}-{way.days[1]} days, "
        f"{kills}.{because} Mind: {'. '.join(way.cautions)}."
    )


def _section(title: str, lines: list[str]) -> None:
    from textwrap import fill

    typer.echo(title)
    for line in lines:
        typer.echo(fill(line, 96, initial_indent="  ", subsequent_indent="      "))
    typer.echo("")


def _words(estimate: "Estimate") -> str:
    return f"{estimate.mid:,.0f} ({estimate.low:,.0f} to {estimate.high:,.0f})"
