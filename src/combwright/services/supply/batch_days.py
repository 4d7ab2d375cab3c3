"""What batches and promises ask for day by day: on the round, and in the calendar feed."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from combwright.records.replay.known_orders import known_orders
from combwright.records.replay.known_queens import KnownBatch, known_batches
from combwright.services.calculators.queen_calendar import emerges_at
from combwright.services.weather.open_hours import clock
from combwright.terms.data_files import rows
from combwright.terms.entries import Noted


@dataclass(frozen=True, slots=True)
class BatchDay:
    """One thing to do on one day."""

    on: date
    about: str
    do: str


def batch_days(batch: KnownBatch) -> list[BatchDay]:
    """Give the days of a batch, with the hours in which its queens emerge."""
    days = [
        BatchDay(batch.day_0 + timedelta(days=step["day"]), batch.batch, step["do"])
        for step in rows("planning/batch_steps", "step")
        if step["method"] == batch.method
    ]
    if batch.method in ("graft", "upper box"):
        first, last = emerges_at("graft", batch.day_0, batch.brood_c)
        hours = f"queens emerge from {_spoken(first)} to {_spoken(last)}, if begun at noon"
        days.append(BatchDay(first.date(), batch.batch, hours))
    return sorted(days, key=lambda each: each.on)


def _spoken(at: datetime) -> str:
    return f"{clock(at.hour)} on {at.day} {at:%B}"


def supply_days(entries: Iterable[Noted]) -> list[BatchDay]:
    """Give the days of all batches, and the weeks for which orders are promised."""
    told = list(entries)
    found = [day for batch in known_batches(told).values() for day in batch_days(batch)]
    found += [
        BatchDay(each.week, each.order, f"{each.open} promised to {each.customer} for this week")
        for each in known_orders(told).values()
        if each.open and each.week is not None
    ]
    return sorted(found, key=lambda each: (each.on, each.about))


def due(entries: Iterable[Noted], on: date, until: date) -> list[str]:
    """Say what falls on the day of a round, or on the days until the next visit."""
    return [
        f"{each.about}, {'today' if each.on == on else f'{each.on.day} {each.on:%B}'}: {each.do}."
        for each in supply_days(entries)
        if on <= each.on < until
    ]
