"""Who gives what to whom on a round: one line with two names in place of “can give”, “can take”.

Health first: nothing leaves or enters a colony that is to be left shut, and nothing leaves its yard
for another while a colony of its own could take it.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Final, Literal

import numpy as np
from scipy.optimize import linear_sum_assignment

from combwright.advice.actions import Action, of_kind
from combwright.advice.bee_acts import Give, MoveNothing, TakeIn, Uniting
from combwright.advice.kit_acts import Frames
from combwright.advice.words.action_words import words
from combwright.planning.sheet import ColonySheet, Handed, RoundSheet, Stop
from combwright.terms.data_files import parameter

OTHER_YARD: Final = parameter("planning/planning", "other_yard").value
JOINED: Final = {"weak", "queenless", "drone layer"}
What = Literal["frame of sealed brood", "drawn frame", "colony"]


@dataclass(frozen=True)
class _Hand:
    """A colony's one frame, or itself, given or wanted."""

    sheet: ColonySheet
    action: Action


def matched(sheet: RoundSheet) -> RoundSheet:
    """Match donors and receivers; the sheets of both and the load list then say the same."""
    open_ones = [each for each in sheet.colonies if not of_kind(each.actions, MoveNothing)]
    handed = [
        *_pairs("frame of sealed brood", _giving(open_ones), _taking(open_ones)),
        *_pairs("drawn frame", _combs(open_ones, out=True), _combs(open_ones, out=False)),
        *_pairs("colony", _joining(open_ones), _receiving(open_ones)),
    ]
    colonies = [_told(each, handed) for each in sheet.colonies]
    load = [_loaded(stop, handed) for stop in sheet.load]
    return sheet.model_copy(update={"handed": handed, "colonies": colonies, "load": load})


def _giving(colonies: Iterable[ColonySheet]) -> list[_Hand]:
    return [
        _Hand(each, act)
        for each in colonies
        for act in of_kind(each.actions, Give)
        for _ in range(act.frames_of_brood)
    ]


def _taking(colonies: Iterable[ColonySheet]) -> list[_Hand]:
    return [
        _Hand(each, act)
        for each in colonies
        for act in of_kind(each.actions, TakeIn)
        for _ in range(act.frames_of_brood)
    ]


def _combs(colonies: Iterable[ColonySheet], *, out: bool) -> list[_Hand]:
    """Give the drawn frames that are taken out, or asked for."""
    return [
        _Hand(each, act)
        for each in colonies
        for act in of_kind(each.actions, Frames)
        if act.comb == "drawn" and (act.more < 0) == out
        for _ in range(abs(act.more))
    ]


def _joining(colonies: Iterable[ColonySheet]) -> list[_Hand]:
    return [
        _Hand(each, act)
        for each in colonies
        for act in of_kind(each.actions, Uniting)
        if act.why in JOINED
    ]


def _receiving(colonies: Iterable[ColonySheet]) -> list[_Hand]:
    """Give the colonies that keep their queen: none that is united itself, or asked about."""
    return [
        _Hand(each, each.actions[0])
        for each in colonies
        if each.actions and not each.questions and not of_kind(each.actions, Uniting)
    ]


def _pairs(what: What, givers: Sequence[_Hand], takers: Sequence[_Hand]) -> list[Handed]:
    """Pair them so that the way between is shortest in all; frames of one pair are counted up."""
    if not givers or not takers:
        return []
    far = np.array([[_way(one.sheet, other.sheet) for other in takers] for one in givers])
    rows, columns = linear_sum_assignment(far)
    found: dict[tuple[str, str], Handed] = {}
    for row, column in zip(rows.tolist(), columns.tolist(), strict=True):
        giver, taker = givers[row].sheet, takers[column].sheet
        crosses = giver.yard != taker.yard
        if giver.colony == taker.colony or (crosses and what == "colony"):
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


def _way(giver: ColonySheet, taker: ColonySheet) -> float:
    """Count the hives walked past; another yard is far."""
    if giver.colony == taker.colony:
        return OTHER_YARD * OTHER_YARD
    return abs(giver.order - taker.order) + OTHER_YARD * (giver.yard != taker.yard)


def _told(sheet: ColonySheet, handed: Sequence[Handed]) -> ColonySheet:
    """Put the names into a colony's jobs."""
    said = [each.to_giver for each in handed if each.giver == sheet.colony]
    said += [each.to_taker for each in handed if each.taker == sheet.colony]
    if not said:
        return sheet
    # what had no name is now said with two
    matched_takes = any(
        each.taker == sheet.colony and each.what == "frame of sealed brood" for each in handed
    )
    unnamed = {words(act) for act in of_kind(sheet.actions, TakeIn) if matched_takes}
    jobs = [job for job in sheet.jobs if job not in unnamed]
    return sheet.model_copy(update={"jobs": [*jobs, *said]})


def _loaded(stop: Stop, handed: Sequence[Handed]) -> Stop:
    """Say what goes from one yard to another."""
    carried = [
        f"a closed box for {each.counted} from {each.giver} to {each.taker} at {each.taker_yard}"
        for each in handed
        if each.giver_yard == stop.yard != each.taker_yard
    ]
    return stop.model_copy(update={"items": [*stop.items, *carried]}) if carried else stop
