"""Food: the portion of syrup for the days until the next visit."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from math import ceil
from typing import Final, Literal

from combwright.advice.bee_acts import LeaveShut
from combwright.advice.costs import cost_of
from combwright.advice.deciding import Deciding
from combwright.advice.decision import Decision
from combwright.advice.decisions import queen, space, winter
from combwright.advice.decisions.going import goes
from combwright.advice.decisions.honey import after_honey
from combwright.advice.decisions.reserve import lack_of, reserve_kg
from combwright.advice.kit_acts import Feeding
from combwright.advice.numbers import is_in_months, numbers
from combwright.advice.situation import MARGIN_DAYS, Situation, band
from combwright.advice.trial import Tried, fed_with, try_all
from combwright.advice.weighing import gain, weigh
from combwright.advice.words import food_words
from combwright.advice.words.wording import chance_words
from combwright.simulation import observe
from combwright.terms.ranked import median
from combwright.terms.set_up import SetUp
from combwright.terms.sugar import FONDANT_SUGAR

PARAMETERS: Final = numbers("food")
AT_ONCE: Final = PARAMETERS["part_at_once"].value  # steps of an autumn feed
WEIGHED_G: Final = int(PARAMETERS["weighed_g"].value)
HUNDRED: Final = 100  # grams, to which what is settled is rounded
LEAST_G: Final = PARAMETERS["least_portion_g"].value
LEAST_DAYS: Final = PARAMETERS["least_portion_days"].value
FEEDER_G: Final = int(PARAMETERS["feeder_g"].value)
FONDANT_MOST_G: Final = int(PARAMETERS["fondant_most_g"].value)
AUTUMN_FRACTION: Final = PARAMETERS["autumn_fraction"].value


@dataclass(frozen=True, kw_only=True)
class Food(Decision):
    """The decision, its portion (of 0 grams where none is given), and what was tried."""

    portion: Feeding
    tried: Tried
    without: Tried


@dataclass(frozen=True)
class Ration:
    """What is to be fed, what that was found to be worth, and whether none is as well. [g]."""

    grams: int
    gains: Mapping[str, float] = field(default_factory=dict)
    is_open: bool = False


def decide(deciding: Deciding) -> Food:
    """Choose the portion for the set-up: settled by winter, or by what the colony uses."""
    situation, room = _until_opened(deciding), deciding.of(space.decide)
    for_winter = deciding.of(winter.decide)
    settled, or_more = None, False
    if goes(deciding):
        settled = Feeding(feed="syrup", grams=0, sugar_fraction=AUTUMN_FRACTION)
    elif for_winter.syrup_kg > 0.0 and not (for_winter.is_early and _for_honey(room)):
        grams = _to_hundreds(for_winter.syrup_kg)
        settled = Feeding(feed="syrup", grams=grams, sugar_fraction=AUTUMN_FRACTION)
        or_more = for_winter.is_early
    elif for_winter.fondant_kg > 0.0:
        grams = min(FONDANT_MOST_G, _to_hundreds(for_winter.fondant_kg))
        settled = Feeding(feed="fondant", grams=grams, sugar_fraction=FONDANT_SUGAR.value)
    elif is_in_months(situation.on, PARAMETERS, "unfed"):
        settled = Feeding(feed="syrup", grams=0, sugar_fraction=AUTUMN_FRACTION)
    return food(
        situation,
        room.set_up,
        settled=settled,
        or_more=or_more,
        only_if_hungry=room.super_near,
    )


def _until_opened(deciding: Deciding) -> Situation:
    """Give the situation for as long as it is left shut for its queen, if it is: as far as known.

    Nobody is there to feed it before.
    """
    situation = deciding.of(after_honey)
    shut = deciding.of(queen.decide).asks(LeaveShut)
    if not shut or shut[0].until is None:
        return situation
    known = situation.conditions.shape[1] - MARGIN_DAYS
    days = min(known, (shut[0].until - situation.on).days)
    if days <= situation.days:
        return situation
    return replace(situation, days=days, known_swarm_loss=situation.account.swarm_loss)


def _for_honey(room: space.Space) -> bool:
    """Tell whether a super goes on now or soon."""
    return room.super_near or room.set_up.supers > 0


def _to_hundreds(kilograms: float) -> int:
    return HUNDRED * round(kilograms * 1000.0 / HUNDRED)


def food(
    situation: Situation,
    set_up: SetUp,
    *,
    settled: Feeding | None = None,
    or_more: bool = False,
    only_if_hungry: bool = False,
) -> Food:
    """Choose the portion for a set-up.

    Where the unfed colony would fall below its reserve, or hunger threatens, it is given what it
    lacks, which grows from nothing; it is given what it will use until the next visit beyond the
    nectar it finds, if that is more, where the season with it is worth more than the sugar and the
    work. With ``settled`` the amount comes from elsewhere, as for winter, unless with ``or_more``
    it lacks more; of that and of all that would do harm, as much is given at once as keeps the
    limits. With ``only_if_hungry`` nothing is given but against hunger, as before a super.
    """
    arranged = situation.with_set_up(set_up)
    kind, fraction = _kind(situation) if settled is None else (settled.feed, settled.sugar_fraction)
    rations = []
    if settled is not None:
        rations.append(Ration(min(FEEDER_G, settled.grams) if kind == "syrup" else settled.grams))
    if settled is None or or_more:
        rations.append(_wanted(arranged, kind, fraction, only_if_hungry=only_if_hungry))
    wanted = max(rations, key=lambda ration: ration.grams)
    sizes, tried = _at_once(arranged, wanted, kind, fraction)
    best = _most(arranged, tried, wanted)
    grams = sizes[best]
    portion = _portion(situation, grams, kind, fraction)
    inputs = {
        **_inputs(situation, tried[0], tried[best], grams),
        **wanted.gains,
    }
    inputs["only_if_hungry"] = float(only_if_hungry)
    return Food(
        topic="food",
        actions=(portion,) if grams else (),
        because=food_words.because(inputs, grams, situation, set_up, kind),
        inputs=inputs,
        runner_up=_runner_up(sizes, tried, best),
        tells=True,
        portion=portion,
        tried=tried[best],
        without=tried[0],
    )


def _kind(situation: Situation) -> tuple[Literal["syrup", "fondant"], float]:
    """Give syrup, or fondant where it is too cold for syrup to be taken."""
    if situation.mean_high_c >= PARAMETERS["cold_c"].value:
        return "syrup", situation.syrup_fraction
    return "fondant", FONDANT_SUGAR.value


def _portion(
    situation: Situation, grams: int, kind: Literal["syrup", "fondant"], fraction: float
) -> Feeding:
    return Feeding(
        feed=kind,
        grams=grams,
        sugar_fraction=fraction if grams else 0.0,
        per_day_g=grams // situation.days,
        days=situation.days if grams else 0,
        hand_warm=bool(grams) and kind == "syrup" and situation.is_cool,
    )


def _wanted(
    situation: Situation,
    kind: Literal["syrup", "fondant"],
    fraction: float,
    *,
    only_if_hungry: bool,
) -> Ration:
    """Give what it lacks, or what it uses if that is more and pays: nothing is to be beaten."""
    if situation.standing.set_up.supers:
        return Ration(0)
    lack = lack_of(situation, fraction)
    needed = _grams(situation, lack.food / fraction)
    if only_if_hungry:
        return Ration(needed)
    least = max(needed, _grams(situation, lack.reserve / fraction))
    most = max(least, _grams(situation, lack.use / fraction))
    is_settled = most == least or lack.is_rich
    if most == 0 or (is_settled and situation.is_branch):  # there no worth is told
        return Ration(least, is_open=True)
    sizes = list(dict.fromkeys((0, least, most)))
    portions = [_portion(situation, grams, kind, fraction) for grams in sizes]
    changes = [fed_with(situation, grams, fraction) for grams in sizes]
    works = [(one,) if one.grams else () for one in portions]
    asked = [PARAMETERS["worth_times"].value * cost_of(work, situation.prices) for work in works]
    worth = weigh(situation, changes, works, besides=[-more for more in asked])
    due, last = sizes.index(least), len(sizes) - 1
    beyond = gain(worth[last], worth[due])
    more = replace(beyond, money=beyond.money + asked[last] - asked[due])
    pays = more.is_worth_it and beyond.money > 0 and not lack.is_rich
    chosen = last if pays else due
    told = gain(worth[chosen or last], worth[0])
    gains = {
        "worth_more": told.money + asked[chosen or last],
        "minutes": told.minutes,
        "least_g": float(sizes[chosen or last]),
        "stores_left_unfed_kg": lack.left_kg,
    }
    return Ration(sizes[chosen], gains, is_open=True)


def _grams(situation: Situation, needed: float) -> int:
    """Give a portion that is weighed out by the day, worth carrying, and fits the feeder. [g]."""
    step = situation.days * WEIGHED_G
    steps, least = round(needed / step), ceil(_least_g(situation) / step)
    return min(FEEDER_G, step * max(steps, least)) if steps > 0 else 0


def _least_g(situation: Situation) -> float:
    """Give the least that is worth carrying, for so many days. [g]."""
    return LEAST_G * min(1.0, situation.days / LEAST_DAYS)


def _at_once(
    situation: Situation, wanted: Ration, kind: Literal["syrup", "fondant"], fraction: float
) -> tuple[list[int], list[Tried]]:
    """Try none and all that is wanted, and parts of it where all of it would do harm. [g]."""
    sizes = list(dict.fromkeys((0, wanted.grams)))
    tried = try_all(situation, [fed_with(situation, grams, fraction) for grams in sizes])
    harm = situation.limits.excess(tried[-1].chances)
    if wanted.grams == 0 or kind == "fondant" or harm <= _same_harm(situation):
        return sizes, tried
    weighed = situation.days * WEIGHED_G if wanted.is_open else HUNDRED
    sizes = _parts(wanted.grams, weighed, _least_g(situation))
    return sizes, try_all(situation, [fed_with(situation, grams, fraction) for grams in sizes])


def _parts(grams: int, weighed: int, least: float) -> list[int]:
    """Give none, and what may be fed at once of an amount, as it is weighed out. [g]."""
    shares = (grams * step * AT_ONCE for step in range(1, round(1.0 / AT_ONCE)))
    parts = dict.fromkeys(weighed * round(share / weighed) for share in shares)
    return [0, *(part for part in parts if least <= part < grams), grams]


def _most(situation: Situation, tried: list[Tried], wanted: Ration) -> int:
    """Choose the largest part that keeps the limits; of what is settled, some at least."""
    excess = [situation.limits.excess(each.chances) for each in tried]
    open_to = excess if wanted.is_open else excess[1:] or excess
    same = min(open_to) + _same_harm(situation)
    return max(i for i, each in enumerate(excess) if each <= same)


def _same_harm(situation: Situation) -> float:
    """Give the harm that two members more or less make: no reason to feed more."""
    return PARAMETERS["same_harm_members"].value / len(situation.colonies)


def _left_kg(tried: Tried) -> float:
    return median(observe.stores_kg(tried.colonies))


def _runner_up(sizes: list[int], tried: list[Tried], best: int) -> str:
    """Name the neighbouring size and why it lost."""
    if len(sizes) == 1:
        return ""
    other = best + 1 if best + 1 < len(sizes) else best - 1
    worse = [
        f"{name} {chance_words(tried[other].chances[name])} "
        f"against {chance_words(tried[best].chances[name])}"
        for name in ("hunger", "no room", "sour")
        if tried[other].chances[name] > tried[best].chances[name] + PARAMETERS["told_apart"].value
    ]
    more = "more than it uses" if other > best > 0 else "not needed" if other else "too little"
    why = ", ".join(worse) or more
    return f"{sizes[other]:,} g: {why}"


def _inputs(situation: Situation, without: Tried, chosen: Tried, grams: int) -> dict[str, float]:
    days = situation.horizon
    used = band(chosen.colonies["used_total"] / days / situation.syrup_fraction)
    income = band(chosen.colonies["gathered_total"] / days / situation.syrup_fraction)
    stores = band(observe.stores_kg(situation.colonies))
    fewer = float(median(without.colonies["room"]) - median(chosen.colonies["room"]))
    return {
        "use_g_a_day_low": used[0],
        "use_g_a_day": used[1],
        "use_g_a_day_high": used[2],
        "nectar_g_a_day": income[1],
        "stores_kg": stores[1],
        "hunger_without": without.chances["hunger"],
        "hunger_with": chosen.chances["hunger"],
        "bees_gained": chosen.bees - without.bees,
        "room_cells_lost": fewer,
        "portion_g": float(grams),
        "stores_left_unfed_kg": _left_kg(without),
        "reserve_kg": reserve_kg(situation),
    }
