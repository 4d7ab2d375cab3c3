"""The sentences of a mite report: what the count means and what to do by when."""

from datetime import date, timedelta

from combwright.science.mites.counts import WINTER_MONTHS
from combwright.science.mites.intervals import Estimate
from combwright.science.mites.levels import UK_FALL, Verdict
from combwright.science.mites.treatments import DRONE_MONTHS, Option
from combwright.terms.dated import dated

RECOUNT_DAYS = 14
LATEST_SUMMER_TREATMENT = (8, 15)
_MEANS: dict[Verdict, str] = {
    "low": "That is low for the month.",
    "watch": "That is not yet at a level to act, but near enough to count again soon.",
    "act": "That is at or above a level at which to act.",
    "severe": "That is in the range in which colonies with deformed wing virus collapse.",
}


def what_it_means(mites: Estimate, level: Verdict, month: int, fall: float | None) -> list[str]:
    """Put the estimate beside the levels."""
    said = [
        f"About {mites.mid:,.0f} mites ({mites.low:,.0f} to {mites.high:,.0f}). {_MEANS[level]}"
    ]
    limit = UK_FALL.get(month)
    if fall is not None and limit is not None:
        beside = "reaches" if fall >= limit else "is below"
        said.append(
            f"The fall of {fall:.3g} a day {beside} the UK limit of {limit:g} a day for the month."
        )
    said.append(
        "The UK asks to stay below 1,000 mites, to protect winter bees; the 3,172 to 4,261 mites "
        "of the South-East of the United States (August) are where a treatment pays."
    )
    return said


def what_to_do(level: Verdict, on: date, ways: list[Option], supers: int | None) -> list[str]:
    """Say what to do and by when."""
    if level == "low":
        return [f"Count again by {dated(on + timedelta(days=30))}. {_always(on)}"]
    if level == "watch":
        return [f"Count again by {dated(on + timedelta(days=RECOUNT_DAYS))}. {_always(on)}"]
    haste = "now" if level == "severe" else f"by {dated(_latest(on))}"
    said = [f"Treat {haste}, all colonies of the yard at the same time: mites move between them."]
    possible = [way for way in ways if way.possible == "yes"]
    checked = [way for way in ways if way.possible == "check"]
    names = ", ".join(_named(way) for way in possible or checked)
    if possible:
        said.append(f"Possible now: {names}.")
    elif checked:
        said.append(f"Possible once its conditions are checked: {names}.")
    else:
        said.append("Nothing is possible as things stand: the treatments say what is in the way.")
    if on.month not in WINTER_MONTHS:
        said.append(_always(on))
    if supers:
        said.append("Take the honey supers off first; most products may not meet honey for sale.")
    if on.month in DRONE_MONTHS:
        said.append("Until then cut out sealed drone comb, and use a brood break when you split.")
    return said


def follow_up(on: date) -> str:
    """Say when to count again after a treatment."""
    return (
        f"After a treatment count the fall until it is as before, at least {RECOUNT_DAYS} days "
        f"(started on {dated(on)}: not before {dated(on + timedelta(days=RECOUNT_DAYS))}), and "
        "count again 10 to 14 days after the treatment ends: a weak result can be resistance."
    )


def _latest(on: date) -> date:
    """Latest day to treat: within a fortnight, and by mid-August if that is still ahead."""
    soon = on + timedelta(days=RECOUNT_DAYS)
    august = date(on.year, *LATEST_SUMMER_TREATMENT)
    return min(soon, august) if on < august else soon


def _always(on: date) -> str:
    if on.month in WINTER_MONTHS:
        return "A colony without brood in midwinter is the best time to reach every mite."
    if (on.month, on.day) < LATEST_SUMMER_TREATMENT:
        return "Plan the main treatment for when the honey is off, by mid-August."
    return "Winter bees are reared until October: keep the count low until then."


def _named(way: Option) -> str:
    return f"{way.treatment.substance} ({way.treatment.way})"
