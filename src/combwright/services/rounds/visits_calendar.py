"""Planned visits as a calendar that telephones can follow."""

from collections import defaultdict
from collections.abc import Sequence
from datetime import date, datetime, timedelta
from uuid import NAMESPACE_URL, uuid5

from icalendar import Calendar, Event

from combwright.planning.sheet import ColonySheet, RoundSheet
from combwright.services.supply.batch_days import BatchDay

NAMED = 12


def visits_calendar(
    sheet: RoundSheet | None, *, made: datetime, own: Sequence[BatchDay] = ()
) -> bytes:
    """Write the round and the visits that follow from it, one whole-day event a yard and day.

    After them the days of ``own`` batches and promises.
    """
    calendar = Calendar()
    calendar.add("prodid", "-//Combwright//visits//EN")
    calendar.add("version", "2.0")
    calendar.add("x-wr-calname", "Combwright")
    for (on, yard), colonies in sorted(_visits(sheet).items()):
        calendar.add_component(_event(on, yard, colonies, made))
    for each in own:
        about = f"{each.about}: {each.do}"
        calendar.add_component(_whole_day(each.on, about, f"supply {each.on} {about}", made))
    return bytes(calendar.to_ical())


def _visits(sheet: RoundSheet | None) -> dict[tuple[date, str], list[ColonySheet]]:
    found: defaultdict[tuple[date, str], list[ColonySheet]] = defaultdict(list)
    for colony in sheet.colonies if sheet else ():
        found[colony.next_visit, colony.yard].append(colony)
        if sheet:
            found[sheet.on, colony.yard].append(colony)
    return found


def _event(on: date, yard: str, colonies: list[ColonySheet], made: datetime) -> Event:
    number = "1 colony" if len(colonies) == 1 else f"{len(colonies)} colonies"
    event = _whole_day(on, f"{yard}: {number}", f"visit {on} {yard}", made)
    names = ", ".join(each.colony for each in colonies[:NAMED])
    event.add("description", names + (" and more" if len(colonies) > NAMED else ""))
    return event


def _whole_day(on: date, summary: str, key: str, made: datetime) -> Event:
    event = Event()
    event.add("uid", f"{uuid5(NAMESPACE_URL, key)}@combwright")
    event.add("dtstamp", made)
    event.add("dtstart", on)
    event.add("dtend", on + timedelta(days=1))
    event.add("summary", summary)
    event.add("transp", "TRANSPARENT")
    return event
