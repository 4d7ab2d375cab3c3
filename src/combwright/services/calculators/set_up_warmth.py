"""What a set-up loses, and what a board, a cushion or an open top changes."""

import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from itertools import product
from math import ceil
from typing import Any

from pydantic_core import to_json

from combwright.kit.catalogue import Catalogue, catalogue
from combwright.kit.fits import misfits, refuse_impossible
from combwright.kit.items import Hive
from combwright.science.heat.burnt_food import SUGAR_KJ_PER_G, bees_per_conductance, food_g_per_day
from combwright.simulation.enclosure import loss, stack_geometry
from combwright.simulation.enclosure.stack_geometry import Assumptions
from combwright.terms.errors import OutOfRangeError
from combwright.terms.ranges import within
from combwright.terms.set_up import SetUp, set_up_of
from combwright.terms.sugar import SYRUP_SUGAR
from combwright.terms.temperatures import celsius

NOTICEABLE = 0.01  # of the heat; less is no difference
BEES_PER_KG = 8800  # read second-hand: 4000 to the pound, by how full they are


@dataclass(frozen=True, slots=True)
class Spread:
    """A value with the range it may well lie in."""

    low: float
    middle: float
    high: float

    def times(self, factor: float) -> "Spread":
        """Give the spread in another unit."""
        return Spread(self.low * factor, self.middle * factor, self.high * factor)

    def without_waste(self) -> "Spread":
        """Give the spread with nothing below zero."""
        return Spread(max(0.0, self.low), max(0.0, self.middle), max(0.0, self.high))


@dataclass(frozen=True, slots=True)
class SetUpChange:
    """Another way for the same nest to stand, and what it saves; less than nothing is a loss."""

    instead: str
    set_up: SetUp
    saves_w: Spread
    saves_sugar_g_per_day: Spread
    saves_syrup_g_per_day: Spread


@dataclass(frozen=True, slots=True)
class Warmth:
    """What a set-up loses, and what changes it."""

    hive: str
    set_up: SetUp
    frames_of_bees: float
    nest_c: float
    outside_c: float
    loss_w_per_k: Spread
    heat_w: Spread
    sugar_g_per_day: Spread
    syrup_g_per_day: Spread
    parts_w_per_k: Mapping[str, float]
    bees_kg_k_per_w: float
    changes: tuple[SetUpChange, ...]
    how_sure: tuple[str, ...]

    def as_json(self) -> dict[str, Any]:
        """Give everything as plain data, rounded to digits that mean something."""
        plain: dict[str, Any] = json.loads(
            to_json(self), parse_float=lambda text: float(f"{float(text):.3g}")
        )
        return plain


def warmth(
    hive_key: str,
    frames_of_bees: float,
    *,
    kit: Catalogue | None = None,
    nest_c: float = 32.0,
    outside_c: float = 5.0,
    wind_m_s: float = 0.0,
    **standing: object,
) -> Warmth:
    """Say what a set-up loses and what a change to it saves.

    ``nest_c`` holds at the boundary of the nest: about 32 with brood, 10 to 14 for a winter
    cluster. ``standing`` is the rest of the set-up, as the fields of ``SetUp``; frames are those
    covered, rounded up, unless given.

    Examples
    --------
    >>> told = warmth("national timber", 7, outside_c=5)
    >>> [change.saves_w.middle > 0 for change in told.changes[:2]]
    [True, True]

    """
    hive = (kit or catalogue()).hive(hive_key)
    bees = float(within(frames_of_bees, 0.5, 36, "Frames of bees"))
    nest = float(celsius(nest_c, "The nest", 5, 38))
    outside = float(celsius(outside_c, "The outside", -30, 38))
    set_up = _set_up(hive, {"frames": ceil(bees), **standing, "hive": hive.key})
    _must_fit(hive, set_up, bees)
    difference = max(0.0, nest - outside)
    here = _Nest(hive, bees, wind_m_s)
    loss = here.loss(set_up)
    heat = loss.times(difference)
    losses = here.losses(set_up)
    changes = tuple(
        _change(words, other, here.saving(losses, other).times(difference))
        for words, other in _others(hive, set_up)
    )
    return Warmth(
        hive=hive.name,
        set_up=set_up,
        frames_of_bees=bees,
        nest_c=nest,
        outside_c=outside,
        loss_w_per_k=loss,
        heat_w=heat,
        sugar_g_per_day=_sugar(heat),
        syrup_g_per_day=_sugar(heat).times(1 / SYRUP_SUGAR),
        parts_w_per_k=here.parts(set_up),
        bees_kg_k_per_w=float(
            bees_per_conductance(bees * hive.frame.bees_full_cover / BEES_PER_KG, loss.middle)
        ),
        changes=changes,
        how_sure=tuple(_how_sure(set_up, changes, heat.middle)),
    )


