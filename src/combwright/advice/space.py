"""Room and warmth: frames, dummy boards, super, tray and entrance."""

from dataclasses import dataclass
from typing import Any, Final

import numpy as np

from combwright.advice.decision import Decision
from combwright.advice.situation import Situation, band
from combwright.advice.trial import Change, Tried, try_all
from combwright.advice.wording import chance_words, count_words, day_words
from combwright.kit.geometry import frames_that_fit
from combwright.simulation import observe
from combwright.simulation.actions import arrange, feed
from combwright.simulation.enclosure import slab_loss
from combwright.terms.set_up import SetUp

FRAME_COST: Final = 0.015  # share of bees and brood to be gained by opening up a frame; judgement
CROWDED: Final = 0.3  # worth lost of bees that find no comb to cover: idle, and swarming; judgement
SUPER_FRAMES: Final = 5.0  # frames of bees that a super takes up; judgement
HONEY_BEES: Final = 150.0  # bees that a kilogram of honey is worth here; judgement
FULL_SHARE: Final = 0.85  # of the frames covered, from which a box counts as full of bees
HOT_C: Final = 24.0  # mean high from which the tray is drawn out further


@dataclass(frozen=True)
class Space:
    """A set-up with its reason and the runner-up."""

    set_up: SetUp
    decision: Decision
    chances: dict[str, float]


def space(situation: Situation) -> Space:
    """Choose frames, boards and supers, then tray and entrance.

    Candidates are tried with a feed that replaces what the colony uses, so that room and warmth
    are not confused with hunger.
    """
    now = situation.standing.set_up
    candidates = _candidates(situation, now)
    tried = try_all(situation, [_arranged(situation, each) for each in candidates])
    excess = [_excess(situation, each) for each in tried]
    frame_cost = FRAME_COST * tried[0].bees
    worth = [
        _worth(each, candidate, now, frame_cost)
        for each, candidate in zip(tried, candidates, strict=True)
    ]
    best = min(range(len(candidates)), key=lambda i: (round(excess[i], 2), -worth[i]))
    chosen = candidates[best]
    chosen = _ventilated(situation, chosen)
    inputs = _inputs(situation, tried[0], tried[best], chosen)
    return Space(
        chosen,
        Decision(
            "room and warmth",
            _jobs(situation, now, chosen),
            _because(situation, now, chosen, inputs),
            inputs,
            _runner_up(candidates, worth, excess, best),
        ),
        tried[best].chances,
    )


def left_alone(situation: Situation) -> Space:
    """Give the set-up as it stands, for a colony that is not opened."""
    because = ("It is not opened today, so the set-up stays as it is.",)
    decision = Decision("room and warmth", (), because)
    return Space(situation.standing.set_up, decision, {})


def _runner_up(candidates: list[SetUp], worth: list[float], excess: list[float], best: int) -> str:
    """Name the second choice and by how much it lost."""
    others = [i for i in range(len(candidates)) if i != best]
    if not others:
        return ""
    second = min(others, key=lambda i: (round(excess[i], 2), -worth[i]))
    kept = candidates[second]
    supers = f", {kept.supers} supers" if kept.supers else ""
    less = f"{round(worth[best] - worth[second], -1):.0f} bees' worth less"
    harm = excess[second] > excess[best] + 0.005
    why = "more than the limits allow" if harm else less
    return f"{kept.frames} frames, {kept.dummy_boards} boards{supers}: {why}"


