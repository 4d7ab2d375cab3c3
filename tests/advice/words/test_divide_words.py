"""What is said of a division: the queen's way, and what becomes of the cells."""

from combwright.advice.bee_acts import Divide
from combwright.advice.words.divide_words import divide_words


def test_each_way_says_where_the_queen_goes_and_what_is_given() -> None:
    sold = divide_words(Divide(way="on purpose", successor="mated queen"))
    assert "for sale" in sold
    assert "young mated queen in a cage" in sold
    assert "cells" not in sold  # none are there
    found = divide_words(Divide(successor="mated queen"))
    assert "knock down all cells here" in found
    assert "one open cell" in divide_words(Divide(successor="marked cell"))
    halves = divide_words(Divide(way="halves", successor="marked cell"))
    assert halves.startswith("Share eggs")


def test_charged_cells_that_are_only_likely_are_said_so_and_supersedure_is_told_from_them() -> None:
    likely = divide_words(Divide(successor="marked cell", likely=True, may_supersede=True))
    assert likely.startswith("Charged cells are likely. One to three")
    assert "Many: put the queen" in likely
