"""Mites: where they stand, where they go without a treatment, and what can be done now."""

from dataclasses import replace
from datetime import date
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from combwright.advice.actions import Action, of_kind
from combwright.advice.deciding import Deciding
from combwright.advice.decision import Decision
from combwright.advice.decisions import space
from combwright.advice.decisions.going import goes
from combwright.advice.decisions.honey import after_honey
from combwright.advice.decisions.kept_shut import is_cold, is_kept_shut
from combwright.advice.decisions.treated import treated
from combwright.advice.kit_acts import Counting, CutDrones, Treat, WriteDown
from combwright.advice.lately import had_this_winter, is_late
from combwright.advice.numbers import numbers
from combwright.advice.season_ahead import Done, Effect
from combwright.advice.situation import Situation, band
from combwright.advice.weighing import Gain, gain, weigh
from combwright.advice.words.money_words import money_words
from combwright.advice.words.wording import chance_words, day_words
from combwright.science.mites.season_ahead import growth_in
from combwright.science.mites.treatments import Option, options
from combwright.simulation import observe
from combwright.simulation.hands.actions import treat
from combwright.terms.entries import TrayCount, Treatment, WashCount
from combwright.terms.ranked import median
from combwright.weather.conditions import MAX_C

Floats = NDArray[np.float64]
PARAMETERS: Final = numbers("mites")
MINUTES: Final = numbers("minutes")
BROODLESS: Final = PARAMETERS["broodless_cells"].value
DRONES: Final = "drone brood removed"
ACID: Final = "oxalic acid"  # what is left where there is no brood
IN_SEASON: Final = ("formic acid", "thymol", "amitraz")


def decide(deciding: Deciding) -> Decision:
    """Decide on mites: a treatment today, a count, or nothing."""
    if is_kept_shut(deciding):
        return Decision(topic="mites")
    if goes(deciding):  # its mites are counted and treated where it goes
        return Decision(topic="mites", actions=treated(deciding.of(after_honey)).actions)
    supers = deciding.of(space.decide).set_up.supers
    return _mites(deciding.of(after_honey), supers, is_opened=not is_cold(deciding))


def _mites(situation: Situation, supers: int, *, is_opened: bool) -> Decision:
    now = observe.mites(situation.colonies)
    level = PARAMETERS["harm"].value * np.clip(
        observe.adults(situation.colonies) / PARAMETERS["full_bees"].value,
        PARAMETERS["least_level"].value,
        1.0,
    )
    had = had_this_winter(situation.history, situation.on)
    chance_day = _next_chance(situation.on, supers, is_over=ACID in had)
    growth = np.array([growth_in(month).value for month in range(1, 13)])
    later = (
        now
        * situation.colonies["mite_growth"] ** 2
        * np.exp(_summed(growth, situation.on, chance_day))
    )
    passing = float(np.mean(later > level))
    brood = median(observe.brood(situation.colonies))
    inputs = {
        "mites_low": band(now)[0],
        "mites": band(now)[1],
        "mites_high": band(now)[2],
        "level": median(level),
        "mites_later": median(later),
        "chance_of_passing": passing,
        "days_to_next_chance": float((chance_day - situation.on).days),
    }
    ways = options(
        situation.on.month,
        "no brood" if brood < BROODLESS else "brood",
        supers,
        float(np.mean(situation.conditions[:, : int(PARAMETERS["weather_days"].value), MAX_C])),
        had,
    )
    ways = ways if is_opened else [_in_the_cold(way) for way in ways]
    because = _because(inputs, chance_day)
    before = treated(situation)
    because, inputs = (*because, *before.because), inputs | before.inputs
    if before.is_at_work:
        line = "A treatment is at work: count the fall, and again two weeks after it ends."
        return _asking(before.actions, (*because, line), inputs)
    open_to, counts = _open_to(situation, ways, broodless=brood < BROODLESS), _counts(situation)
    if not open_to:
        wanted = passing > PARAMETERS["allowed"].value
        asked = (*before.actions, *(_meanwhile(ways) if wanted else ()), *counts)
        reasons = (*because, _cannot(ways, chance_day)) if wanted else because
        return _asking(tuple(dict.fromkeys(asked)), reasons, inputs, overdue=wanted)
    if inputs["mites_high"] < PARAMETERS["none_to_speak_of"].value:
        return _asking((*before.actions, *counts), because, inputs)
    chosen, brought, known = _worth(situation, open_to)
    inputs |= {"worth_more": brought.money, "worth_of_a_count": known}
    if counts and (told := _count_first(situation, brought, known)):
        return _asking((*before.actions, *counts), (*because, told), inputs)
    if not brought.is_worth_it:
        return _asking((*before.actions, *counts), because, inputs)
    name = chosen.treatment.substance
    begun = (Treat(substance=name, way=chosen.treatment.way), WriteDown())
    worth = f"worth {money_words(brought.money)} more than none, or one at the next visit"
    reasons = (*because, f"{name.capitalize()}: {worth}; {'; '.join(chosen.because)}.")
    return _asking((*before.actions, *begun), reasons, inputs, _other_ways(name, ways))


