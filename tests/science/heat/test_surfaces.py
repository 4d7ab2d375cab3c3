"""Layers and surfaces against ISO 6946, an industry table, and the library ht."""

import ht.insulation
import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.kit.catalogue import catalogue
from combwright.kit.items import Material
from combwright.science.heat import surfaces

# ISO 6946 table 8, air layers between surfaces of high emissivity: mm, up, horizontal, down.
AIR_LAYERS = [
    (5, 0.11, 0.11, 0.11),
    (7, 0.13, 0.13, 0.13),
    (10, 0.15, 0.15, 0.15),
    (15, 0.16, 0.17, 0.17),
    (25, 0.16, 0.18, 0.19),
    (50, 0.16, 0.18, 0.21),
    (100, 0.16, 0.18, 0.22),
    (300, 0.16, 0.18, 0.23),
]
# Australian foil industry table: 13 mm upright layer at a mean of 23 °C, emissivity of one face.
FOIL = [(0.9, 0.1471), (0.1, 0.393), (0.05, 0.4437), (0.03, 0.4681)]
# Kit material beside the entry of ht (EN 12524 and ASHRAE).
MATERIALS = [
    ("softwood", "Timber, 500 kg/m^3", 1e-9),
    ("plywood", "Wood, plywood 500 kg/m^3", 1e-9),
    ("polystyrene", "Expanded polystyrene, molded beads", 0.002),
    ("western red cedar", "West coast woods, cedars", 0.006),
]

DIRECTIONS = st.sampled_from(["horizontal", "up", "down"])
THICKNESS = st.floats(1, 300)


@pytest.mark.parametrize(("mm", "up", "horizontal", "down"), AIR_LAYERS)
def test_air_layers_agree_with_iso_6946(
    mm: float, up: float, horizontal: float, down: float
) -> None:
    assert surfaces.air_layer_resistance(mm, "up") == pytest.approx(up, abs=0.0051)
    assert surfaces.air_layer_resistance(mm, "horizontal") == pytest.approx(horizontal, abs=0.0051)
    assert surfaces.air_layer_resistance(mm, "down") == pytest.approx(down, abs=0.0051)


@pytest.mark.parametrize(("emissivity", "resistance"), FOIL)
def test_foil_agrees_with_an_industry_table(emissivity: float, resistance: float) -> None:
    got = surfaces.air_layer_resistance(
        13, "horizontal", emissivities=(0.9, emissivity), temperature_c=23
    )
    assert got == pytest.approx(resistance, rel=0.03)


def test_surfaces_agree_with_iso_6946() -> None:
    assert surfaces.inner_surface_resistance("horizontal") == pytest.approx(0.13, abs=0.005)
    assert surfaces.inner_surface_resistance("up") == pytest.approx(0.10, abs=0.005)
    assert surfaces.inner_surface_resistance("down") == pytest.approx(0.17, abs=0.005)
    assert surfaces.outer_surface_resistance(4) == pytest.approx(0.04, abs=0.005)


@pytest.mark.parametrize(("key", "name", "tolerance"), MATERIALS)
def test_conductivities_agree_with_ht(key: str, name: str, tolerance: float) -> None:
    material = catalogue().item(key)
    assert isinstance(material, Material)
    assert material.conductivity_w_per_m_k == pytest.approx(
        ht.insulation.k_material(name),  # type: ignore[no-untyped-call]
        abs=tolerance,
    )


@given(st.floats(0.5, 300), st.floats(0.02, 5))
def test_solid_layers_agree_with_ht(mm: float, conductivity: float) -> None:
    assert surfaces.layer_resistance(mm, conductivity) == pytest.approx(
        ht.k_to_R(conductivity, mm / 1000)
    )


@given(DIRECTIONS, THICKNESS, st.floats(0.02, 0.9), st.floats(0.01, 0.1))
def test_shinier_layers_hold_better(
    direction: surfaces.Direction, mm: float, emissivity: float, more: float
) -> None:
    shiny = surfaces.air_layer_resistance(mm, direction, emissivities=(0.9, emissivity))
    dull = surfaces.air_layer_resistance(mm, direction, emissivities=(0.9, emissivity + more))
    assert shiny > dull


@given(THICKNESS)
def test_warm_air_under_a_cold_lid_holds_least(mm: float) -> None:
    up, across, down = (
        surfaces.air_layer_resistance(mm, direction) for direction in ("up", "horizontal", "down")
    )
    assert up <= across <= down


def test_arrays_go_in_and_come_out() -> None:
    assert surfaces.air_layer_resistance(np.array([7, 13]), "up").shape == (2,)
    assert surfaces.layer_resistance([19, 40], [0.13, 0.035]).shape == (2,)
