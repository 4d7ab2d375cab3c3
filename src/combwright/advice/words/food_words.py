"""What is said of food: the reason in numbers."""

from datetime import timedelta
from typing import Final

from combwright.advice.numbers import numbers
from combwright.advice.situation import Situation
from combwright.advice.words.money_words import less_words, money_words, worth_words
from combwright.advice.words.wording import (
    chance_words,
    count_words,
    day_words,
    grams_words,
)
from combwright.terms.set_up import SetUp

PARAMETERS: Final = numbers("food")


def because(
    inputs: dict[str, float], grams: int, situation: Situation, set_up: SetUp, kind: str
) -> tuple[str, ...]:
    """Give the reason in numbers for a portion, or for none."""
    need = (
        f"It uses about {grams_words(inputs['use_g_a_day'])} of syrup a day "
        f"({grams_words(inputs['use_g_a_day_low'])} to "
        f"{grams_words(inputs['use_g_a_day_high'])}), finds "
        f"{_nectar_words(inputs['nectar_g_a_day'])} and has {inputs['stores_kg']:.1f} kg of stores."
    )
    until = (
        f"{day_words(situation.planned_until)} and {situation.horizon - situation.days} days more"
    )
    without = chance_words(inputs["hunger_without"])
    hungry = f"Unfed, the chance of hunger before {until} is {without}"
    if grams == 0 and set_up.supers:
        return need, f"No feed with supers on: syrup must not get into honey. {hungry}."
    if grams == 0:
        left = f"leaves {inputs['stores_left_unfed_kg']:.1f} kg"
        unfed = f"{hungry}; it {left}, and its reserve is {inputs['reserve_kg']:.1f} kg."
        return need, unfed, *(_waiting_words(inputs) or _no_gain_words(inputs))
    lines = [need]
    fed = chance_words(inputs["hunger_with"])
    if inputs["hunger_without"] > situation.limits.hunger and fed != without:
        lines.append(f"{hungry}; with this portion {fed}.")
    elif inputs["stores_left_unfed_kg"] < inputs["reserve_kg"]:
        later = situation.on + timedelta(days=2 * situation.days)
        lines.append(
            f"Unfed it would be down to {inputs['stores_left_unfed_kg']:.1f} kg by "
            f"{day_words(later)}, under its reserve of {inputs['reserve_kg']:.1f} kg."
        )
    elif inputs.get("worth_more", 0.0) > 0.0:
        lines.append(worth_words("The feed", inputs["worth_more"], 0.0, inputs["minutes"]))
    elif inputs["hunger_without"] > situation.limits.hunger:
        lines.append(f"{hungry}, a little over your limit.")
    if kind == "syrup" and inputs["room_cells_lost"] > PARAMETERS["room_told"].value:
        lost = count_words(inputs["room_cells_lost"])
        lines.append(f"It takes about {lost} cells of the queen's room for some days.")
    if kind == "fondant":
        lines.append("It is too cold for syrup to be taken: fondant over the cluster.")
    return tuple(lines)


def _waiting_words(inputs: dict[str, float]) -> tuple[str, ...]:
    """Say that a super is near, where that is why nothing is fed."""
    if not inputs["only_if_hungry"]:
        return ()
    return ("A super may go on soon: nothing is fed but against hunger, to keep honey clean.",)


def _no_gain_words(inputs: dict[str, float]) -> tuple[str, ...]:
    """Say that feeding all the same would bring nothing, where it was weighed and does not."""
    if "worth_more" not in inputs:
        return ()
    fed = grams_words(inputs["least_g"])
    lost = -inputs["worth_more"]
    if lost <= -1.0:
        more = money_words(-lost)
        return (
            f"Fed {fed} all the same, it would bring {more} by October: too little to be sure of.",
        )
    if lost < 1.0:
        return (f"Fed {fed} all the same, it would bring next to nothing by October.",)
    return (f"Fed {fed} all the same, it would be {less_words(lost)} by October.",)


def _nectar_words(grams: float) -> str:
    return (
        f"nectar for {grams_words(grams)} of that"
        if grams >= PARAMETERS["nectar_told"].value
        else "hardly any nectar"
    )
