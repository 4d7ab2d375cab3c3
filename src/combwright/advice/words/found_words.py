"""What may be found at a colony, in words, by its code."""

from collections.abc import Mapping
from typing import Final

from combwright.advice.words.wording import chance_words

FOUND: Final[Mapping[str, str]] = {
    "at most": "at most {amount:g} {quantity}",
    "at least": "at least {amount:g} {quantity}",
    "no eggs": "no eggs",
    "cups": "cups without anything in them",
    "supersedure cells": "one to three cells on the face of a comb",
    "charged cells in a small colony": "charged cells under seven frames of bees",
    "charged cells": "charged cells (a larva in jelly), and the queen found",
    "charged cells without the queen": "charged cells, eggs, but the queen not found",
    "swarmed": "sealed cells, few bees and no queen, with eggs or without",
    "sealed cells": "sealed cells, many bees, and eggs or the queen",
    "charged cells, no eggs": "charged cells and many bees, but no eggs",
    "no cells on the test frame": "no cells on a test frame after four days",
    "drone brood only": "drone brood in worker cells, one egg in a cell",
    "several eggs in a cell": "drone brood in worker cells, several eggs in a cell",
    "nest full of stores": "stores on nearly every comb, and little brood among them",
    "empty combs": "no food in the combs, and no amount said of it at the colony",
    "robbers": "robbers: bees that fight at the entrance, or search round the lid",
    "cold day": "a day that stays under 12 °C",
    "calm with pollen": "calm bees that carry pollen in",
    "restless or no pollen": "bees that run about the entrance, or no pollen on a fine day",
    "signs of disease": "sunken, discoloured or ropy brood, or a pest new to you",
}
HOWEVER_MANY: Final = "however many bees there are"
LIKELY: Final[Mapping[str, str]] = {
    "no eggs": "no queen is laying",
    "charged cells": "cells are begun",
}


def found_words(
    code: str,
    quantity: str | None,
    amount: float | None,
    chance: float | None,
    over: float | None = None,
) -> str:
    """Say what is found, and how likely the book thinks it where it does.

    Examples
    --------
    >>> found_words("at most", "frames of bees", 5.5, None)
    'at most 5.5 frames of bees'
    >>> found_words("at most", "frames of bees", 1.0, None)
    'at most 1 frame of bees'
    >>> found_words("at most", "kg of stores", 3.0, None, over=1.0)
    'at most 3 kg of stores, but more than 1'
    >>> found_words("no eggs", None, None, 0.08)
    'no eggs (chance that no queen is laying: 8 %)'

    """
    named = quantity if quantity is None or amount != 1.0 else quantity.replace("frames", "frame")
    found = FOUND[code].format(amount=amount, quantity=named)
    if over is not None:
        found += f", but more than {over:g}"
    if chance is None:
        return found
    return f"{found} (chance that {LIKELY[code]}: {chance_words(chance)})"