def _candidates(situation: Situation, now: SetUp) -> list[SetUp]:
    """Give the set-up as it is, and what could sensibly be done to it today."""
    hive = situation.standing.hive
    pitch = situation.pitch_mm or hive.pitch_mm
    found = [now]
    covered = float(np.quantile(observe.frames_of_bees(situation.colonies), 0.9))
    for more in (-2, -1, 1, 2):
        frames = now.frames + more
        if frames < 2 or (more < 0 and frames < covered + 0.5):
            continue
        boards = _boards(hive, frames, pitch)
        boxes = max(1, -(-now.frames // hive.capacity))
        if boards is None or (more > 0 and frames > hive.frames * boxes):
            continue
        sheets = 0 if situation.drawn_frames_to_hand else max(0, more)
        found.append(
            now.model_copy(update={"frames": frames, "dummy_boards": boards, "foundation": sheets})
        )
    if now.dummy_boards < 2 and now.frames < hive.frames - 1:
        boards = _boards(hive, now.frames, pitch)
        if boards is not None and boards > now.dummy_boards:
            found.append(now.model_copy(update={"dummy_boards": boards}))
    if hive.honey_super is not None and now.supers < 4:
        on = {"supers": now.supers + 1, "excluder": True}
        found += [
            each.model_copy(update=on) for each in list(found) if each.frames >= hive.frames - 1
        ]
    return [each.model_copy(update={"foundation": each.foundation}) for each in found]


def _boards(hive: Any, frames: int, pitch: float) -> int | None:
    """Give the dummy boards that go in beside so many frames: two while there is room."""
    for boards in (2, 1, 0):
        if frames_that_fit(hive, pitch, boards) >= frames:
            wide_open = frames <= hive.frames - 2
            return boards if wide_open or boards < 2 else 1
    return None


def _arranged(situation: Situation, set_up: SetUp) -> Change:
    use_g = float(np.median(situation.colonies["used"])) * situation.horizon

    def change(colonies: Any) -> None:
        arrange(colonies, situation.standing.hive, set_up)
        if set_up.supers == 0:
            feed(colonies, use_g * 0.8 / 0.6, 0.6, warmer_k=8.0)

    return change


def _excess(situation: Situation, tried: Tried) -> float:
    chances = {name: tried.chances[name] for name in ("no room", "chilled")}
    return situation.limits.excess(chances)


def _worth(tried: Tried, candidate: SetUp, now: SetUp, frame_cost: float) -> float:
    changed = abs(candidate.frames - now.frames) + 2.0 * abs(candidate.supers - now.supers)
    swarm = 4000.0 * tried.chances["swarm"]
    idle = CROWDED * _beyond_frames(tried.colonies, candidate)
    return tried.bees + HONEY_BEES * tried.honey_kg - frame_cost * changed - swarm - idle


def _beyond_frames(colonies: Any, set_up: SetUp) -> float:
    """Count the bees that find no comb to cover."""
    places = set_up.frames + SUPER_FRAMES * set_up.supers
    beyond = np.maximum(observe.frames_of_bees(colonies) - places, 0.0)
    return float(np.mean(beyond * colonies["bees_per_frame"]))


def _ventilated(situation: Situation, set_up: SetUp) -> SetUp:
    """Set tray and entrance by season, warmth and strength (common practice, no source)."""
    month = situation.on.month
    high = float(np.mean(situation.conditions[:, : situation.days, 2]))
    bees = float(np.median(observe.frames_of_bees(situation.colonies)))
    if month in (11, 12, 1, 2):
        tray = 460
    elif high >= HOT_C:
        tray = 230
    else:
        tray = 75 if high < 12.0 or bees < 4.0 else 100 if high < 18.0 else 125
    entrance = 30 if bees < 4.0 else 60 if bees < 7.0 else 120 if bees < 10.0 else 250
    if situation.standing.hive.floor == "solid":
        tray = 0
    return set_up.model_copy(update={"tray_open_mm": tray, "entrance_mm": entrance})


def _inputs(situation: Situation, now: Tried, chosen: Tried, set_up: SetUp) -> dict[str, float]:
    bees = band(observe.frames_of_bees(situation.colonies))
    before = slab_loss(situation.standing.hive, situation.standing.set_up)
    after = slab_loss(situation.standing.hive, set_up)
    covered = bees[1]
    watt_before = before.base_w_per_k + before.per_frame_w_per_k * covered
    watt_after = after.base_w_per_k + after.per_frame_w_per_k * covered
    return {
        "frames_of_bees_low": bees[0],
        "frames_of_bees": bees[1],
        "frames_of_bees_high": bees[2],
        "no_room_as_it_is": now.chances["no room"],
        "no_room": chosen.chances["no room"],
        "chilled": chosen.chances["chilled"],
        "swarm_as_it_is": now.chances["swarm"],
        "swarm": chosen.chances["swarm"],
        "bees_gained": chosen.bees - now.bees,
        "loss_w_per_k_as_it_is": watt_before,
        "loss_w_per_k": watt_after,
        "mean_high_c": float(np.mean(situation.conditions[:, : situation.days, 2])),
    }


def _jobs(situation: Situation, now: SetUp, chosen: SetUp) -> tuple[str, ...]:
    jobs = []
    more = chosen.frames - now.frames
    kind = "frame{s} of foundation" if chosen.foundation else "drawn frame{s}"
    if more > 0:
        jobs.append(f"Add {_many(more, kind)} at the edge of the nest{_in_turn(more)}.")
    if more < 0:
        jobs.append(f"Take out {-more} empty frame{_s(-more)} from the edge.")
    boards = chosen.dummy_boards - now.dummy_boards
    if boards:
        verb = "Put in" if boards > 0 else "Take out"
        jobs.append(f"{verb} {abs(boards)} dummy board{_s(abs(boards))}.")
    if chosen.supers > now.supers:
        jobs.append("Put on a super over the excluder.")
    if chosen.tray_open_mm != now.tray_open_mm and situation.standing.hive.floor == "mesh":
        out = chosen.tray_open_mm >= 400
        jobs.append("Take the tray out." if out else f"Open the tray by {chosen.tray_open_mm} mm.")
    if chosen.entrance_mm != now.entrance_mm:
        jobs.append(f"Set the entrance to {chosen.entrance_mm} mm.")
    return tuple(jobs)


def _many(count: int, kind: str) -> str:
    return f"{'a' if count == 1 else count} {kind.format(s=_s(count))}"


def _in_turn(count: int) -> str:
    return ", one a side" if count > 1 else ""


def _s(count: int) -> str:
    return "" if count == 1 else "s"


def _because(
    situation: Situation, now: SetUp, chosen: SetUp, inputs: dict[str, float]
) -> tuple[str, ...]:
    lines = []
    bees = (
        f"{inputs['frames_of_bees']:.1f} frames of bees "
        f"({inputs['frames_of_bees_low']:.1f} to {inputs['frames_of_bees_high']:.1f})"
    )
    short_now, short = inputs["no_room_as_it_is"], inputs["no_room"]
    if chosen.frames > now.frames:
        lines.append(
            f"{bees} on {now.frames} frames: chance that the queen runs short of room for two "
            f"days {chance_words(short_now)}; with {chosen.frames} frames {chance_words(short)}, "
            f"and about {count_words(max(0.0, inputs['bees_gained']))} more bees and brood."
        )
    elif chosen.frames < now.frames or chosen.dummy_boards > now.dummy_boards:
        lines.append(
            f"{bees}: closing up cuts the loss of the nest from "
            f"{inputs['loss_w_per_k_as_it_is']:.2f} to {inputs['loss_w_per_k']:.2f} W/K (published "
            "hive figures differ threefold) and leaves room enough."
        )
    else:
        lines.append(
            f"{bees} on {now.frames} frames: chance that the queen runs short of room before "
            f"{day_words(situation.next_visit)} {chance_words(short)}."
        )
    if chosen.supers > now.supers:
        lines.append(
            f"The box fills: chance of a swarm before then "
            f"{chance_words(inputs['swarm_as_it_is'])} as it is, "
            f"{chance_words(inputs['swarm'])} with a super."
        )
    lines += _air_words(now, chosen, inputs)
    return tuple(lines)


def _air_words(now: SetUp, chosen: SetUp, inputs: dict[str, float]) -> list[str]:
    """Give the reason for tray and entrance where they are set anew."""
    words = []
    if chosen.entrance_mm != now.entrance_mm:
        bees = inputs["frames_of_bees"]
        words.append(f"The entrance is what {bees:.0f} frames of bees can guard.")
    if chosen.tray_open_mm != now.tray_open_mm:
        words.append(
            f"Days of about {inputs['mean_high_c']:.0f} °C set the tray: air goes through the open "
            "floor under a closed top."
        )
    return words
