"""Food: the portion of syrup for the days until the next visit."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Final, Literal

import numpy as np

from combwright.advice.bee_acts import LeaveShut
from combwright.advice.deciding import Deciding
from combwright.advice.decision import Decision
from combwright.advice.decisions import queen, space, winter
from combwright.advice.decisions.going import goes
from combwright.advice.decisions.honey import after_honey
from combwright.advice.decisions.reserve import reserve_kg
from combwright.advice.kit_acts import Feeding
from combwright.advice.numbers import is_in_months, numbers
from combwright.advice.situation import MARGIN_DAYS, Situation, band
from combwright.advice.trial import Tried, fed_with, try_all
from combwright.advice.weighing import gain, weigh
from combwright.advice.words import food_words
from combwright.advice.words.wording import chance_words
from combwright.simulation import observe
from combwright.terms.set_up import SetUp
from combwright.terms.sugar import FONDANT_SUGAR

PARAMETERS: Final = numbers("food")
AT_ONCE: Final = PARAMETERS["part_at_once"].value  # steps of an autumn feed
NOTHING_WEIGHED: Final[Mapping[str, float]] = {}
WEIGHED_G: Final = int(PARAMETERS["weighed_g"].value)
FEEDER_G: Final = int(PARAMETERS["feeder_g"].value)
FONDANT_MOST_G: Final = int(PARAMETERS["fondant_most_g"].value)
AUTUMN_FRACTION: Final = PARAMETERS["autumn_fraction"].value


@dataclass(frozen=True, kw_only=True)
class Food(Decision):
    """The decision, its portion (of 0 grams where none is given), and what was tried."""

    portion: Feeding
    tried: Tried
    without: Tried


def decide(deciding: Deciding) -> Food:
    """Choose the portion for the set-up: settled by winter, or by what the colony uses."""
    situation, room = _until_opened(deciding), deciding.of(space.decide)
    for_winter = deciding.of(winter.decide)
    settled = None
    if goes(deciding):
        settled = Feeding(feed="syrup", grams=0, sugar_fraction=AUTUMN_FRACTION)
    elif for_winter.syrup_kg > 0.0:
        grams = _to_hundreds(for_winter.syrup_kg)
        settled = Feeding(feed="syrup", grams=grams, sugar_fraction=AUTUMN_FRACTION)
    elif for_winter.fondant_kg > 0.0:
        grams = min(FONDANT_MOST_G, _to_hundreds(for_winter.fondant_kg))
        settled = Feeding(feed="fondant", grams=grams, sugar_fraction=FONDANT_SUGAR.value)
    elif is_in_months(situation.on, PARAMETERS, "unfed"):
        settled = Feeding(feed="syrup", grams=0, sugar_fraction=AUTUMN_FRACTION)
    return food(situation, room.set_up, settled=settled, only_if_hungry=room.super_near)


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


def _to_hundreds(kilograms: float) -> int:
    return int(round(kilograms * 1000.0, -2))


def food(
    situation: Situation,
    set_up: SetUp,
    *,
    settled: Feeding | None = None,
    only_if_hungry: bool = False,
) -> Food:
    """Choose the portion for a set-up.

    The portion is what the colony will use until the next visit beyond the nectar it finds, more
    where stores are so short that hunger threatens. It is given where the unfed colony would fall
    below its reserve or break the limits on harm, or where the season with it is worth more than
    the sugar and the work. With ``settled`` the amount
    comes from elsewhere, as for winter; of syrup, as much of it is given at once as is taken down
    before it turns. With ``only_if_hungry`` nothing is given but to keep the limits, as before a
    super.
    """
    arranged = situation.with_set_up(set_up)
    kind, fraction = _kind(situation) if settled is None else (settled.feed, settled.sugar_fraction)
    if settled is None:
        sizes = _sizes(arranged, fraction)
    else:
        grams = settled.grams
        sizes = _parts(grams) if kind == "syrup" else list(dict.fromkeys((0, grams)))
    tried = try_all(arranged, [fed_with(arranged, grams, fraction) for grams in sizes])
    portions = [_portion(situation, grams, kind, fraction) for grams in sizes]
    if settled is not None:
        best, gains = _most(situation, tried), NOTHING_WEIGHED
    else:
        best, gains = _best(arranged, tried, portions, only_if_hungry=only_if_hungry)
    grams, portion = sizes[best], portions[best]
    inputs = {
        **_inputs(situation, tried[0], tried[best], grams),
        **_if_fed(sizes, tried),
        **gains,
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


def _sizes(situation: Situation, fraction: float) -> list[int]:
    """Give the sizes to try: none, and what it will be short of. [g].

    That is what it will use beyond its nectar until the next visit, or what it lacks of its
    reserve by then, or of food at the careful end beyond it, if that is more: so that more bees,
    fewer stores or more days never ask for less.
    """
    if situation.standing.set_up.supers:
        return [0]
    ample = PARAMETERS["ample_g_a_frame"].value * situation.bees * situation.horizon
    (trial,) = try_all(situation, [fed_with(situation, ample, fraction)])
    lived = trial.colonies
    use, nectar = lived["used_total"] / situation.horizon, lived["gathered_total"]
    nectar = nectar / situation.horizon
    a_day = max(float(np.median(use - nectar)), PARAMETERS["least_need"].value * np.median(use))
    held = 1000.0 * observe.sugar_kg(situation.colonies) + situation.colonies["feeder"]
    reserve = 1000.0 * reserve_kg(situation) * observe.SUGAR_IN_HONEY
    of_reserve = float(np.median(reserve + situation.days * (use - nectar) - held))
    hungry = situation.horizon * (use - nectar) - held
    of_food = float(np.quantile(hungry, 1.0 - situation.limits.hunger))
    needed = max(situation.days * a_day, of_reserve, of_food) / fraction
    grams = min(FEEDER_G, situation.days * _weighable(needed / situation.days))
    return [0, grams] if grams else [0]


def _parts(grams: int) -> list[int]:
    """Give what may be fed at once of a settled amount: parts that the feeder holds. [g]."""
    most = min(grams, FEEDER_G)
    steps = round(1.0 / AT_ONCE)
    parts = dict.fromkeys(int(round(most * (step / steps), -2)) for step in range(1, steps + 1))
    return [0, *(grams for grams in parts if grams)]


def _most(situation: Situation, tried: list[Tried]) -> int:
    """Choose the largest part that keeps the limits."""
    excess = [situation.limits.excess(each.chances) for each in tried]
    same = min(excess[1:] or excess) + _same_harm(situation)
    return max(i for i, each in enumerate(excess) if each <= same)


def _same_harm(situation: Situation) -> float:
    """Give the harm that two members more or less make: no reason to feed more."""
    return PARAMETERS["same_harm_members"].value / len(situation.colonies)


def _weighable(grams: float) -> int:
    """Round a day's portion to what is weighed out. [g]."""
    return WEIGHED_G * round(grams / WEIGHED_G)


