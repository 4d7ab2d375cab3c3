"""Food: the portion of syrup for the days until the next visit."""

from dataclasses import dataclass
from typing import Any, Final

import numpy as np

from combwright.advice.decision import Decision
from combwright.advice.situation import Situation, band
from combwright.advice.trial import Change, Tried, try_all
from combwright.advice.wording import chance_words, count_words, day_words, grams_words
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
FONDANT_FRACTION: Final = 0.85
COLD_C: Final = 9.0  # mean of the days' highs below which syrup is left and fondant is given


@dataclass(frozen=True)
class Portion:
    """Feed until the next visit, with its reason."""

    grams: int
    per_day_g: int
    days: int
    sugar_fraction: float
    feed: str
    decision: Decision
    tried: Tried
    without: Tried


def portion(
    situation: Situation, set_up: SetUp, *, fixed: tuple[int, float, str] | None = None
) -> Portion:
    """Choose the portion for a set-up.

    Every size is tried on the same members and luck; those within the limits on harm compete by
    bees gained, less the price of the sugar. With ``fixed`` (grams, sugar fraction, kind) the
    amount is settled elsewhere, as for winter, and only its effect is worked out.
    """
    syrup_suits = _warm_enough(situation)
    fraction = situation.syrup_fraction if syrup_suits else FONDANT_FRACTION
    kind = "syrup" if syrup_suits else "fondant"
    sizes = _sizes(situation, set_up)
    if fixed is not None:
        grams, fraction, kind = fixed
        sizes = [0, grams] if grams else [0]
    tried = try_all(situation, [given(situation, set_up, size, fraction) for size in sizes])
    best = len(sizes) - 1 if fixed is not None else _best(situation, sizes, tried)
    grams = sizes[best]
    inputs = _inputs(situation, tried[0], tried[best], grams)
    because = _because(inputs, grams, situation, set_up, kind)
    return Portion(
        grams,
        grams // situation.days,
        situation.days if grams else 0,
        fraction if grams else 0.0,
        kind,
        Decision("food", _jobs(grams, kind), because, inputs, _runner_up(sizes, tried, best)),
        tried[best],
        tried[0],
    )


def _sizes(situation: Situation, set_up: SetUp) -> list[int]:
    return [
        per_day * situation.days
        for per_day in PER_DAY_G
        if per_day * situation.days <= FEEDER_G and (set_up.supers == 0 or per_day == 0)
    ]


def _best(situation: Situation, sizes: list[int], tried: list[Tried]) -> int:
    excess = [round(situation.limits.excess(each.chances), 3) for each in tried]
    worth = [each.bees - SUGAR_COST.value * each.syrup_g for each in tried]
    best = min(range(len(sizes)), key=lambda i: (excess[i], -worth[i]))
    if excess[0] <= excess[best] and worth[best] - worth[0] < WORTH_BEES:
        return 0
    return best


def _runner_up(sizes: list[int], tried: list[Tried], best: int) -> str:
    """Name the neighbouring size and why it lost."""
    if len(sizes) == 1:
        return ""
    other = best + 1 if best + 1 < len(sizes) else best - 1
    gained = tried[best].bees - tried[other].bees
    worse = [
        f"{name} {tried[other].chances[name]:.0%} against {tried[best].chances[name]:.0%}"
        for name in ("hunger", "no room", "sour")
        if tried[other].chances[name] > tried[best].chances[name] + 0.005
    ]
    why = ", ".join(worse) or f"{round(gained, -1):.0f} bees against the price of the sugar"
    return f"{sizes[other]} g: {why}"


def _jobs(grams: int, kind: str) -> tuple[str, ...]:
    if not grams:
        return ()
    if kind == "fondant":
        return (f"Lay {grams} g of fondant over the cluster.",)
    return (f"Give {grams} g ({grams / 1287.0:.1f} L) of syrup, hand-warm, in the evening.",)


def given(situation: Situation, set_up: SetUp, grams: int, fraction: float) -> Change:
    """Give the work of a visit as a change: the stack arranged and the feed given."""

    def change(colonies: Any) -> None:
        arrange(colonies, situation.standing.hive, set_up)
        feed(colonies, float(grams), fraction, warmer_k=8.0)

    return change


def _warm_enough(situation: Situation) -> bool:
    highs = situation.conditions[:, : situation.days, 2]
    return bool(np.mean(highs) >= COLD_C)


def _inputs(situation: Situation, without: Tried, chosen: Tried, grams: int) -> dict[str, float]:
    days = situation.horizon
    used = band(chosen.colonies["used_total"] / days / situation.syrup_fraction)
    income = band(chosen.colonies["gathered_total"] / days / situation.syrup_fraction)
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
    inputs: dict[str, float], grams: int, situation: Situation, set_up: SetUp, kind: str
) -> tuple[str, ...]:
    need = (
        f"It uses about {grams_words(inputs['use_g_a_day'])} of syrup a day "
        f"({grams_words(inputs['use_g_a_day_low'])} to "
        f"{grams_words(inputs['use_g_a_day_high'])}), finds "
        f"{_nectar_words(inputs['nectar_g_a_day'])} and has {inputs['stores_kg']:.1f} kg of stores."
    )
    until = f"{day_words(situation.next_visit)} and {situation.horizon - situation.days} days more"
    without = chance_words(inputs["hunger_without"])
    hungry = f"Unfed, the chance of hunger before {until} is {without}"
    if grams == 0 and set_up.supers:
        return need, f"No feed with supers on: syrup must not get into honey. {hungry}."
    if grams == 0:
        return need, f"{hungry}; feed would gain nothing."
    lines = [need]
    if inputs["hunger_without"] > situation.limits.hunger:
        lines.append(f"{hungry}; with this portion {chance_words(inputs['hunger_with'])}.")
    elif inputs["bees_gained"] >= WORTH_BEES:
        lines.append(f"It gains about {count_words(inputs['bees_gained'])} bees and brood by then.")
    if inputs["room_cells_lost"] > 200.0:
        lost = count_words(inputs["room_cells_lost"])
        lines.append(f"It takes about {lost} cells of the queen's room for some days.")
    if kind == "fondant":
        lines.append("It is too cold for syrup to be taken: fondant over the cluster.")
    return tuple(lines)


def _nectar_words(grams: float) -> str:
    return f"nectar for {grams_words(grams)} of that" if grams >= 10.0 else "hardly any nectar"
