"""Entries and colonies in words, as terminal and page show them."""

from datetime import date
from typing import TYPE_CHECKING

from combwright.terms.dated import dated

if TYPE_CHECKING:
    from combwright.records.replay.colonies import KnownColony
    from combwright.terms.entries import Noted
    from combwright.terms.entries.about import About
    from combwright.terms.entries.fields import EntryField

# shown in columns of their own, or at the end
ELSEWHERE = ("id", "kind", "on", "colony", "remark")


def said(each: "Noted") -> str:
    """Say what an entry holds, leaving out what nobody looked at."""
    from combwright.terms.entries.fields import fields_of

    values = each.model_dump(exclude_none=True, exclude=set(ELSEWHERE))
    fields = fields_of(type(each))
    told = [spoken(fields[name], value) for name, value in values.items() if value != ""]
    return ", ".join([*told, each.remark] if each.remark else told)


def spoken(field: "EntryField", value: object) -> str:
    """Say one value with its name and unit.

    Examples
    --------
    >>> from combwright.terms.entries import Feed, Visit
    >>> from combwright.terms.entries.fields import fields_of
    >>> seen, fed = fields_of(Visit), fields_of(Feed)
    >>> spoken(seen["stores_kg"], 4.5), spoken(seen["eggs"], True)
    ('stores 4.5 kg', 'eggs yes')
    >>> spoken(seen["stores_kg"], 4.517)
    'stores 4.5 kg'
    >>> spoken(fed["grams"], 500.0), spoken(fed["sugar_fraction"], 0.6)
    ('500 g', 'sugar 60 %')

    """
    about = field.about
    words = about.label[0].lower() + about.label[1:] if about.said is None else about.said
    if words == "put in" and isinstance(value, int):
        return f"{abs(value)} {words if value > 0 else 'taken out'}"
    return " ".join(part for part in (words, _value(about, value), about.unit) if part)


def _value(about: "About", value: object) -> str:
    """Write a value; what is weighed or hefted at a hive is not known to more than 100 g."""
    match value:
        case bool():
            return "yes" if value else "no"
        case float():
            shown = value / about.times
            return f"{round(shown, 1) if about.at_hive and about.unit == 'kg' else shown:g}"
        case date():
            return dated(value)
    return str(value)


def stands(now: "KnownColony") -> str:
    """Say in one or two lines how a colony stands."""
    from combwright.terms.entries import STACK_FIELDS, Stack
    from combwright.terms.entries.fields import fields_of

    queen = f", queen of {now.queen_year}" if now.queen_year else ""
    origin = f", split from {now.split_from}" if now.split_from else ""
    first = f"{now.hive} at {now.yard} since {dated(now.since)}{origin}{queen}"
    fields = fields_of(Stack)
    known = [(fields[name], getattr(now, name)) for name in STACK_FIELDS if name != "hive"]
    stack = ", ".join(spoken(field, value) for field, value in known if value is not None)
    return "\n".join(line for line in (first, stack, ending(now.ended, now.ended_by)) if line)


def ending(day: date | None, reason: str | None) -> str:
    """Say when and why a colony left the book."""
    return f"left the book on {dated(day)}: {reason}" if day else ""
