"""Food: the portion of syrup for the days until the next visit."""

from dataclasses import dataclass
from typing import Any, Final

import numpy as np

from combwright.advice.situation import Situation, band
from combwright.advice.trial import Change, Tried, try_all
from combwright.simulation import observe
from combwright.simulation.actions import arrange, feed
from combwright.terms.parameters import Parameter
from combwright.terms.set_up import SetUp

PER_DAY_G: Final = (0, 100, 150, 200, 250, 300, 400, 500, 600, 700)
FEEDER_G: Final = 5800  # a 4.5 L contact feeder of 60 % syrup
SUGAR_COST: Final = Parameter(
    0.10,
    "bees/g syrup",
    0.02,
    0.5,
    "a kilogram of sugar against bees at the price of a nuc, about 50 bees a euro",
    "judgement",
)
WORTH_BEES: Final = 60.0  # a gain below this many bees is no reason to feed; judgement
COLD_C: Final = 9.0  # mean of the days' highs below which syrup is left and fondant is given


@dataclass(frozen=True)
class Portion:
    """Feed until the next visit, with its reason."""

    grams: int
    per_day_g: int
    days: int
    sugar_fraction: float
    feed: str
    chances: dict[str, float]
    because: tuple[str, ...]
    inputs: dict[str, float]
    tried: Tried
    without: Tried


def portion(situation: Situation, set_up: SetUp) -> Portion:
    """Choose the portion for a set-up.

    Every size is tried on the same members and luck; those within the limits on harm compete by
    bees gained, less the price of the sugar.
    """
    syrup_suits = _warm_enough(situation)
    fraction = situation.syrup_fraction if syrup_suits else 0.85
    sizes = [
        per_day * situation.days
        for per_day in PER_DAY_G
        if per_day * situation.days <= FEEDER_G and (set_up.supers == 0 or per_day == 0)
    ]
    tried = try_all(situation, [_given(situation, set_up, size, fraction) for size in sizes])
    excess = [situation.limits.excess(each.chances) for each in tried]
    worth = [each.bees - SUGAR_COST.value * each.syrup_g for each in tried]
    best = min(range(len(sizes)), key=lambda i: (round(excess[i], 3), -worth[i]))
    if excess[0] <= excess[best] + 1e-9 and worth[best] - worth[0] < WORTH_BEES:
        best = 0
    grams = sizes[best]
    inputs = _inputs(situation, tried[0], tried[best], grams)
    return Portion(
        grams,
        grams // situation.days,
        situation.days if grams else 0,
        fraction if grams else 0.0,
        "syrup" if syrup_suits else "fondant",
        tried[best].chances,
        _because(inputs, grams, situation, set_up, syrup_suits),
        inputs,
        tried[best],
        tried[0],
    )


def _given(situation: Situation, set_up: SetUp, grams: int, fraction: float) -> Change:
    def change(colonies: Any) -> None:
        arrange(colonies, situation.standing.hive, set_up)
        feed(colonies, float(grams), fraction, warmer_k=8.0)

    return change


def _warm_enough(situation: Situation) -> bool:
    highs = situation.conditions[:, : situation.days, 2]
    return bool(np.mean(highs) >= COLD_C)


def _inputs(situation: Situation, without: Tried, chosen: Tried, grams: int) -> dict[str, float]:
    days = situation.horizon
    used = band(without.colonies["used_total"] / days / situation.syrup_fraction)
    income = band(without.colonies["gathered_total"] / days / situation.syrup_fraction)
    stores = band(observe.stores_kg(situation.colonies))
    fewer = float(np.median(without.room) - np.median(chosen.room))
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
    }


def _because(
    inputs: dict[str, float], grams: int, situation: Situation, set_up: SetUp, syrup_suits: bool
) -> tuple[str, ...]:
    need = (
        f"It uses what {_grams(inputs['use_g_a_day'])} of {situation.syrup_fraction:.0%} syrup a "
        f"day would hold ({_grams(inputs['use_g_a_day_low'])} to "
        f"{_grams(inputs['use_g_a_day_high'])}), brings in about "
        f"{_grams(inputs['nectar_g_a_day'])} of that as nectar, and has "
        f"{inputs['stores_kg']:.1f} kg of stores."
    )
    until = f"{situation.next_visit:%d %b} and {situation.horizon - situation.days} days more"
    hungry = f"With nothing given the chance of hunger before {until} is"
    if grams == 0 and set_up.supers:
        why = f"No feed with supers on: syrup must not get into honey. {hungry} "
        return need, f"{why}{inputs['hunger_without']:.0%}."
    if grams == 0:
        return need, f"{hungry} {inputs['hunger_without']:.0%}; feed would gain nothing."
    lines = [need]
    gained = inputs["bees_gained"]
    if inputs["hunger_without"] > situation.limits.hunger:
        lines.append(
            f"{hungry} {inputs['hunger_without']:.0%}; with this portion "
            f"{inputs['hunger_with']:.0%}."
        )
    if gained >= WORTH_BEES:
        lines.append(f"It gains about {round(gained, -1):.0f} bees and brood by then.")
    if inputs["room_cells_lost"] > 200.0:
        lost = round(inputs["room_cells_lost"], -2)
        lines.append(f"It takes about {lost:.0f} cells of the queen's room for some days.")
    if not syrup_suits:
        lines.append("It is too cold for syrup to be taken: fondant over the cluster.")
    return tuple(lines)


def _grams(value: float) -> str:
    step = 10 if value < 500 else 50
    return f"{step * round(value / step):.0f} g"
