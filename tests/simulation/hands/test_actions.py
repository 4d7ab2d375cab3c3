"""What a keeper does keeps bees, sugar, comb and mites together, whatever is done, for years."""

from collections.abc import Callable
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.typing import NDArray
from tests.simulation import samples
from tests.simulation.reference.day import record

from combwright.evidence.simulated_colonies import even_days
from combwright.kit.catalogue import catalogue
from combwright.simulation import observe
from combwright.simulation.biology import Biology
from combwright.simulation.columns import CELL, COLUMNS, LAYING, QUEENLESS
from combwright.simulation.hands import actions
from combwright.simulation.hands.actions import QUEEN_EVENTS, treatment_courses
from combwright.simulation.hands.dividing import GoesWith, split, unite
from combwright.simulation.run import run
from combwright.terms.errors import ClashError
from combwright.terms.set_up import SetUp

NUC = catalogue().hive("nuc 6 polystyrene")
Colonies = NDArray[np.void]
Floats = NDArray[np.float64]
GOES_WITH: tuple[GoesWith, ...] = ("queen", "cell", "nothing", "mated queen")
SUBSTANCES = (*sorted(treatment_courses()), "drone brood removed")
SUGAR = ("ripe", "super_ripe", "unripe", "feeder")


def total(colonies: Colonies, *names: str) -> Floats:
    rows = [colonies[name].reshape(len(colonies), -1) for name in names]
    return np.asarray(np.concatenate(rows, axis=1).sum(axis=1))


def sugar(colonies: Colonies) -> Floats:
    return total(colonies, *SUGAR)


def whole(colonies: Colonies) -> None:
    """Nothing is negative, missing or endless, and shares are shares."""
    for column in COLUMNS:
        values = colonies[column.name]
        assert np.isfinite(values).all(), column.name
        assert (values >= -1e-9).all(), (column.name, float(values.min()))
    for name in ("hurt_nest", "hurt_winter", "syrup_share", "unmet"):
        assert (colonies[name] <= 1 + 1e-9).all(), name
    assert (colonies["super_syrup"] <= colonies["super_ripe"] + 1e-6).all()
    assert (observe.brood_cells(colonies) <= colonies["drawn"] * (1 + 1e-9) + 1e-6).all()


def stand(frames: int, foundation: int, boards: int, supers: int) -> SetUp:
    boards = min(boards, 2 if frames <= 11 else 0)
    return SetUp(
        brood_boxes=1 if frames <= 12 else 2,
        frames=frames,
        foundation=min(foundation, frames),
        dummy_boards=boards,
        supers=supers,
        excluder=supers > 0,
    )


def parted(colonies: Colonies, *, goes_with: GoesWith, bees: float, brood: float) -> None:
    new = split(
        colonies,
        NUC,
        SetUp(hive=NUC.key, frames=6, foundation=2),
        frames_of_bees=bees,
        frames_of_brood=brood,
        frames_of_stores=1.0,
        goes_with=goes_with,
    )
    whole(new)
    if goes_with == "nothing":
        unite(new, colonies)


Action = Callable[[Colonies], Any]
counts = st.integers
a_set_up = st.builds(stand, counts(1, 22), counts(0, 8), counts(0, 2), counts(0, 4))
some_action: st.SearchStrategy[Action] = st.one_of(
    a_set_up.map(lambda s: lambda c: actions.arrange(c, samples.TIMBER, s)),
    st.tuples(st.floats(0, 14000), st.floats(0.3, 0.9)).map(
        lambda f: lambda c: actions.feed(c, f[0], f[1], warmer_k=20.0)
    ),
    st.just(actions.empty_feeder),
    st.sampled_from(SUBSTANCES).map(lambda s: lambda c: actions.treat(c, s)),
    st.sampled_from(sorted(QUEEN_EVENTS)).map(lambda e: lambda c: actions.change_queen(c, e)),
    st.just(actions.cut_cells),
    st.floats(0, 60).map(lambda kg: lambda c: actions.harvest(c, kg)),
    st.tuples(
        st.sampled_from(GOES_WITH),
        st.floats(0, 12),
        st.floats(0, 12),
    ).map(lambda s: lambda c: parted(c, goes_with=s[0], bees=s[1], brood=s[2])),
)


