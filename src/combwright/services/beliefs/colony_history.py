"""One colony: what was noted, what was believed on the way, and the weeks ahead."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Any, Final

from combwright.belief.following.causes import IN_WORDS
from combwright.belief.following.followed import Followed
from combwright.belief.scoring import surprise
from combwright.belief.weighing.counting import OTHER, in_frames
from combwright.belief.weighing.otherwise import gone_otherwise
from combwright.belief.worlds import WORLDS
from combwright.records.store.book_handle import Book
from combwright.services.beliefs.branching import Fork, Series, forked, series_of
from combwright.services.beliefs.work_done import WorkDone, work_done
from combwright.services.rounds.situations import AskedRound, Situations, situations_of
from combwright.simulation.columns import copied
from combwright.simulation.luck import luck
from combwright.simulation.run import run
from combwright.terms.errors import OutOfRangeError
from combwright.terms.streams import stream

SHOWN: Final = ("frames_of_bees", "frames_of_brood", "stores_kg", "room_cells", "mites")
TITLES: Final = {
    "frames_of_bees": ("Frames of bees", "frames"),
    "frames_of_brood": ("Frames of brood", "frames"),
    "stores_kg": ("Stores", "kg"),
    "room_cells": ("Room to lay", "cells"),
    "mites": ("Mites", "mites"),
}
MOST_WEEKS: Final = 12


Notes = Mapping[str, tuple[tuple[date, float], ...]]  # days and numbers, by what was counted


@dataclass(frozen=True)
class ColonyHistory:
    """A colony's past as it was believed, its notes, and what is expected of the weeks ahead.

    ``days`` are shared by all ``series``: past days with notes (as believed before the note, and
    the day after it) and the days ahead, which begin on ``on``; ahead they hold those members that
    take none of the ``forks``: a swarm, the colony's end. ``notes`` holds what the keeper counted,
    ``done`` what was done, ``chances`` the chance of each trouble that nobody noted, in words.
    """

    colony: str
    yard: str
    on: date
    days: tuple[date, ...]
    series: Mapping[str, Series]
    forks: tuple[Fork, ...]
    notes: Notes
    done: tuple[WorkDone, ...]
    questions: tuple[str, ...]
    notices: tuple[str, ...]
    chances: Mapping[str, float]


def colony_history(
    book: Book,
    colony: str,
    on: date,
    *,
    weeks_ahead: int = 4,
    members: int = 200,
    seed: int = 1,
) -> ColonyHistory:
    """Tell a colony's past, and the weeks ahead of a day whose notes are not yet taken in."""
    if not 1 <= weeks_ahead <= MOST_WEEKS:
        raise OutOfRangeError(
            f"{weeks_ahead} weeks ahead cannot be shown.", remedy=f"Give 1 to {MOST_WEEKS} weeks."
        )
    situations = situations_of(
        book, AskedRound(on, days=7 * weeks_ahead, members=members, seed=seed)
    )
    followed = situations.follow(colony)
    past, ahead = _past(situations, colony), _ahead(situations, followed, 7 * weeks_ahead)
    staying, forks = forked(ahead, SHOWN)
    lived = [*(each for _, each in past), *staying]
    belief = followed.belief
    return ColonyHistory(
        colony=colony,
        yard=followed.yard,
        on=on,
        days=tuple(day for day, _ in (*past, *ahead)),
        series={name: series_of(name, lived) for name in SHOWN},
        forks=forks,
        notes=in_frames_too(followed.notes),
        done=work_done(book.now().of(colony), on),
        questions=belief.questions,
        notices=followed.notices,
        chances={IN_WORDS[name]: chance for name, chance in belief.chances.items()},
    )


def in_frames_too(notes: Notes) -> dict[str, tuple[tuple[date, float], ...]]:
    """Add to notes of frames what was counted as seams or combs, turned into frames."""
    found = dict(notes)
    for frames, other in OTHER.items():
        turned = [(on, in_frames(other, value)) for on, value in notes.get(other, ())]
        if turned:
            found[frames] = tuple(sorted([*found.get(frames, ()), *turned]))
    return found


def _past(situations: Situations, colony: str) -> list[tuple[date, Any]]:
    """Give the members before each day's notes and a day after them."""
    stages: dict[date, Any] = {}
    on = situations.asked.on
    for before, after in situations.replay.course(colony, on):
        stages.setdefault(before.belief.on, before.belief.colonies)
        stages[after.belief.on + timedelta(days=1)] = after.belief.colonies
    return [(day, stages[day]) for day in sorted(stages) if day < on]


def _ahead(situations: Situations, followed: Followed, days: int) -> list[tuple[date, Any]]:
    """Let the members live on day by day under sampled weather."""
    belief, on = followed.belief, situations.asked.on
    colonies = copied(belief.colonies)
    weather = situations.around.season(followed.yard, on, on + timedelta(days=days))
    chance = luck(situations.asked.seed, belief.colony, on, days, len(colonies))
    stages = [(on, copied(colonies))]
    for day in range(days):
        part = slice(day, day + 1)
        run(colonies, weather[belief.shared["year"], part], chance[:, part], worlds=WORLDS)
        rng = stream(situations.asked.seed, belief.colony, "otherwise", on.toordinal())
        members = gone_otherwise(colonies, day + 1.0, rng, wider=surprise(followed.scored))
        stages.append((on + timedelta(days=day + 1), members))
    return stages
