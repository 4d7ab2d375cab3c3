"""The words of every look, by what is looked at."""

from collections.abc import Callable, Mapping
from datetime import date
from typing import Final

from combwright.advice.bee_acts import Look
from combwright.advice.words.wording import chance_words, day_words


def day_or_next(day: date | None) -> str:
    """Write a day, or that it is the next visit."""
    return day_words(day) if day is not None else "the next visit"


LOOKS: Final[Mapping[str, Callable[[Look], str]]] = {
    "life": lambda a: (
        f"It may be dead ({chance_words(a.chance or 0.0)}): look at the entrance first."
    ),
    "health": lambda _: "Look for eggs, stores, room, and any sign of disease.",
    "queen cells": lambda _: "Look for queen cells.",
    "every frame": lambda a: (
        f"Swarm likely ({chance_words(a.chance or 0.0)} before the next "
        "visit): look on every frame, and have a nuc box ready."
    ),
    "eggs": lambda a: (
        f"{day_or_next(a.on)}: look for eggs; none: "
        + (
            {"test frame": "put in a test frame.", "unite": "unite it."}.get(
                a.if_none or "", "test frame, or unite with the nuc."
            )
        )
    ),
    "signs of a queen": lambda a: (
        "Look before 10 am or after 5 pm; no eggs, cell or virgin: put in a test frame."
        if a.early_or_late
        else "Look for queen cells, a virgin, or polished cells; do not add a queen yet."
    ),
    "cells on the test frame": lambda _: (
        "Add no frames today; look again in 4 to 5 days for cells on the marked one."
    ),
    "bees": lambda a: (
        f"{day_or_next(a.on)}: count the bees again; so few after so many may be a slip, and to "
        "unite cannot be undone."
    ),
    "box with eggs": lambda a: (
        f"{day_or_next(a.on)}: the box with fresh eggs has the queen. In the other "
        "leave one open cell, or give a mated queen."
    ),
    "colony": lambda a: f"Look again by {a.by:%a} {day_or_next(a.by)}: {a.due} after then.",
}