@given(
    st.lists(st.tuples(counts(1, 60), some_action), min_size=1, max_size=14),
    counts(0, 2**32 - 1),
)
def test_whatever_is_done_for_years_nothing_is_lost_made_or_below_zero(
    doings: list[tuple[int, Action]], seed: int
) -> None:
    """Balances are checked inside the step; between the steps by ``whole``."""
    colonies = samples.usual(members=6, seed=seed % 1000)
    weather = samples.dublin()
    chance = samples.chance(seed, 6, 400)
    day = 0
    for wait, action in doings:
        stop = min(day + wait, 400)
        run(colonies, weather[:, day:stop], chance[:, day:stop])
        whole(colonies)
        action(colonies)
        whole(colonies)
        day = stop % 399


@given(samples.states(), samples.weather_of_days(30), samples.biologies(), counts(0, 2**32 - 1))
def test_any_colony_lives_through_any_month(
    colony: dict[str, Any], days: Floats, biology: Biology, seed: int
) -> None:
    """Whatever the numbers of the model, within their ranges."""
    one = record(colony)
    samples.fit_comb(one)
    run(one, days, samples.chance(seed, 1, 30), worlds=(biology,))
    whole(one)


@given(samples.weather_of_days(60), counts(0, 2**32 - 1), st.booleans())
def test_no_more_cells_are_filled_than_are_drawn(days: Floats, seed: int, fed: bool) -> None:
    """Food put in, brood laid and comb drawn never hold more than there is comb."""
    colonies = samples.usual(members=4, stores=20.0, seed=seed % 100)
    actions.arrange(colonies, samples.TIMBER, SetUp(frames=11, supers=2))
    if fed:
        actions.feed(colonies, 12000.0, 0.6)
    comb = colonies["drawn"] + colonies["super_drawn"]
    spare = np.maximum(0.0, observe.cells_held(colonies) - comb)
    for day in range(60):
        run(colonies, days[:, day : day + 1], samples.chance(seed + day, 4, 1))
        comb = colonies["drawn"] + colonies["super_drawn"]
        assert (observe.cells_held(colonies) <= comb + spare + 1e-6).all(), day


@given(st.floats(0, 11), st.floats(0, 11), st.floats(0, 5), counts(0, 500))
def test_a_split_shares_out_what_was_there(
    bees: float, brood: float, stores: float, seed: int
) -> None:
    parent = samples.usual(members=5, bees=9.0, brood=6.0, seed=seed)
    before = parent.copy()
    new = split(
        parent,
        NUC,
        SetUp(hive=NUC.key, frames=6),
        frames_of_bees=bees,
        frames_of_brood=brood,
        frames_of_stores=stores,
        goes_with="queen",
    )
    for of in (observe.adults, observe.brood, observe.mites, sugar):
        assert of(parent) + of(new) == pytest.approx(of(before))
    assert total(parent, "pollen") + total(new, "pollen") == pytest.approx(before["pollen"])
    assert (new["queen"] == LAYING).all()
    assert (parent["queen"] == QUEENLESS).all()


def test_a_split_with_the_queen_leaves_the_cells_to_the_parent() -> None:
    parent = samples.usual(members=3, bees=11.0, brood=8.0)
    parent["swarm_clock"] = 9.0
    new = split(
        parent,
        NUC,
        SetUp(hive=NUC.key, frames=6),
        frames_of_bees=2.0,
        frames_of_brood=1.0,
        frames_of_stores=1.0,
        goes_with="queen",
    )
    assert (parent["queen"] == CELL).all()
    assert (parent["queen_clock"] == 9.0).all()
    assert (new["queen"] == LAYING).all()


def test_bees_whose_swarm_cells_are_knocked_down_begin_anew() -> None:
    colonies = samples.usual(members=3)
    colonies["swarm_clock"] = (0.0, 2.0, 9.0)
    actions.cut_cells(colonies)
    assert (colonies["swarm_clock"] == 0.0).all()
    assert (colonies["queen"] == LAYING).all()


