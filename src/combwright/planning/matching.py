"""Who gives what to whom on a round: one line with two names in place of “can give”, “can take”.

Health first: nothing leaves or enters a colony that is to be left shut, and nothing leaves its yard
for another while a colony of its own could take it. A comb goes where its frame fits alone.
"""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Final, Literal

import numpy as np
from scipy.optimize import linear_sum_assignment

from combwright.advice.actions import of_kind
from combwright.advice.bee_acts import Divide, Give, MoveNothing, Requeen, TakeIn, Uniting
from combwright.advice.kit_acts import Act, Feeding, Frames, StoresOut
from combwright.advice.words.action_words import words
from combwright.planning.sheet import ColonySheet, Handed, gained
from combwright.terms.data_files import parameter

OTHER_YARD: Final = parameter("planning/planning", "other_yard").value
NEVER: Final = OTHER_YARD * OTHER_YARD
JOINED: Final = {"weak", "queenless", "drone layer"}
What = Literal["frame of sealed brood", "drawn frame", "comb of stores", "colony", "mated queen"]


@dataclass(frozen=True)
class SpareQueen:
    """A mated queen with a name that heads no colony, and the colony that raised her cell."""

    queen: str
    raised_in: str | None = None


def matched(
    colonies: Sequence[ColonySheet],
    frames: Mapping[str, object],
    queens: Sequence[SpareQueen] = (),
) -> list[Handed]:
    """Match donors and receivers; ``frames`` gives the size of frame that each takes."""
    shut = {each.colony for each in colonies if of_kind(each.actions, MoveNothing)}
    open_ones = [each for each in colonies if each.colony not in shut]

    def hands(kind: type[Any], count: Callable[[Any], int]) -> list[ColonySheet]:
        return [
            each for each in open_ones for act in of_kind(each.actions, kind)
            for _ in range(count(act))
        ]  # fmt: skip

    brood = hands(Give, _brood), hands(TakeIn, _brood)
    drawn = hands(Frames, lambda act: -_drawn(act)), hands(Frames, _drawn)
    stores = hands(StoresOut, lambda act: act.combs), hands(Feeding, lambda act: act.grams > 0)
    return [
        *_pairs("frame of sealed brood", *brood, frames),
        *_pairs("drawn frame", *drawn, frames),
        *_pairs("comb of stores", *stores, frames),
        *_pairs("colony", _joining(open_ones), _receiving(open_ones), frames),
        *_queens(open_ones, [each for each in queens if each.raised_in not in shut]),
    ]


def told(colonies: Iterable[ColonySheet], handed: Sequence[Handed]) -> list[ColonySheet]:
    """Put the names into the jobs of both."""
    return [_told(each, handed) for each in colonies]


def _brood(act: Give | TakeIn) -> int:
    return act.frames_of_brood


def _drawn(act: Frames) -> int:
    """Count the drawn frames that are asked for; below 0 those that are taken out."""
    return act.more if act.comb == "drawn" else 0


def _joining(colonies: Iterable[ColonySheet]) -> list[ColonySheet]:
    return [
        each
        for each in colonies
        if any(act.why in JOINED for act in of_kind(each.actions, Uniting))
    ]


def _receiving(colonies: Iterable[ColonySheet]) -> list[ColonySheet]:
    """Give the colonies that keep their queen: none that is united itself, or asked about."""
    return [
        each
        for each in colonies
        if each.actions and not each.questions and not of_kind(each.actions, Uniting)
    ]


def _queens(colonies: Sequence[ColonySheet], spare: Sequence[SpareQueen]) -> list[Handed]:
    """Give each spare queen to the colony to which a mated one is worth most."""
    waiting = sorted((each for each in colonies if asks_for_queen(each)), key=gained, reverse=True)
    return [
        Handed(
            what="mated queen", count=1, giver=queen.queen, giver_yard="",
            taker=each.colony, taker_yard=each.yard,
        )
        for queen, each in zip(spare, waiting, strict=False)
    ]  # fmt: skip


def asks_for_queen(sheet: ColonySheet) -> bool:
    """Tell whether a mated queen is wanted: in place of the old, for a division or for a nuc."""

    def asks(act: Act) -> bool:
        match act:
            case Requeen():
                return True
            case Divide():
                return act.successor == "mated queen" and not act.likely
            case Give():
                return act.queen == "mated queen"
        return False

    return any(asks(act) for act in sheet.actions)


def _pairs(
    what: What,
    givers: Sequence[ColonySheet],
    takers: Sequence[ColonySheet],
    frames: Mapping[str, object],
) -> list[Handed]:
    """Pair them so that the way between is shortest in all; frames of one pair are counted up."""
    if not givers or not takers:
        return []
    fits = frames if what != "colony" else {}

    def way(giver: ColonySheet, taker: ColonySheet) -> float:
        """Count the hives walked past; another yard is far."""
        crosses = giver.yard != taker.yard
        if giver.colony == taker.colony or fits.get(giver.colony) != fits.get(taker.colony):
            return NEVER
        if crosses and what == "colony":
            return NEVER
        return abs(giver.order - taker.order) + OTHER_YARD * crosses

    far = np.array([[way(one, other) for other in takers] for one in givers])
    found: dict[tuple[str, str], Handed] = {}
    rows, columns = (each.tolist() for each in linear_sum_assignment(far))
    for row, column in zip(rows, columns, strict=True):
        giver, taker = givers[row], takers[column]
        if far[row, column] == NEVER:
            continue
        before = found.get((giver.colony, taker.colony))
        found[giver.colony, taker.colony] = Handed(
            what=what,
            count=1 + (before.count if before else 0),
            giver=giver.colony,
            giver_yard=giver.yard,
            taker=taker.colony,
            taker_yard=taker.yard,
        )
    return list(found.values())


def _told(sheet: ColonySheet, handed: Sequence[Handed]) -> ColonySheet:
    """Put the names into a colony's jobs."""
    here = sheet.colony, sheet.yard
    said = [each.to_giver for each in handed if (each.giver, each.giver_yard) == here]
    takes = [each for each in handed if each.taker == sheet.colony]
    said += [each.to_taker for each in takes]
    if not said:
        return sheet
    # what had no name is now said with two
    is_matched = any(each.what == "frame of sealed brood" for each in takes)
    unnamed = {words(act) for act in of_kind(sheet.actions, TakeIn) if is_matched}
    jobs = [job for job in sheet.jobs if job not in unnamed]
    return sheet.model_copy(update={"jobs": [*jobs, *said]})
