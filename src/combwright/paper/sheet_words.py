"""The words and figures of a round sheet as they stand on paper, ready for the template."""

from collections.abc import Mapping, Sequence
from datetime import date
from typing import Any

from combwright.advice.words.wording import chance_words, many
from combwright.paper.printable import printable
from combwright.planning.at_every_colony import Everywhere
from combwright.planning.sheet import Band, Bench, Branch, ColonySheet, Expected, Portion, Stop
from combwright.terms.percent import in_percent

UNLIKELY = chance_words(0.0)
LONG_AGO_WEEKS = 3  # from then on the weeks say more than the day; judgement
# What one of each thing is called, in the order of the lists.
LOAD_WORDS = {
    "frames_drawn": "drawn frame",
    "frames_foundation": "frame with foundation",
    "dummy_boards": "dummy board",
    "supers": "super",
    "excluders": "queen excluder",
}


def day_words(day: date) -> str:
    """Write a day with its name, the same on every machine.

    Examples
    --------
    >>> day_words(date(2026, 4, 14))
    'Tuesday 14 April 2026'

    """
    return f"{day:%A} {day.day} {day:%B %Y}"


def short_day(day: date) -> str:
    """Write a day in few letters, without its year."""
    return f"{day:%a} {day.day} {day:%b}"


def seen_words(seen: date | None, on: date) -> str:
    """Say when a colony was last seen: by the day while that is fresh, then by the weeks.

    Examples
    --------
    >>> seen_words(date(2027, 4, 17), date(2027, 4, 24)), seen_words(None, date(2027, 4, 24))
    ('seen Sat 17 Apr', 'not seen yet')
    >>> seen_words(date(2026, 9, 12), date(2027, 2, 6))
    'seen 21 weeks ago'

    """
    if seen is None:
        return "not seen yet"
    weeks = round((on - seen).days / 7)
    return f"seen {weeks} weeks ago" if weeks >= LONG_AGO_WEEKS else f"seen {short_day(seen)}"


def kilograms(grams: float) -> str:
    """Write a mass that is weighed on a kitchen scale or less finely."""
    return f"{grams:.0f} g" if grams < 1000 else f"{grams / 1000:.1f} kg"  # noqa: PLR2004 - a kilogram


def colony_words(sheet: ColonySheet, said: Everywhere, on: date) -> dict[str, Any]:
    """Return one colony's part of a day's sheet in words, without what is said once for all."""
    seen = seen_words(sheet.last_visit, on)
    return {
        "order": str(sheet.order),
        "colony": printable(sheet.colony),
        "yard": printable(sheet.yard),
        "place": printable(f"{sheet.hive} · {seen} · next {short_day(sheet.next_visit)}"),
        "expected": expected_words(sheet.expected),
        "room": _unseen(sheet.expected),
        "portion": portion_words(sheet.portion),
        "fed": [printable(" ".join(_fed(sheet))), sheet.after_the_feed],
        "jobs": [printable(job) for job in said.jobs_of(sheet) if job not in _fed(sheet)],
        "because": [printable(reason) for reason in sheet.because],
        "branches": [_branch(branch) for branch in said.branches_of(sheet)],
        "questions": [printable(question) for question in sheet.questions],
        "chances": _chances(sheet.chances),
    }


def _fed(sheet: ColonySheet) -> list[str]:
    """Give the jobs of feeding, which stand beside the portion."""
    return [job for each in sheet.decisions if each.topic == "food" for job in each.jobs]


def everywhere_words(said: Everywhere) -> dict[str, Any]:
    """Return what holds at every colony in words."""
    return {
        "title": said.title,
        "jobs": [printable(job) for job in said.jobs],
        "branches": [_branch(branch) for branch in said.branches],
    }


