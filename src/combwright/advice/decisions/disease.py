"""Signs of disease: stop, close, move nothing, report. Never a diagnosis."""

from collections.abc import Iterable
from typing import Final

from combwright.advice.bee_acts import MoveNothing, Reporting, WashTools
from combwright.advice.deciding import Deciding
from combwright.advice.decision import Decision
from combwright.advice.words.wording import day_words
from combwright.terms.entries import Noted, Visit

CLEARED: Final = frozenset(("none", "no signs", "cleared"))


def noted_signs(entries: Iterable[Noted]) -> Visit | None:
    """Give the last note of signs, unless a later visit says that there are none.

    A visit that says nothing of signs clears nothing: nobody looked. Entries come in the order of
    their days.
    """
    standing = None
    for entry in entries:
        if isinstance(entry, Visit) and entry.disease_signs:
            is_clear = entry.disease_signs.strip().casefold() in CLEARED
            standing = None if is_clear else entry
    return standing


def is_sick(deciding: Deciding) -> bool:
    """Tell whether signs noted at the colony itself still stand."""
    return noted_signs(deciding.situation.history) is not None


def decide(deciding: Deciding) -> Decision:
    """Say what signs at the colony or in its yard ask for; nothing where there are none."""
    situation = deciding.situation
    noted = noted_signs(situation.history)
    if noted is not None:
        return _at_the_colony(noted)
    if situation.signs_at is None:
        return Decision(topic="disease")
    because = "What is moved from a sick yard carries the disease on before anybody can see it."
    actions = (MoveNothing(signs_at=situation.signs_at),)
    return Decision(topic="disease", actions=actions, because=(because,))


def _at_the_colony(noted: Visit) -> Decision:
    because = (
        f"Noted on {day_words(noted.on)}: {noted.disease_signs}. Foulbroods, small hive beetle "
        "and Tropilaelaps are notifiable (rules as read in 2025: check what holds now). This "
        "stands until a visit says “none” or “cleared” of its signs."
    )
    actions = (MoveNothing(), Reporting(), WashTools())
    return Decision(topic="disease", actions=actions, because=(because,))
