"""Entries and colonies in words, as terminal and page show them."""

from datetime import date
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from combwright.records.replay.colonies import Standing
    from combwright.terms.entries import Noted

UNITS = {"g": "g", "kg": "kg", "mm": "mm", "c": "°C"}
# shown in columns of their own, or at the end
ELSEWHERE = ("id", "kind", "on", "colony", "remark")


def said(each: "Noted") -> str:
    """Say what an entry holds, leaving out what nobody looked at."""
    values = each.model_dump(exclude_none=True, exclude=set(ELSEWHERE))
    told = [spoken(name, value) for name, value in values.items() if value != ""]
    return ", ".join([*told, each.remark] if each.remark else told)


def spoken(name: str, value: object) -> str:
    """Say one value with its name and unit.

    Examples
    --------
    >>> spoken("stores_kg", 4.5), spoken("eggs", True), spoken("grams", 500.0)
    ('stores 4.5 kg', 'eggs yes', '500 g')

    """
    if name == "grams":
        return f"{value:g} g"
    if name == "sugar_fraction" and isinstance(value, float):
        return f"sugar {100 * value:g} %"
    words = name.split("_")
    unit = f" {UNITS[words.pop()]}" if words[-1] in UNITS and len(words) > 1 else ""
    label = " ".join(words)
    if isinstance(value, bool):
        return f"{label} {'yes' if value else 'no'}"
    if isinstance(value, float):
        return f"{label} {value:g}{unit}"
    return f"{label} {value}{unit}"


def stands(now: "Standing") -> str:
    """Say in one or two lines how a colony stands."""
    queen = f", queen of {now.queen_year}" if now.queen_year else ""
    origin = f", split from {now.split_from}" if now.split_from else ""
    first = f"{now.hive} at {now.yard} since {now.since}{origin}{queen}"
    fields = (
        "frames",
        "foundation",
        "dummy_boards",
        "supers",
        "excluder",
        "entrance_mm",
        "tray_open_mm",
        "cover",
        "pitch_mm",
    )
    known = [(name, getattr(now, name)) for name in fields]
    stack = ", ".join(spoken(name, value) for name, value in known if value is not None)
    return "\n".join(line for line in (first, stack, ending(now.ended, now.ended_by)) if line)


def ending(day: date | None, reason: str | None) -> str:
    """Say when and why a colony left the book."""
    return f"left the book on {day}: {reason}" if day else ""
