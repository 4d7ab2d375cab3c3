import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import nbinom
from tests.belief.samples import Loose, day, enters, entry, replay
from tests.simulation import samples

from combwright.belief.numbers import number
from combwright.belief.weighing.observation import (
    BROOD_SEEN,
    CELLS_SEEN,
    EYE,
    SLIP,
    chance_of_eggs_found,
    chance_of_queen_seen,
    clumped,
    looked_at,
    of_visit,
)
from combwright.simulation.columns import DRONE_LAYER, LAYING, QUEENLESS, VIRGIN
from combwright.terms.entries import Visit


@pytest.mark.parametrize("name", EYE)
def test_each_error_model_is_a_probability_density(name: str) -> None:
    eye = EYE[name]
    true = 0.3 * eye.span
    notes = np.linspace(-eye.span, 2 * eye.span, 20001)
    density = [np.exp(eye.log_likelihood(note, np.array([true])))[0] for note in notes[::20]]
    slips = SLIP.value / eye.span
    total = (np.array(density) - slips).sum() * (notes[20] - notes[0]) + SLIP.value
    assert total == pytest.approx(1.0, abs=0.01)


@pytest.mark.parametrize("name", EYE)
def test_what_is_drawn_is_what_is_expected(name: str) -> None:
    eye, rng = EYE[name], np.random.default_rng(3)
    true = np.full(20000, 0.4 * eye.span)
    drawn = eye.draw(true, rng)
    sd = np.hypot(eye.relative * true[0], eye.absolute)
    assert np.median(drawn) == pytest.approx(true[0], abs=0.1 * sd)
    near = abs(drawn - true[0]) < sd
    assert near.mean() == pytest.approx(0.98 * 0.6827, abs=0.03)


@given(st.floats(0, 1000), st.floats(0, 1000))
def test_no_note_is_impossible(seen: float, true: float) -> None:
    for eye in EYE.values():
        assert np.isfinite(eye.log_likelihood(seen, np.array([true]))).all()


@given(st.integers(0, 500), st.floats(0.1, 300), st.floats(1, 20))
def test_counts_are_negative_binomial(count: int, mean: float, size: float) -> None:
    reference = nbinom.logpmf(count, size, size / (size + mean))  # scipy's own form
    assert clumped(count, np.array([mean]), size)[0] == pytest.approx(reference, rel=1e-6, abs=1e-6)


def test_notes_on_queen_cells_exhaust_what_can_be_noted() -> None:
    for chances in CELLS_SEEN.values():
        assert sum(chances.values()) == pytest.approx(1.0)


def test_notes_on_the_kind_of_brood_exhaust_what_can_be_noted() -> None:
    for chances in BROOD_SEEN.values():
        assert sum(chances.values()) == pytest.approx(1.0)
        assert set(chances) == {"worker brood", "drone brood only", "several eggs a cell"}


def test_a_missing_value_says_nothing_and_values_add_up() -> None:
    followed = replay(enters()).follow("Sorrel", day(7))
    assert followed is not None
    belief = followed.belief

    def told(**seen: Loose) -> np.ndarray:
        visit: Visit = entry(Visit, 7, **seen)
        return of_visit(visit, belief.colonies, belief.shared, empty_kg=10.0)

    assert (told() == 0.0).all()
    both = told(frames_of_bees=6.0, stores_kg=5.0)
    assert both == pytest.approx(told(frames_of_bees=6.0) + told(stores_kg=5.0))


def test_eggs_are_found_the_surer_the_more_there_are_and_by_mistake_where_there_are_none() -> None:
    colonies = samples.usual(members=4)
    days, many = colonies["eggs"].shape[1], number("eggs_many")
    colonies["eggs"] = np.array([[0.0], [0.5 * many], [many], [3.0 * many]]) / days
    mistake, all_found = number("eggs_by_mistake"), number("eggs_where_many")
    shares = (chance_of_eggs_found(colonies) - mistake) / all_found
    assert shares == pytest.approx([0.0, 0.5, 1.0, 1.0])


def test_a_queen_that_lays_drones_is_seen_as_one_that_lays_workers() -> None:
    lays, drones, virgin, none = (
        chance_of_queen_seen(np.array([(state,)], dtype=[("queen", float)]))[0]
        for state in (LAYING, DRONE_LAYER, VIRGIN, QUEENLESS)
    )
    assert lays == drones > virgin > none > 0.0


def test_a_generous_eye_sees_more() -> None:
    followed = replay(enters()).follow("Sorrel", day(7))
    assert followed is not None
    belief = followed.belief
    plain = belief.shared.copy()
    plain["bees_eye"] = 0.0
    generous = plain.copy()
    generous["bees_eye"] = 0.1
    few, many = (
        looked_at(belief.colonies, shared, empty_kg=0.0)["frames_of_bees"]
        for shared in (plain, generous)
    )
    assert (many >= few).all()
    assert (many > few).any()
