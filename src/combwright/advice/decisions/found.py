"""What may be found at any colony, and what is done then: the same for all, said once."""

from dataclasses import dataclass
from datetime import date, timedelta
from typing import Final

from combwright.advice.decisions.food import Portion
from combwright.advice.decisions.swarm import nucleus_plan, swarmed_plan
from combwright.advice.words.wording import day_words

SWARM_SEASON: Final = (105, 225)  # days of the year between which queen cells may be found


@dataclass(frozen=True)
class Found:
    """A class of what may be found, and what is done then."""

    found: str
    do: tuple[str, ...]
    because: str
    portion: Portion | None = None


def at_any_colony(on: date) -> tuple[Found, ...]:
    """Give the branches that are the same at every colony on a day."""
    return (no_eggs(), *(cells(on) if is_swarm_season(on) else ()), _signs())


def is_swarm_season(on: date) -> bool:
    """Tell whether queen cells may be found: from mid-April to mid-August."""
    return SWARM_SEASON[0] < on.timetuple().tm_yday < SWARM_SEASON[1]


def no_eggs() -> Found:
    """Give what is done where no eggs are found."""
    do = (
        "Look for queen cells, a virgin, or polished cells; do not add a queen yet.",
        "No queen cell: put in a frame with eggs from another healthy colony, marked.",
        "Add no frames today; look again in 4 to 5 days for cells on the marked one.",
    )
    because = (
        "Eggs stand for three days after they are laid; without any, she has laid none "
        "for at least that long."
    )
    return Found("no eggs", do, because)


def cells(on: date) -> tuple[Found, ...]:
    """Give what is done by the queen cells that are found, from harmless to late."""
    clock = "A cell is sealed 8 days after its egg is laid, and the swarm leaves about then."
    return (
        Found(
            "cups without anything in them",
            ("Do as planned, and look into them again at the next visit.",),
            "Bees build cups long before they mean to swarm, and often never do.",
        ),
        Found(
            "one to three cells on the face of a comb",
            ("They replace their queen: leave cells and queen alone.",),
            "Swarm cells are many, and hang at the edges of the combs.",
        ),
        Found(
            "charged cells under seven frames of bees",
            ("Leave them and look again in 4 days.",),
            "So small a colony seldom swarms.",
        ),
        charged(on),
        _charged_without_finding_her(on),
        Found(
            "sealed cells, few bees, no eggs and no queen",
            swarmed_plan(on),
            "The old queen leaves with the swarm; eggs are gone three days after her.",
        ),
        Found(
            "sealed cells, and eggs or the queen",
            ("The swarm goes with the next fine day: do today as for charged cells.",),
            clock,
        ),
    )


def charged(on: date) -> Found:
    """Give the nucleus method, for charged cells where the queen is found."""
    return Found(
        "charged cells (a larva in jelly), and the queen found",
        nucleus_plan(on),
        "A cell is sealed 8 days after its egg is laid, and the swarm leaves about then.",
    )


def _charged_without_finding_her(on: date) -> Found:
    """Divide without finding the queen; common practice, no source."""
    look = on + timedelta(days=4)
    return Found(
        "charged cells, eggs, but the queen not found",
        (
            "Share eggs, brood, stores and bees with a box beside it; knock down every cell.",
            (
                f"{day_words(look)}: the box with fresh eggs has the queen. In the other leave one "
                "open cell, or give a mated queen."
            ),
        ),
        "Four days later only the queen's box has eggs, and only the other one new cells.",
    )


def from_outside() -> tuple[Found, ...]:
    """Give what is told at the entrance of a colony that waits for its queen; common practice."""
    because = "Bees with the hope of a queen are calm and fetch pollen for the brood to come."
    return (
        Found("calm bees that carry pollen in", ("Leave it shut, as planned.",), because),
        Found(
            "bees that run about the entrance, or no pollen on a fine day",
            ("Look before 10 or after 17 o'clock; no eggs, cell or virgin: put in a test frame.",),
            because,
        ),
    )


def _signs() -> Found:
    return Found(
        "sunken, discoloured or ropy brood, or a pest new to you",
        (
            "Stop, close the hive, move nothing in or out of this yard.",
            "Report it to the bee inspectors of your country, and wash hands and tools.",
        ),
        "Foulbroods and some pests are notifiable; only the inspector can tell.",
    )