def portion_words(portion: Portion) -> list[str]:
    """Return a portion as one line to read from afar and one with the rest.

    Examples
    --------
    >>> feed = Portion(syrup_g=1500, per_day_g=500, days=3, sugar_fraction=0.6, litres=1.2)
    >>> portion_words(feed)
    ['1.2 L syrup', '500 g a day for 3 days, 60 % sugar']

    """
    if portion.syrup_g <= 0:
        return ["no feed", ""]
    feed = printable(portion.feed)
    big = (
        f"{portion.litres:.1f} L {feed}"
        if portion.litres
        else f"{kilograms(portion.syrup_g)} {feed}"
    )
    sugar = f"{in_percent(portion.sugar_fraction)} sugar"
    if portion.feed == "fondant":  # it lies there for weeks, and is not eaten up by the next visit
        return [big, sugar]
    days = many(portion.days, "day")
    return [big, f"{portion.per_day_g} g a day for {days}, {sugar}"]


def bench_words(bench: Bench) -> dict[str, Any]:
    """Return the bench list in words."""
    syrup = []
    if bench.syrup_l > 0:
        syrup = [
            ["sugar", f"{bench.sugar_kg:.1f} kg"],
            ["water", f"{bench.water_kg:.1f} kg"],
            ["makes syrup", f"{bench.syrup_l:.1f} L"],
            ["sugar in it", in_percent(bench.sugar_fraction)],
            ["crystallises", _crystals(bench)],
        ]
    return {
        "syrup": syrup,
        "parts": counted(bench),
        "steps": [printable(step) for step in bench.steps],
    }


def usual_kit(load: Sequence[Stop]) -> list[str]:
    """Return what every stop needs, which is said once where there are several."""
    if len(load) < 2:  # noqa: PLR2004 - of one stop everything stands with it
        return []
    return [item for item in load[0].items if all(item in stop.items for stop in load)]


def stop_words(stop: Stop, usual: Sequence[str] = ()) -> dict[str, Any]:
    """Return what to load for one yard in words, without the usual kit."""
    own = [printable(item) for item in stop.items if item not in usual]
    feed = [f"{stop.syrup_l:.1f} L syrup"] if stop.syrup_l > 0 else []
    feed += [f"{stop.fondant_kg:.1f} kg fondant"] if stop.fondant_kg > 0 else []
    return {
        "yard": printable(stop.yard),
        "colonies": many(stop.colonies, "colony"),
        "items": [*feed, *counted(stop), *own],
    }


def counted(parts: Bench | Stop) -> list[str]:
    """Return the parts of a list that are counted, without those that are not needed."""
    counts = [(getattr(parts, field, 0), thing) for field, thing in LOAD_WORDS.items()]
    return [many(count, thing) for count, thing in counts if count > 0]


def expected_words(expected: Expected) -> str:
    """Say in a line what should be found, nine times in ten."""
    brood = _band(expected.frames_of_brood, 1)
    return (
        f"{_band(expected.frames_of_bees, 1)} frames of bees, "
        f"{'no' if brood == '0.0' else brood} brood, "
        f"{_band(expected.stores_kg, 1)} kg stores."
    )


def _unseen(expected: Expected) -> str:
    """Say in a line what nobody sees at a glance, nine times in ten."""
    mites = -1 if expected.mites.mid > 50 else 0  # noqa: PLR2004 - tens are enough above it
    return (
        f"Expected: {_band(expected.room_cells, -2)} empty warm cells, "
        f"{_band(expected.mites, mites)} mites."
    )


def _band(band: Band, digits: int) -> str:
    low, high = (
        f"{round(value, digits) + 0.0:,.{max(digits, 0)}f}" for value in (band.low, band.high)
    )
    return low if low == high else f"{low}–{high}"


def _branch(branch: Branch) -> dict[str, Any]:
    return {
        "found": printable(branch.found),
        "do": [printable(step) for step in branch.do],
        "because": printable(branch.because),
    }


def _chances(chances: Mapping[str, float]) -> str:
    """Say the chances of harm that are worth a number, then all others in one."""
    told = {harm: chance_words(chance) for harm, chance in chances.items()}
    likely = [f"{printable(harm)} {said}" for harm, said in told.items() if said != UNLIKELY]
    rest = [f"any other {UNLIKELY}" if likely else UNLIKELY] if len(likely) < len(told) else []
    return ", ".join([*likely, *rest])


def _crystals(bench: Bench) -> str:
    """Say when the syrup crystallises."""
    if bench.crystallises_below_c is None:
        return "only below freezing"
    return f"below {bench.crystallises_below_c:.0f} °C"