def _best(
    situation: Situation, tried: list[Tried], portions: list[Feeding], *, only_if_hungry: bool
) -> tuple[int, Mapping[str, float]]:
    """Choose to feed or not, and give what the portion is worth against none."""
    excess = [situation.limits.excess(each.chances) for each in tried]
    same = _same_harm(situation)
    is_kept = excess[0] <= (min(excess) if min(excess) > same else 0.0) + same
    is_harmed = excess[-1] > excess[0] + same
    if len(tried) == 1 or is_harmed or (only_if_hungry and is_kept):
        return 0, NOTHING_WEIGHED
    changes = [fed_with(situation, one.grams, one.sugar_fraction or 0.5) for one in portions]
    unfed, fed = weigh(situation, changes, [(), (portions[1],)])
    brought = gain(fed, unfed)
    left, reserve = _left_kg(tried[0]), reserve_kg(situation)
    is_short = not is_kept or left < reserve
    is_rich = left >= PARAMETERS["rich_times"].value * reserve
    told = {"worth_more": brought.money, "minutes": brought.minutes}
    least = PARAMETERS["worth_times"].value * (fed.cost - unfed.cost)
    pays = brought.is_worth_it and brought.money > least and not is_rich
    return int(is_short or pays), told


def _left_kg(tried: Tried) -> float:
    return float(np.median(observe.stores_kg(tried.colonies)))


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
    fewer = float(np.median(without.colonies["room"]) - np.median(chosen.colonies["room"]))
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


def _if_fed(sizes: list[int], tried: list[Tried]) -> dict[str, float]:
    """Give the least portion that was tried, and what it gains: for saying why none is given."""
    if len(sizes) < 2:
        return {}
    return {
        "least_g": float(sizes[1]),
        "gained_by_least": tried[1].bees - tried[0].bees,
    }
