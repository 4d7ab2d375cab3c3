"""The season ahead under the good ordinary keeper: limits kept, lanes apart, rare things priced."""

from datetime import date

import numpy as np
import pytest
from numpy.typing import NDArray
from tests.simulation import samples

from combwright.kit.catalogue import catalogue
from combwright.simulation import observe
from combwright.simulation.ahead.roll import (
    days_ahead,
    live_on,
    stack_table,
    still_to_come,
    without_the_rare,
)
from combwright.simulation.ahead.rules import PARAMETERS, RULES
from combwright.simulation.ahead.visit import CAME, risk, visit
from combwright.simulation.begin import Described, begin
from combwright.simulation.biology import BIOLOGY, as_table
from combwright.simulation.columns import LAYING, QUEENLESS
from combwright.simulation.luck import luck
from combwright.terms.set_up import SetUp
from combwright.weather.climates import climate
from combwright.weather.conditions import conditions
from combwright.weather.forage import calendar, forage_index
from combwright.weather.generator import generate

Floats = NDArray[np.float64]
ON, ENDS, MEMBERS = date(2027, 4, 24), date(2027, 10, 1), 12
HIVE = catalogue().hive("national timber")
STACK = stack_table(HIVE, 1, "crown board")


@pytest.fixture(scope="module")
def season() -> tuple[Floats, Floats]:
    place, days = climate("Dublin Airport"), (ENDS - ON).days
    weather = generate(place, ON, days, MEMBERS, 3)
    nectar, pollen = forage_index(calendar("lowland mixed farmland"), weather, place, seed=3)
    table = conditions(weather, nectar, pollen, latitude_deg=place.latitude_deg)
    return table, without_the_rare(luck(1, "ahead", ON, days, MEMBERS))


def colonies(bees: float, frames: int, *, supers: int = 0, stores: float = 6.0) -> NDArray[np.void]:
    set_up = SetUp(hive=HIVE.key, frames=frames, supers=supers, excluder=supers > 0)
    described = Described(bees, 0.5 * bees, stores, queen_year=2026, has_queen=True)
    return begin(HIVE, set_up, described, on=ON, members=MEMBERS, seed=1, colony="one")


def lived(members: NDArray[np.void], season: tuple[Floats, Floats]) -> dict[str, Floats]:
    came = live_on(members, days_ahead(*season, members["world"]), stack=STACK, first_visit=7)
    return {name: came[:, at] for at, name in enumerate(CAME)}


def visited(members: NDArray[np.void], day: float, nuc: tuple[float, float] = (0.0, 0.0)) -> Floats:
    today = samples.today(day=day, night_c=10.0)
    came = np.zeros((len(members), len(CAME)))
    for one, counted in zip(members.view(np.recarray), came, strict=True):
        visit(one, day, np.array(nuc), STACK, RULES[0], counted)
        risk(one, today, 1.0, 7.0, as_table(BIOLOGY)[0], STACK, counted)
    return came


@pytest.mark.compiled
def test_a_strong_colony_brings_more_honey_than_a_weak_one(season: tuple[Floats, Floats]) -> None:
    weak, strong = (lived(colonies(bees, 11), season) for bees in (3.0, 10.0))
    assert strong["honey_kg"].mean() > 2.0 * weak["honey_kg"].mean() > 0.0


@pytest.mark.compiled
def test_nobody_swarms_or_loses_a_queen_but_both_are_priced(season: tuple[Floats, Floats]) -> None:
    members = colonies(11.0, 11)
    came = lived(members, season)
    assert members["swarmed"].sum() == 0.0
    assert (members["queen"] == 3.0).all()
    assert 0.0 < came["swarms"].mean() < 1.0
    assert ((came["queens_lost"] > 0.0) & (came["queens_lost"] < 1.0)).all()


@pytest.mark.compiled
def test_at_the_end_supers_are_off_it_is_treated_and_fed_for_winter(
    season: tuple[Floats, Floats],
) -> None:
    members = colonies(8.0, 11)
    came = lived(members, season)
    assert (members["supers"] == 0.0).all()
    assert ((came["treatments"] > 0.4) & (came["treatments"] <= 1.0)).all()
    wanted = PARAMETERS["winter_kg"].value
    wanted += PARAMETERS["winter_kg_a_frame"].value * np.median(observe.frames_of_bees(members))
    assert np.median(observe.stores_kg(members)) > 0.8 * wanted


