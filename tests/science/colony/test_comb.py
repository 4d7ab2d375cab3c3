"""Comb against counts in print and plain geometry."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.kit.catalogue import catalogue
from combwright.kit.items import Frame
from combwright.science.colony import comb
from combwright.terms.errors import OutOfRangeError

# Cells on one cm² of one side by width of cell (geometry).
DENSITIES = [(4.9, 4.81), (5.2, 4.27), (5.3, 4.11), (5.4, 3.96), (5.5, 3.82), (6.5, 2.73)]
BROOD_FRAMES = [f for f in catalogue().all_of(Frame) if f.use == "brood"]


@pytest.mark.parametrize(("mm", "per_cm2"), DENSITIES)
def test_cells_on_a_square_centimetre(mm: float, per_cm2: float) -> None:
    assert comb.cells_per_dm2(mm) / 100 == pytest.approx(per_cm2, abs=0.006)


@given(st.floats(4.5, 7.5))
def test_betts_rule_is_the_geometry(mm: float) -> None:
    cells_to_10_cm = 100 / mm
    assert 2 * comb.cells_per_dm2(mm) == pytest.approx(2.309 * cells_to_10_cm**2, rel=3e-4)


def test_a_langstroth_deep_holds_the_bees_that_were_counted() -> None:
    assert comb.bees_on_comb(8.8) == pytest.approx(2430, rel=0.005)  # Burgett & Burikam 1985


@pytest.mark.parametrize("frame", BROOD_FRAMES, ids=lambda frame: frame.key)
def test_the_catalogue_agrees_with_geometry(frame: Frame) -> None:
    cells = float(comb.cells_both_sides(frame.comb_area_dm2))
    assert 0.85 * cells < frame.worker_cells < 1.01 * cells
    assert frame.bees_full_cover == pytest.approx(
        float(comb.bees_on_comb(frame.comb_area_dm2)), rel=0.01
    )
    assert frame.stores_full_kg == pytest.approx(
        float(comb.stores_on_comb_kg(frame.comb_area_dm2)), rel=0.05
    )


@given(st.floats(0.1, 30), st.floats(4.5, 7), st.floats(0.1, 1))
def test_wider_cells_are_fewer(area: float, mm: float, wider: float) -> None:
    assert comb.cells_both_sides(area, mm + wider) < comb.cells_both_sides(area, mm)


@given(st.integers(0, 40), st.floats(0, 5), st.floats(0, 2), st.floats(0, 20))
def test_a_box_weighs_at_least_its_honey(
    frames: int, honey: float, drawn: float, box: float
) -> None:
    assert comb.box_full_kg(frames, honey, drawn, box) >= frames * honey


@given(st.floats(0, 100), st.floats(0, 50))
def test_the_caution_never_softens_with_more_mass(kg: float, more: float) -> None:
    words = ["", "lift it close", "heavy for one", "more than one person"]

    def rank(text: str) -> int:
        return max(i for i, word in enumerate(words) if word in text)

    assert rank(comb.lifting_caution(kg + more)) >= rank(comb.lifting_caution(kg))


def test_a_full_super_is_heavy_and_a_full_brood_box_needs_two() -> None:
    assert "close to the body" in comb.lifting_caution(16)
    assert "two people" in comb.lifting_caution(28)  # full National brood box of stores


def test_centimetres_are_recognised() -> None:
    with pytest.raises(OutOfRangeError, match=r"5\.2 to 5\.4 mm"):
        comb.cells_per_dm2(0.54)
    with pytest.raises(OutOfRangeError, match="655 cm²"):
        comb.bees_on_comb(655)
