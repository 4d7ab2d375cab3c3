"""The last treatment: when it comes out, and how well it worked by the tray."""

from dataclasses import dataclass, field
from datetime import date, timedelta
from typing import Final

from combwright.advice.actions import Action
from combwright.advice.kit_acts import Counting, TakeOut
from combwright.advice.numbers import numbers
from combwright.advice.situation import Situation
from combwright.science.mites.efficacy import efficacy_without_control
from combwright.science.mites.season_ahead import growth_in
from combwright.science.mites.treatments import TREATMENTS, VAPOURS
from combwright.simulation.hands.actions import treatment_courses
from combwright.terms.entries import TrayCount, Treatment, Visit

PARAMETERS: Final = numbers("treated")
STAYS_IN: Final = ("formic acid", "thymol", "amitraz", "tau-fluvalinate", "flumethrin")


@dataclass(frozen=True)
class Treated:
    """What the last treatment asks for, what it did, and whether it is still at work.

    While ``is_vapour`` fills the hive, its label says how tray, top and entrance stand.
    """

    is_at_work: bool = False
    is_vapour: bool = False
    actions: tuple[Action, ...] = ()
    because: tuple[str, ...] = ()
    inputs: dict[str, float] = field(default_factory=dict)


def treated(situation: Situation) -> Treated:
    """Follow up the last treatment in the book; nothing where there was none."""
    used = [
        entry
        for entry in situation.history
        if isinstance(entry, Treatment) and entry.substance != "drone brood removed"
    ]
    if not used:
        return Treated()
    last = used[-1]
    ends = last.until or last.on + timedelta(days=_course_days(last.substance))
    is_at_work = (situation.on - ends).days < PARAMETERS["count_after"].value
    is_vapour = last.substance in VAPOURS and situation.on < ends
    counted = _killed(situation, last, ends)
    due = _comes_out(situation, last, ends)
    if counted is None:
        wanted = is_at_work and situation.on >= ends and not _counts(situation, ends)
        count = (Counting(on_tray=situation.standing.hive.floor == "mesh"),) if wanted else ()
        reason = f"The fall after {last.substance} tells how well it worked." if wanted else ""
        return Treated(is_at_work, is_vapour, (*due, *count), (reason,) if reason else ())
    return Treated(is_at_work, is_vapour, due, (_verdict(last.substance, counted),), counted)


def _course_days(substance: str) -> int:
    return int(treatment_courses().get(substance, {}).get("days", PARAMETERS["other_days"].value))


def _comes_out(situation: Situation, last: Treatment, ends: date) -> tuple[Action, ...]:
    """Say that strips or trays come out, where the hive was not opened since their time was up."""
    seen = [entry.on for entry in situation.history if isinstance(entry, Visit)]
    is_due = (max(seen) if seen else last.on) < ends <= situation.planned_until
    if last.substance not in STAYS_IN or not is_due:
        return ()
    by = max(ends, situation.on)
    return (TakeOut(substance=last.substance, by=by, is_due=by == situation.on),)


def _counts(situation: Situation, since: date) -> list[TrayCount]:
    """Give the tray counts that were begun after a day."""
    counts = [entry for entry in situation.history if isinstance(entry, TrayCount)]
    return [each for each in counts if each.on - timedelta(days=each.days) >= since]


def _killed(situation: Situation, last: Treatment, ends: date) -> dict[str, float] | None:
    """Set the fall after a treatment against the last one before it; none without both."""
    counts = [entry for entry in situation.history if isinstance(entry, TrayCount)]
    lately = last.on - timedelta(days=PARAMETERS["lately"].value)
    before = [each for each in counts if lately <= each.on <= last.on and each.mites]
    after = _counts(situation, ends)
    if not before or not after:
        return None
    first, then = before[-1], after[0]
    days = float((then.on - first.on).days)
    fell, falls = first.mites / first.days, then.mites / then.days
    growth = growth_in(then.on.month).value
    return {
        "fall_before_a_day": fell,
        "fall_after_a_day": falls,
        "days_between": days,
        "killed_percent": efficacy_without_control(fell, falls, growth, days),
        "killed_percent_without_growth": efficacy_without_control(fell, falls, 0.0, days),
    }


def _verdict(substance: str, counted: dict[str, float]) -> str:
    """Say how well it worked, against what was published."""
    low, high = sorted(
        max(0.0, counted[name]) for name in ("killed_percent_without_growth", "killed_percent")
    )
    said = (
        f"After {substance} the fall went from {counted['fall_before_a_day']:.1f} to "
        f"{counted['fall_after_a_day']:.1f} mites a day: about {low:.0f} to {high:.0f} % killed, "
        "roughly, since the fall also changes with the brood."
    )
    kills = [way.kill_percent for way in TREATMENTS if substance in way.substance]
    least = min((kill[0] for kill in kills if kill is not None), default=0.0)
    if high >= least:
        return said
    return (
        f"{said} Published kills begin at {least:.0f} %: it may not "
        "have reached the mites, or they are resistant. Use another substance next time."
    )
