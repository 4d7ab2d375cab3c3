"""What is said of room and warmth: the reason in numbers."""

from typing import Final

from combwright.advice.numbers import numbers
from combwright.advice.situation import Situation
from combwright.advice.words.money_words import worth_words
from combwright.advice.words.wording import chance_words, count_words, day_words
from combwright.terms.set_up import SetUp

ROBBED: Final = numbers("space")["robbed_chance"].value
GAINED_TOLD: Final = numbers("space")["gained_told"].value


def because(
    situation: Situation, now: SetUp, chosen: SetUp, inputs: dict[str, float]
) -> tuple[str, ...]:
    """Give the reason in numbers for what is changed, or for changing nothing."""
    lines = []
    bees = (
        f"{inputs['frames_of_bees']:.1f} frames of bees "
        f"({inputs['frames_of_bees_low']:.1f} to {inputs['frames_of_bees_high']:.1f})"
    )
    short_now, short = inputs["no_room_as_it_is"], inputs["no_room"]
    if chosen.frames > now.frames:
        lines.append(
            f"{bees} on {now.frames} frames: chance that the queen runs short of room for two "
            f"days {chance_words(short_now)}; with {chosen.frames} frames {chance_words(short)}"
            f"{_gained_words(inputs['bees_gained'])}."
        )
        if inputs.get("worth_more", 0.0) > 0.0:
            lines.append(worth_words("The room", inputs["worth_more"], 0.0, inputs["minutes"]))
    elif chosen.frames < now.frames or chosen.dummy_boards > now.dummy_boards:
        lines.append(
            f"{bees}: closing up cuts the loss of the nest from "
            f"{inputs['loss_w_per_k_as_it_is']:.2f} to {inputs['loss_w_per_k']:.2f} W/K (published "
            "hive figures differ threefold) and leaves room enough."
        )
    else:
        lines.append(
            f"{bees} on {now.frames} frames: chance that the queen runs short of room before "
            f"{day_words(situation.planned_until)} {chance_words(short)}."
        )
    if chosen.supers > now.supers:
        lines.append(
            f"The box fills: chance of a swarm before then "
            f"{chance_words(inputs['swarm_as_it_is'])} as it is, "
            f"{chance_words(inputs['swarm'])} with a super."
        )
        if "super_worth_more" in inputs:
            lines.append(
                worth_words(
                    "A super now",
                    inputs["super_worth_more"],
                    inputs["super_honey_kg"],
                    inputs["super_minutes"],
                )
            )
    if chosen.supers < now.supers:
        lines.append(
            f"Under supers it cannot be fed, and its chance of hunger is "
            f"{chance_words(inputs['hunger_as_it_is'])}."
        )
    lines += _air_words(now, chosen, inputs)
    return tuple(lines)


def _gained_words(bees: float) -> str:
    return f", and about {count_words(bees)} more bees and brood" if bees >= GAINED_TOLD else ""


def _air_words(now: SetUp, chosen: SetUp, inputs: dict[str, float]) -> list[str]:
    """Give the reason for tray and entrance where they are set anew."""
    words = []
    if chosen.entrance_mm != now.entrance_mm:
        bees = inputs["frames_of_bees"]
        guarded = f"The entrance is what {bees:.0f} frames of bees can guard."
        robbed = f"It may have been robbed ({chance_words(inputs['robbed'])}): hardly any entrance."
        words.append(robbed if inputs["robbed"] >= ROBBED else guarded)
    if chosen.tray_open_mm != now.tray_open_mm:
        words.append(
            f"Days of about {inputs['mean_high_c']:.0f} °C set the tray: air goes through the open "
            "floor under a closed top."
        )
    if chosen.cover != now.cover:
        words.append(
            "Its floor is closed, so the air leaves through the top."
            if chosen.cover == "vented"
            else "Its floor is open, so the top is closed."
        )
    return words