def _worth(situation: Situation, open_to: list[Option]) -> tuple[Option, Gain, float]:
    """Weigh the treatments that are open today against none; tell what a count would be worth.

    From late summer on they are weighed against none at all, unless one at the next visit is worth
    more than a trifle more. A count tells members apart, roughly: it earns some of what the right
    choice in each would bring beyond the same choice in all, less the minutes that it takes.
    """
    works = [(Treat(substance=one.treatment.substance, way=one.treatment.way),) for one in open_to]
    late = float(is_late(situation.on))
    waits = 1 if late else 0  # before late summer to wait is the same as none
    left, *treated_now = weigh(
        situation,
        [_as_it_is, *(_given(one) for one in open_to), *[_as_it_is] * waits],
        [(), *works, *[()] * waits],
        done=[*[Done(treated=late)] * (1 + len(open_to)), *[Done()] * waits],
    )
    waited = [treated_now.pop() for _ in range(waits)]
    best = max(range(len(open_to)), key=lambda i: treated_now[i].money)
    brought = gain(treated_now[best], left)
    if waited and gain(waited[0], treated_now[best]).is_worth_it:
        brought = gain(treated_now[best], waited[0])
    each = treated_now[best].ahead.money - left.ahead.money - treated_now[best].cost
    right = float(np.maximum(each, 0.0).mean()) - max(0.0, float(each.mean()))
    told = PARAMETERS["count_tells"].value * right
    return open_to[best], brought, told - situation.prices.work(MINUTES["count"].value)


def _count_first(situation: Situation, brought: Gain, known: float) -> str:
    """Say why a count comes first, if it does: it pays, or it is too early to treat unseen."""
    if known > max(brought.money, 0.0) * PARAMETERS["count_first"].value:
        return f"Not knowing costs about {money_words(known)}: a count first."
    if brought.is_worth_it and not is_late(situation.on):
        return "Nothing is given before late summer without a count: a count first."
    return ""


def _in_the_cold(way: Option) -> Option:
    """Rule out what is hung between combs while the hive stays shut; acid is given from above."""
    if way.treatment.substance == ACID or way.possible == "no":
        return way
    return replace(way, possible="no", because=("it is too cold to open the hive",))


def _given(option: Option) -> Effect:
    return lambda colonies: treat(colonies, option.treatment.substance)


def _as_it_is(_: Any) -> None:
    """Change nothing."""


def _asking(
    actions: tuple[Action, ...],
    because: tuple[str, ...],
    inputs: dict[str, float],
    runner_up: str = "",
    *,
    overdue: bool = False,
) -> Decision:
    """Give the decision; its reason stands on the sheet where something is begun, or should be."""
    return Decision(
        topic="mites",
        actions=actions,
        because=because,
        inputs=inputs,
        runner_up=runner_up,
        tells=overdue or bool(of_kind(actions, Treat)),
    )


def _meanwhile(ways: list[Option]) -> tuple[Action, ...]:
    """Give what can be done while nothing may be given."""
    cut = [way for way in ways if way.treatment.substance == DRONES and way.possible == "yes"]
    return (CutDrones(),) if cut else ()


