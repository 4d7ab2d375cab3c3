"""What a young book lets the sheet say already, and what it needs to say more."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from combwright.belief.following.own_way import counting_on
from combwright.planning.sheet import RoundSheet
from combwright.terms.entries import Noted, Stack, TrayCount, Visit, WashCount

YOUNG: Final = 3  # days with visits, after which nobody needs to be told; judgement


@dataclass(frozen=True, slots=True)
class StillToNote:
    """One thing to note, what the sheet says with it, and the page where it is noted."""

    note: str
    so_that: str
    where: str


def to_say_more(sheet: RoundSheet, entries: Sequence[Noted]) -> list[StillToNote]:
    """List what is still to be noted, the most telling first; nothing of a book that is grown."""
    if len({each.on for each in entries if isinstance(each, Visit)}) >= YOUNG:
        return []
    seen = {each.colony for each in entries if isinstance(each, Visit) and _is_told(each)}
    stood = {each.colony for each in entries if isinstance(each, Stack)}
    here = [each.colony for each in sheet.colonies]
    found = []
    if unseen := [name for name in here if name not in seen]:
        what = f"bees, brood and stores of {_listed(unseen)}"
        found.append(
            StillToNote(what, "feed and room fit the colony, not the season", _note(sheet, unseen))
        )
    if unknown := [name for name in here if name not in stood]:
        what = f"frames in the box of {_listed(unknown)}"
        found.append(StillToNote(what, "boxes and dummy boards can be told", _note(sheet, unknown)))
    if counting_on(entries, sheet.on) is None:
        what = "how you count brood and bees, once"
        found.append(StillToNote(what, "your numbers are read as you mean them", "/enter/counting"))
    if not any(isinstance(each, TrayCount | WashCount) for each in entries):
        what = "a count of mites at one colony or more"
        found.append(StillToNote(what, "it can say whether to treat, and when", _note(sheet, here)))
    found.append(
        StillToNote(
            "the forecast of the yard", "the week is planned in its own weather", "/settings"
        )
    )
    return found


def _is_told(each: Visit) -> bool:
    return any(value is not None for value in (each.frames_of_bees, each.seams_of_bees))


def _note(sheet: RoundSheet, names: Sequence[str]) -> str:
    return f"/round/{sheet.on}/note/{names[0]}"


def _listed(names: Sequence[str]) -> str:
    few = names[:4]
    more = f" and {len(names) - len(few)} more" if len(names) > len(few) else ""
    return ", ".join(few) + more
