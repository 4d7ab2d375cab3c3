"""What each square metre of a stack lets through."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.kit.catalogue import catalogue
from combwright.kit.items import Hive
from combwright.simulation.enclosure.walls import TRAY_LENGTH_MM, board_resistance, walls_of
from combwright.terms.set_up import Cover, SetUp

HIVES = catalogue().hives()
hives = st.sampled_from(HIVES)
winds = st.floats(0.5, 10)


@given(hives, winds, winds)
def test_wind_takes_heat(hive: Hive, one: float, other: float) -> None:
    calm, windy = (walls_of(hive, SetUp(frames=5), wind) for wind in sorted((one, other)))
    for part in ("wall", "wall_of_room", "cover", "floor"):
        assert 0.0 < getattr(calm, part) <= getattr(windy, part) * (1 + 1e-12)


@given(hives, winds, st.floats(0, TRAY_LENGTH_MM), st.floats(0, TRAY_LENGTH_MM))
def test_a_tray_drawn_out_opens_the_floor(
    hive: Hive, wind: float, one: float, other: float
) -> None:
    shut, out = (
        walls_of(hive, SetUp(frames=5, tray_open_mm=int(mm)), wind) for mm in sorted((one, other))
    )
    assert shut.floor <= out.floor * (1 + 1e-12)


@pytest.mark.parametrize("hive", HIVES, ids=lambda hive: hive.key)
def test_a_cushion_holds_heat(hive: Hive) -> None:
    covers: tuple[Cover, Cover] = ("crown board", "cushion")
    bare, cushioned = (walls_of(hive, SetUp(frames=5, cover=cover), 3.0) for cover in covers)
    assert cushioned.cover < bare.cover
    assert cushioned.wall == bare.wall


def test_polystyrene_holds_more_than_timber() -> None:
    timber, polystyrene = (
        walls_of(catalogue().hive(key), SetUp(frames=5), 3.0)
        for key in ("national timber", "national polystyrene")
    )
    assert polystyrene.wall < 0.5 * timber.wall
    assert board_resistance(catalogue().hive("national timber")) > 0.0
