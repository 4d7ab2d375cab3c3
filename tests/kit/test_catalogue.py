"""The catalogue against the trade's own figures, and the errors of a keeper's own kit."""

import pytest

from combwright.kit.catalogue import catalogue
from combwright.kit.items import Excluder, Feeder, Frame, Item, Super
from combwright.terms.errors import NotFoundError, OutOfRangeError

# Figures of association study notes and hive pages (read), cells in one brood box.
CELLS_IN_BOX = [
    ("national timber", 50_000, 55_000),
    ("smith", 55_000, 55_000),
    ("national 14x12", 80_300, 80_300),
    ("commercial", 70_400, 75_000),
    ("modified dadant", 84_700, 85_000),
]

OWN_MATERIAL = """
[[material]]
key = "cork"
name = "Cork board"
conductivity_w_per_m_k = 0.04
density_kg_per_m3 = 120
source = "Maker's sheet"
verified = "read"

[[cover]]
key = "cork cushion"
name = "Cork over the crown board"
part = "cushion"
layers = [{ material = "cork", mm = 30 }]
openings_cm2 = 0
kg = 0.6
source = "My own bench"
verified = "common practice"
"""


@pytest.mark.parametrize(("key", "low", "high"), CELLS_IN_BOX)
def test_brood_boxes_hold_the_cells_that_the_trade_counts(key: str, low: int, high: int) -> None:
    hive = catalogue().hive(key)
    assert low <= hive.frames * hive.frame.worker_cells <= high


def test_the_national_is_the_one_of_bs_1300() -> None:
    hive = catalogue().hive("national timber")
    wall = sum(layer.mm for layer in hive.wall)
    assert hive.inner_width_mm + 2 * wall == 460
    assert hive.inner_length_mm == 371
    assert hive.frame.width_mm == 356
    assert hive.inner_volume_l == pytest.approx(35, abs=0.5)  # read second-hand


def test_polystyrene_is_lighter_by_what_an_association_weighed() -> None:
    timber, polystyrene = (catalogue().hive(f"national {m}") for m in ("timber", "polystyrene"))
    assert 4 <= timber.empty_kg - polystyrene.empty_kg <= 5


def test_brood_and_a_half_weighs_what_an_association_weighed() -> None:
    hive = catalogue().hive("national timber")
    box = hive.honey_super
    assert box is not None
    board = catalogue().board("dummy board").kg
    empty_super = box.box_kg + box.frames * box.frame.drawn_kg
    assert hive.empty_kg + board + empty_super == pytest.approx(22, abs=0.6)  # "about 22 kg"


@pytest.mark.parametrize("hive", catalogue().hives(), ids=lambda hive: hive.key)
def test_frames_hang_in_their_box(hive: Item) -> None:
    hive = catalogue().hive(hive.key)
    assert 8 <= hive.inner_length_mm - hive.frame.width_mm <= 24  # a bee space at each end
    assert 6 <= hive.inner_depth_mm - hive.frame.depth_mm <= 15  # one bee space
    assert hive.frames <= hive.capacity
    if hive.honey_super:
        assert hive.plan in hive.honey_super.fits
        assert hive.super_frames == hive.honey_super.frames


@pytest.mark.parametrize("frame", catalogue().all_of(Frame), ids=lambda frame: frame.key)
def test_comb_lies_within_its_frame(frame: Frame) -> None:
    assert frame.comb_area_dm2 < frame.width_mm * frame.depth_mm / 1e4
    assert frame.honey_full_kg == frame.stores_full_kg
    assert 125 <= frame.bees_full_cover / (2 * frame.comb_area_dm2) <= 170


@pytest.mark.parametrize("box", catalogue().all_of(Super), ids=lambda box: box.key)
def test_a_super_holds_its_frames(box: Super) -> None:
    assert box.frames * box.frame.pitch_mm <= box.inner_width_mm
    assert box.full_kg > box.honey_full_kg