def test_a_lane_does_not_feel_those_beside_it(season: tuple[Floats, Floats]) -> None:
    one, other, four_weeks = colonies(8.0, 11)[:2], colonies(5.0, 7)[:2], season[0][:2, :28]
    both, luck_of_two = np.concatenate([one, other]), season[1][:2]
    together = lived(both, (four_weeks, luck_of_two))
    apart = lived(one, (four_weeks, luck_of_two))
    assert apart["swarms"].max() > 0.0
    for name, values in apart.items():
        assert np.array_equal(together[name][:2], values), name
    assert np.array_equal(both["nest"][:2], one["nest"])


@pytest.mark.parametrize("day", [130.0, 160.0, 200.0])
def test_only_the_share_of_keepers_without_supers_feeds(day: float) -> None:
    for stores, keeps in ((0.2, 0.0), (2.5, 0.4), (6.0, 1.0)):
        members, bare = (colonies(9.0, 11, supers=on, stores=stores) for on in (1, 0))
        bare["super_drawn"] = 0.0
        visited(members, day)
        visited(bare, day)
        on = members["super_drawn"] / STACK.super_cells
        assert (on >= keeps - 1e-9).all()
        assert (members["feeder"] <= (1.0 - np.minimum(on, 1.0)) * 5000.0 + 1e-9).all()
        assert (members["feeder"][on >= 1.0] == 0.0).all()


def test_honey_with_fed_sugar_in_it_is_not_sold() -> None:
    clean, fed = (colonies(9.0, 11, supers=1) for _ in range(2))
    for members in (clean, fed):
        members["super_ripe"] = 8000.0
    fed["super_syrup"] = 800.0
    assert (visited(clean, 220.0)[:, 0] > 9.0).all()
    assert (visited(fed, 220.0)[:, 0] == 0.0).all()


def test_a_nuc_is_made_of_a_strong_colony_which_rests_then() -> None:
    members = colonies(12.0, 11)
    members["sealed"] *= 2.0
    before = members.copy()
    came = visited(members, 150.0, nuc=(160.0, 1.0))
    made = came[:, CAME.index("nucs")]
    assert ((made > 0.0) & (made <= 1.0)).all()
    assert came[:, CAME.index("nuc_money")] == pytest.approx(160.0 * made)
    assert (members["nest"] < before["nest"]).all()
    assert (members["sealed"].sum(axis=1) < before["sealed"].sum(axis=1)).all()
    assert (members["ripe"] < before["ripe"]).all()
    assert (members["queen"] == before["queen"]).all()
    assert (visited(colonies(4.0, 6), 150.0, nuc=(160.0, 1.0))[:, CAME.index("nucs")] == 0.0).all()


@pytest.mark.parametrize(("bees", "day", "given"), [(8.0, 150, 1), (0.3, 150, 0), (8.0, 330, 0)])
def test_a_queenless_colony_of_enough_bees_is_given_a_queen_in_season(
    bees: float, day: float, given: float
) -> None:
    members = colonies(bees, 11)
    members["queen"], members["queen_age"] = QUEENLESS, 900.0
    came = visited(members, day)
    assert (came[:, CAME.index("queens")] == given).all()
    assert ((members["queen"] == LAYING) == bool(given)).all()
    assert ((members["queen_age"] < 900.0) == bool(given)).all()


def test_cells_that_stand_count_as_a_swarm_begun() -> None:
    members = colonies(9.0, 11)
    members["swarm_clock"] = 4.0
    came = visited(members, 150.0)
    assert (members["swarm_clock"] == 0.0).all()
    assert (came[:, CAME.index("no_swarm")] == 0.0).all()


def test_what_is_still_to_come_falls_from_one_and_never_to_nothing(
    season: tuple[Floats, Floats],
) -> None:
    left = still_to_come(season[0])
    assert left[:, 0] == pytest.approx(1.0)
    assert (np.diff(left, axis=1) <= 1e-12).all()
    assert left.min() > 0.0
