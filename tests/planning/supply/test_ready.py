"""Nucs become ready with the weeks; what is taken of a donor grows back."""

import numpy as np
import pytest
from tests.planning.supply.seasons import WEEKS, order, season

from combwright.planning.supply.ready import holes_left, ready_shares, spare
from combwright.planning.supply.wanted import WAYS, Way

TASK = season([order("A", 1, 9)], scenarios=20)


@pytest.mark.parametrize("way", WAYS)
def test_no_nuc_is_ready_before_it_is_made_and_none_becomes_unready(way: Way) -> None:
    shares = ready_shares(TASK, way)
    assert ((shares >= 0.0) & (shares <= 1.0)).all()
    assert (np.diff(shares, axis=1) >= -1e-12).all()
    for made in range(WEEKS):
        assert (shares[:, : made + 1, made] == 0.0).all()


def test_a_bought_queen_is_ready_before_a_cell() -> None:
    assert (ready_shares(TASK, "by bought queen") >= ready_shares(TASK, "by cell"))[:, :5].all()


def test_holes_close_and_are_none_before_they_are_made() -> None:
    for hole in holes_left(WEEKS):
        assert (np.triu(hole, 1) == 0.0).all()
        assert (np.diagonal(hole) > 0.0).all()
        assert (np.diff(np.tril(hole), axis=0)[np.tril_indices(WEEKS - 1)] <= 0.0).all()


def test_what_can_be_spared_is_the_careful_end() -> None:
    frames = np.array([[5.0], [7.0], [9.0], [11.0]])
    assert spare(frames, 4.0)[0] < float(np.median(frames)) - 4.0