def test_a_full_national_super_weighs_and_holds_what_keepers_lift() -> None:
    box = catalogue().hive("national timber").honey_super
    assert box is not None
    assert 10 <= box.honey_full_kg <= 14
    assert 14 <= box.full_kg <= 17


def test_commercial_supers_go_on_national_brood_boxes() -> None:
    box = catalogue().item("commercial super")
    assert isinstance(box, Super)
    assert {"national", "commercial"} <= set(box.fits)


def test_excluders_pass_workers_only() -> None:
    gaps = [excluder.gap_mm for excluder in catalogue().all_of(Excluder)]
    assert gaps
    assert all(4.14 <= gap <= 4.36 for gap in gaps)  # D. Cushman's measurements, quoted


def test_feeders_lie_between_their_smallest_and_largest() -> None:
    feeders = catalogue().all_of(Feeder)
    assert {f.stands for f in feeders} == {
        "over the crown board",
        "in place of a frame",
        "on the frames",
    }
    assert all(f.capacity_low_l <= f.capacity_l <= f.capacity_high_l for f in feeders)


def test_keys_are_forgiving_about_capitals_and_spaces() -> None:
    assert catalogue().hive(" National  Timber ").key == "national timber"


def test_an_unknown_key_names_its_neighbours() -> None:
    with pytest.raises(NotFoundError, match="national timber"):
        catalogue().hive("national wood")
    with pytest.raises(NotFoundError, match="There is no hive"):
        catalogue().hive("dn4")  # it is there, but it is a frame
    with pytest.raises(NotFoundError, match="There are:"):
        catalogue().board("zzz")


def test_the_keepers_own_kit_is_read_in_the_same_format() -> None:
    own = catalogue({"mine.toml": OWN_MATERIAL})
    cushion = own.cover("cork cushion")
    assert cushion.layers[0].conductivity_w_per_m_k == 0.04
    assert own.hive("national timber") == catalogue().hive("national timber")
    assert "cork cushion" not in catalogue().items


BAD = [
    ("[[hive", "This is not TOML"),
    ("[[hives]]\nkey = 'x'", "“hives” is not a kind of kit. Did you mean “hive”"),
    ("[hive]\nkey = 'x'", r"Write \[\[hive\]\]"),
    (OWN_MATERIAL.replace("mm = 30", "mm = 0.03"), "centimetres or inches"),
    (OWN_MATERIAL.replace("kg = 0.6", "kg = 600"), "is this in grams"),
    (OWN_MATERIAL.replace('"cork", mm', '"corc", mm'), "Did you mean “cork”"),
    (OWN_MATERIAL.replace("openings_cm2 = 0\n", ""), "openings_cm2 is missing"),
    (OWN_MATERIAL + "colour = 'red'", "colour is not a field"),
    (OWN_MATERIAL.replace('"cork cushion"', '"cushion"'), "in the catalogue already"),
    (OWN_MATERIAL.replace('"cork cushion"', '"Cork/Cushion"'), "key is 'Cork/Cushion'"),
    (OWN_MATERIAL.replace('verified = "read"', 'verified = "surely"'), "verified is 'surely'"),
    (OWN_MATERIAL.replace("mm = 30", "mm = 3000"), "decimal point"),
    (OWN_MATERIAL.replace("kg = 0.6", "kg = nan"), "kg is nan"),
    (OWN_MATERIAL.replace('layers = [{ material = "cork", mm = 30 }]', "layers = 3"), "layers"),
    (OWN_MATERIAL.replace('material = "cork", ', ""), "material is missing"),
]


@pytest.mark.parametrize(("text", "says"), BAD)
def test_errors_in_own_kit_are_explained(text: str, says: str) -> None:
    with pytest.raises((OutOfRangeError, NotFoundError), match=says) as caught:
        catalogue({"mine.toml": text})
    assert caught.value.where.startswith("mine.toml")