@dataclass(frozen=True, slots=True)
class _Nest:
    """One nest, asked in many set-ups."""

    hive: Hive
    bees: float
    wind_m_s: float

    def exact(self, set_up: SetUp, assumptions: Assumptions) -> float:
        return sum(self.parts(set_up, assumptions).values())

    def loss(self, set_up: SetUp) -> Spread:
        middle = self.exact(set_up, Assumptions())
        spread = loss.PUBLISHED_SPREAD
        return Spread(middle * spread.low, middle, middle * spread.high)

    def losses(self, set_up: SetUp) -> list[float]:
        """Give the loss as assumed, then at every corner of what may be assumed."""
        return [self.exact(set_up, assumptions) for assumptions in _assumed()]

    def saving(self, losses: list[float], other: SetUp) -> Spread:
        """Widest saving over what is assumed, and over what is published of whole hives."""
        saved = [here - there for here, there in zip(losses, self.losses(other), strict=True)]
        spread = loss.PUBLISHED_SPREAD
        scaled = [s * share for s in saved for share in (spread.low, spread.high)]
        return Spread(min(scaled), saved[0], max(scaled))

    def parts(self, set_up: SetUp, assumptions: Assumptions | None = None) -> dict[str, float]:
        return loss.nest_parts_w_per_k(
            self.hive, set_up, self.bees, wind_m_s=self.wind_m_s, assumptions=assumptions
        )


def _assumed() -> list[Assumptions]:
    """Give the assumptions themselves, then every corner of their ranges."""
    judged = (
        stack_geometry.BEE_WAY_OPEN,
        stack_geometry.BOARD_SEAL,
        stack_geometry.COMB_RESISTANCE,
        stack_geometry.VENT_WARMTH,
    )
    corners = product(*((each.low, each.high) for each in judged))
    return [Assumptions(), *(Assumptions(*corner) for corner in corners)]


def _others(hive: Hive, set_up: SetUp) -> Iterable[tuple[str, SetUp]]:
    """Give the changes worth naming that the box has room for."""
    boards = {0: "no dummy board", 1: "one dummy board", 2: "a dummy board on each side"}
    for number in (1, 2, 0):
        other = set_up.model_copy(update={"dummy_boards": number})
        if number != set_up.dummy_boards and not list(misfits(hive, other)):
            yield boards[number], other
    covers = {
        "crown board": "a closed crown board",
        "cushion": "an insulating cushion",
        "vented": "a vented top",
    }
    for cover, words in covers.items():
        if cover != set_up.cover:
            yield words, set_up.model_copy(update={"cover": cover})
    if set_up.tray_open_mm and hive.floor == "mesh":
        yield "the tray closed", set_up.model_copy(update={"tray_open_mm": 0})
    if set_up.frames < hive.frames:
        full = {"frames": hive.frames, "dummy_boards": 0}
        yield f"a full box of {hive.frames} drawn frames", set_up.model_copy(update=full)


def _change(words: str, set_up: SetUp, saves: Spread) -> SetUpChange:
    sugar = _sugar_signed(saves)
    return SetUpChange(words, set_up, saves, sugar, sugar.times(1 / SYRUP_SUGAR))


def _sugar(heat: Spread) -> Spread:
    return _sugar_signed(heat.without_waste())


def _sugar_signed(heat: Spread) -> Spread:
    return heat.times(float(food_g_per_day(1.0, SUGAR_KJ_PER_G.value)))


def _how_sure(set_up: SetUp, changes: tuple[SetUpChange, ...], heat_w: float) -> Iterable[str]:
    yield (
        "Published figures for whole wooden hives run from about 0.8 to over 2.5 W/K, so take the "
        "ranges, not the middle; the order of set-ups is surer than any one figure."
    )
    yield (
        "How freely air moves through the bee space over the combs is judged, not measured "
        "(Mitchell 2024: it can add up to 70 %); bees that cover every frame close it."
    )
    yield (
        "The heat is what the nest's boundary loses. Bees ripen, cluster and breed beside it; "
        "studies of insulation and winter food disagree, so no saving is promised."
    )
    saved = {change.set_up.dummy_boards: change.saves_w.middle for change in changes[:2]}
    if set_up.dummy_boards == 0 and {1, 2} <= set(saved):
        yield f"Here two boards with the nest in the middle are {_than(saved, heat_w)} one."


def _than(saved: Mapping[int, float], heat_w: float) -> str:
    gained = saved[2] - saved[1]
    if abs(gained) < NOTICEABLE * heat_w:
        return "about as warm as"
    return "warmer than" if gained > 0 else "no warmer than"


def _set_up(hive: Hive, fields: Mapping[str, object]) -> SetUp:
    if hive.floor == "solid":
        fields = {"tray_open_mm": 0, **fields}
    return set_up_of(**fields)


def _must_fit(hive: Hive, set_up: SetUp, bees: float) -> None:
    if bees > set_up.frames:
        raise OutOfRangeError(
            f"Bees cannot cover {bees:g} of {set_up.frames} frames.",
            remedy="Give the frames that stand in the box with --frames.",
        )
    refuse_impossible(hive, set_up)