def test_a_colony_without_a_queen_loses_its_last_cell_and_raises_others_from_young_larvae() -> None:
    colonies = samples.usual(members=2, bees=9.0, brood=4.0)
    colonies["queen"], colonies["queen_clock"] = CELL, 12.0
    colonies["eggs"] = 0.0
    colonies["larvae"][0], colonies["sealed"][0] = 0.0, 0.0
    actions.cut_cells(colonies)
    assert (colonies["queen"] == QUEENLESS).all()
    run(colonies, even_days(3, day=150, mean_c=15.0, hours=4.0), samples.chance(1, 2, 3))
    assert colonies["queen"].tolist() == [QUEENLESS, CELL]


def test_uniting_joins_everything_and_leaves_nothing() -> None:
    going, into = samples.usual(members=4, seed=2), samples.usual(members=4, seed=3)
    actions.arrange(going, samples.TIMBER, SetUp(frames=11, supers=1))
    actions.feed(going, 2000.0, 0.6)
    going["super_ripe"] = 3000.0
    sums = (observe.adults, observe.brood, observe.mites, sugar)
    before = [of(going) + of(into) for of in sums]
    unite(going, into)
    for of, both in zip(sums, before, strict=True):
        assert of(into) == pytest.approx(both)
        assert of(going) == pytest.approx(0.0)


def test_honey_taken_is_honey_that_was_there() -> None:
    colonies = samples.usual(members=3)
    actions.arrange(colonies, samples.TIMBER, SetUp(frames=11, supers=1))
    colonies["super_ripe"], colonies["super_syrup"] = 4000.0, 400.0
    taken = actions.harvest(colonies, 2.0)
    assert taken == pytest.approx(2.0)
    assert colonies["super_ripe"] == pytest.approx(4000.0 - 1600.0)
    assert colonies["super_syrup"] == pytest.approx(400.0 * 0.6)


def test_frames_taken_out_take_empty_comb_first() -> None:
    colonies = samples.usual(members=5, bees=5.0, brood=2.0, stores=5.0)
    before = colonies.copy()
    actions.arrange(colonies, samples.TIMBER, SetUp(frames=7))
    assert observe.brood(colonies) == pytest.approx(observe.brood(before))
    assert colonies["ripe"] == pytest.approx(before["ripe"])
    actions.arrange(colonies, samples.TIMBER, SetUp(frames=1))
    assert (observe.cells_held(colonies) <= 5000.0 * (1 + 1e-9)).all()


@pytest.mark.parametrize(
    ("hive", "set_up", "word"),
    [
        ("national timber", SetUp(frames=36, dummy_boards=1), "do not fit"),
        ("national timber", SetUp(frames=12, dummy_boards=2), "do not fit"),
        ("nuc 5 timber", SetUp(frames=14), "holds 5"),
        ("nuc 5 ply", SetUp(frames=5, dummy_boards=2), "do not fit"),
        ("nuc 6 ply", SetUp(frames=5, supers=1), "no super"),
        ("national timber", SetUp(frames=5, foundation=6), "foundation"),
    ],
)
def test_what_cannot_stand_is_refused_with_the_reason(hive: str, set_up: SetUp, word: str) -> None:
    colonies = samples.usual(members=1)
    before = colonies.copy()
    with pytest.raises(ClashError, match=word):
        actions.arrange(colonies, catalogue().hive(hive), set_up)
    assert (colonies == before).all()


@pytest.mark.parametrize(
    "action",
    [
        lambda c: actions.feed(c, -1.0, 0.6),
        lambda c: actions.feed(c, float("nan"), 0.6),
        lambda c: actions.feed(c, float("inf"), 0.6),
        lambda c: actions.feed(c, 100.0, 60.0),
        lambda c: actions.treat(c, "snake oil"),
        lambda c: actions.change_queen(c, "crowned"),
        lambda c: actions.harvest(c, -3.0),
        lambda c: actions.harvest(c, float("nan")),
    ],
)
def test_what_cannot_be_done_is_refused_and_changes_nothing(action: Action) -> None:
    colonies = samples.usual(members=1)
    before = colonies.copy()
    with pytest.raises(ClashError):
        action(colonies)
    assert (colonies == before).all()


def test_only_a_laying_queen_is_caged_and_only_a_caged_one_released() -> None:
    colonies = samples.usual(members=3)
    colonies["queen"] = (LAYING, QUEENLESS, CELL)
    actions.change_queen(colonies, "caged")
    actions.change_queen(colonies, "released")
    assert colonies["queen"].tolist() == [LAYING, QUEENLESS, CELL]
