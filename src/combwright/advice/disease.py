"""Signs of disease: stop, close, move nothing, report. Never a diagnosis."""

from combwright.advice.decision import Decision
from combwright.advice.situation import Situation
from combwright.advice.wording import day_words
from combwright.terms.entries import Visit


def disease(situation: Situation) -> Decision:
    """Say what signs in the book ask for; nothing where there are none."""
    visits = [entry for entry in situation.history if isinstance(entry, Visit)]
    signs = visits[-1].disease_signs if visits else None
    if not signs:
        return Decision("disease")
    jobs = (
        "Signs were noted: open it last, close it again, and move nothing in or out of this yard.",
        (
            "Report to the bee inspectors of your country today (Ireland: the Department of "
            "Agriculture; Great Britain: the National Bee Unit); they decide, not this sheet."
        ),
        "Wash tools and gloves in washing soda before the next hive.",
    )
    because = (
        (
            f"Noted on {day_words(visits[-1].on)}: {signs}. Foulbroods, small hive "
            "beetle and Tropilaelaps "
            "are notifiable (rules as read in 2025: check what holds now)."
        ),
    )
    return Decision("disease", jobs, because)


def is_suspected(situation: Situation) -> bool:
    """Tell whether signs stand in the last note."""
    return bool(disease(situation).jobs)