def _cannot(ways: list[Option], chance_day: date) -> str:
    """Say what was considered, why it cannot be, and by when it must."""
    why: dict[str, str] = {}
    for way in ways:
        if way.possible == "no" and way.treatment.substance != DRONES and way.because:
            why.setdefault(way.treatment.substance, way.because[0])
    named: dict[str, list[str]] = {}
    for name, reason in why.items():
        named.setdefault(reason, []).append(name)
    told = "; ".join(f"{', '.join(names)}: {reason}" for reason, names in named.items())
    must = f"By {day_words(chance_day)} it must be treated."
    return f"It should be treated, and now cannot be. {told[:1].upper()}{told[1:]}. {must}"


def _other_ways(chosen: str, ways: list[Option]) -> str:
    """Name what else would be possible today."""
    possible = dict.fromkeys(way.treatment.substance for way in ways if way.possible == "yes")
    others = [name for name in possible if name != chosen]
    return f"{', '.join(others)}: possible too; substances are used in turn" if others else ""


def _summed(growth: Floats, first: date, last: date) -> float:
    """Growth of the logarithm of mites between two days."""
    days = range(first.toordinal(), last.toordinal())
    return float(sum(growth[date.fromordinal(day).month - 1] for day in days))


def _next_chance(on: date, supers: int, *, is_over: bool) -> date:
    """Give the next day after today on which treating is usual: August, midwinter, or spring."""
    main = _day("main", on.year)
    winter = _day("winter", on.year)
    if on < main:
        soon = date.fromordinal(on.toordinal() + int(PARAMETERS["soon_days"].value))
        return main if supers else min(soon, main)
    return winter if on < winter and not is_over else _day("spring", on.year + 1)


def _day(name: str, year: int) -> date:
    return date(year, *(int(PARAMETERS[f"{name}_{part}"].value) for part in ("month", "day")))


def _open_to(situation: Situation, ways: list[Option], *, broodless: bool) -> list[Option]:
    """Give the treatments that may be begun today: where there are others, not the last one again.

    Substances are used in turn, so that none grows blunt.
    """
    possible = {way.treatment.substance: way for way in ways if way.possible == "yes"}
    if broodless:
        return [possible[ACID]] if ACID in possible else []
    bees = situation.bees
    is_weak = bees < PARAMETERS["acid_bees"].value  # formic acid is not for weak colonies
    open_to = [name for name in IN_SEASON if name in possible]
    open_to = [name for name in open_to if not (is_weak and name == "formic acid")]
    used = _last_substance(situation)
    in_turn = [name for name in open_to if name != used]
    return [possible[name] for name in in_turn or open_to]


def _last_substance(situation: Situation) -> str | None:
    used = [entry for entry in situation.history if isinstance(entry, Treatment)]
    return used[-1].substance if used else None


def _counts(situation: Situation) -> tuple[Action, ...]:
    counts = [e.on for e in situation.history if isinstance(e, TrayCount | WashCount)]
    first, last = PARAMETERS["count_from_month"].value, PARAMETERS["count_to_month"].value
    if not first <= situation.on.month <= last:
        return ()
    if counts and (situation.on - counts[-1]).days < PARAMETERS["count_every"].value:
        return ()
    return (Counting(on_tray=situation.standing.hive.floor == "mesh"),)


def _because(inputs: dict[str, float], chance_day: date) -> tuple[str, ...]:
    return (
        (
            f"About {_round(inputs['mites'])} mites ({_round(inputs['mites_low'])} to "
            f"{_round(inputs['mites_high'])}) against a level of {_round(inputs['level'])} for its "
            f"size; untreated about {_round(inputs['mites_later'])} by {day_words(chance_day)}, "
            f"chance of passing the level {chance_words(inputs['chance_of_passing'])}."
        ),
    )


def _round(value: float) -> str:
    if value < PARAMETERS["whole_below"].value:
        return f"{value:.0f}"
    return f"{float(f'{value:.2g}'):,.0f}"
