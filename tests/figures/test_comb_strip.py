"""The comb strip: laws that hold for every stack, and what a reader must be able to tell apart."""

import re
import xml.etree.ElementTree as ET
from dataclasses import replace
from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.figures.comb_fills import COLOURS, Area, brood, pollen, stores, theme_css
from combwright.figures.comb_legend import legend
from combwright.figures.comb_strip import comb_stack, comb_strip
from combwright.figures.comb_words import describe
from combwright.terms.combs import Box, Place, StackView

SVG = "{http://www.w3.org/2000/svg}"
SHARES = st.floats(0, 1)
PLACES = st.builds(
    Place,
    holds=st.sampled_from(["comb", "foundation", "dummy board", "feeder", "gap"]),
    brood=SHARES,
    stores=SHARES,
    pollen=SHARES,
    bees=SHARES,
    is_new=st.booleans(),
)
BOXES = st.builds(
    Box,
    kind=st.sampled_from(["brood", "super"]),
    places=st.lists(PLACES, max_size=14).map(tuple),
)
STACKS = st.builds(
    StackView,
    boxes=st.lists(BOXES, max_size=5).map(tuple),
    excluder=st.booleans(),
    feeder_over=st.booleans(),
    entrance_mm=st.floats(0, 500),
    tray_open_mm=st.floats(0, 500),
    cover=st.sampled_from(["crown board", "cushion", "vented"]),
)


def box_of(*places: Place, kind: str = "brood") -> StackView:
    box = Box("super" if kind == "super" else "brood", places)
    return StackView((box,), False, False, 60, 100, "crown board")  # noqa: FBT003 - no excluder, no feeder


def places_in(drawing: str) -> list[ET.Element]:
    return [g for g in ET.fromstring(drawing).iter(f"{SVG}g") if g.get("class") == "place"]  # noqa: S314 - our own drawing


def areas(drawing: str, fill: str) -> list[float]:
    found = re.findall(rf'class="fill-{fill}"[^>]*width="([\d.]+)" height="([\d.]+)"', drawing)
    return [float(width) * float(height) for width, height in found]


@given(STACKS, STACKS)
def test_every_stack_is_drawn_whole_and_in_plain_numbers(
    before: StackView, after: StackView
) -> None:
    drawing = comb_strip(before, after, title="Stack")
    expected = [p.holds for view in (before, after) for box in view.boxes[::-1] for p in box.places]
    assert [place.get("data-holds") for place in places_in(drawing)] == expected
    assert not re.search(r"\b(nan|inf)\b", drawing, re.IGNORECASE)
    assert "--" not in re.sub(r"var\(--", "", drawing)


@given(STACKS, STACKS, st.booleans())
def test_nothing_is_drawn_outside_of_the_picture(
    before: StackView, after: StackView, is_alone: bool
) -> None:
    drawing = (
        comb_stack(after, before, caption="leave it so", title="Stack")
        if is_alone
        else comb_strip(before, after, title="Stack")
    )
    root = ET.fromstring(drawing)  # noqa: S314 - our own drawing
    _, _, width, height = (float(part) for part in root.get("viewBox", "").split())
    for rect in root.iter(f"{SVG}rect"):
        x, y, wide, high = (float(rect.get(a, "nan")) for a in ("x", "y", "width", "height"))
        assert 0 <= x <= x + wide <= width + 0.1
        assert 0 <= y <= y + high <= height + 0.1
        assert wide >= 0 <= high
    for text in root.iter(f"{SVG}text"):
        # DejaVu Sans Mono is 0.602 of its size wide, at 29.
        assert float(text.get("x", "nan")) + 0.602 * 29 * len(text.text or "") <= width
        assert 0 < float(text.get("y", "nan")) <= height


@given(st.floats(0, 1), st.floats(0, 1))
def test_more_brood_is_drawn_larger(less: float, more: float) -> None:
    less, more = sorted((less, more))
    small, large = (
        sum(areas(comb_strip(box_of(Place("comb", brood=b)), title=""), "brood"))
        for b in (less, more)
    )
    assert small <= large


@given(st.floats(0.01, 1), st.floats(0.01, 1), st.floats(0.01, 1))
def test_contents_never_overfill_a_comb(a: float, b: float, c: float) -> None:
    drawing = comb_strip(box_of(Place("comb", brood=a, stores=b, pollen=c)), title="")
    filled = sum(sum(areas(drawing, fill)) for fill in ("brood", "stores", "pollen"))
    (comb,) = areas(drawing, "empty")
    # Coordinates are rounded to 0.1, on three areas 30 wide.
    assert filled <= comb + 3 * 30 * 0.1


@given(STACKS)
def test_equal_stacks_give_equal_bytes_and_no_sign_of_change(stack: StackView) -> None:
    assert comb_strip(stack, stack, title="x") == comb_strip(stack, stack, title="x")
    signs = comb_strip(stack, stack, title="x").count('class="line-put-in"')
    assert signs == 2 * sum(place.is_new for box in stack.boxes for place in box.places)


def test_what_is_changed_carries_a_sign() -> None:
    before = box_of(Place("comb"))
    after = replace(
        before,
        boxes=(*before.boxes, Box("super", (Place("comb"),))),
        excluder=True,
        feeder_over=True,
        entrance_mm=100,
        tray_open_mm=0,
        cover="cushion",
    )
    drawing = comb_strip(before, after, title="x")
    # The super, the excluder, the feeder, the cover, the entrance and the tray.
    assert drawing.count('class="line-put-in"') == 6


def test_bees_that_leave_brood_uncovered_can_be_seen() -> None:
    drawing = comb_strip(box_of(Place("comb", brood=0.8, bees=0.3)), title="")
    (bees,) = re.findall(r'class="fill-bees"[^>]*height="([\d.]+)"', drawing)
    (laid,) = re.findall(r'class="fill-brood"[^>]*height="([\d.]+)"', drawing)
    assert float(bees) / float(laid) == pytest.approx(0.3 / 0.8, abs=0.01)


def test_patterns_differ_without_their_colours() -> None:
    area = Area(0, 0, 30, 100)
    bare = [
        re.sub(r"#[0-9a-f]{6}|class=\"[^\"]*\"", "", draw(area)) for draw in (brood, pollen, stores)
    ]
    assert all(one != other for one, other in combinations(bare, 2))


def luminance(colour: str) -> float:
    """Return the relative luminance of WCAG 2.2 (a published definition, from memory)."""
    channels = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: str, other: str) -> float:
    dark, light = sorted((luminance(COLOURS[one]), luminance(COLOURS[other])))
    return (light + 0.05) / (dark + 0.05)


def test_contrast_agrees_with_wcag_for_black_on_white() -> None:
    assert (luminance("#ffffff") + 0.05) / (luminance("#000000") + 0.05) == pytest.approx(21)


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("brood", "brood-dots"),
        ("brood", "empty"),
        ("brood", "pollen"),
        ("brood", "stores"),
        ("stores", "ink"),
        ("pollen", "ink"),
        ("bees", "back"),
        ("put-in", "back"),
    ],
)
def test_neighbours_stand_out_as_grey_tones(one: str, other: str) -> None:
    # WCAG 2.2, 1.4.11: graphics need 3 to 1.
    assert contrast(one, other) >= 3


def test_a_hostile_title_stays_text() -> None:
    title = '"><script>alert(1)</script>&'
    root = ET.fromstring(comb_strip(box_of(Place("comb")), title=title))  # noqa: S314 - our own drawing
    assert root.findtext(f"{SVG}title") == title
    assert not list(root.iter(f"{SVG}script"))


def test_drawings_can_share_a_page() -> None:
    assert " id=" not in comb_strip(box_of(Place("comb", 0.3, 0.3, 0.1, 0.5)), title="x") + legend()


@given(STACKS)
def test_words_say_what_is_drawn(stack: StackView) -> None:
    words = describe(stack)
    root = ET.fromstring(comb_strip(stack, title="x"))  # noqa: S314 - our own drawing
    assert words in (root.findtext(f"{SVG}desc") or "")
    named = re.findall(
        r"(\d+) (?:brood|stores|pollen|empty comb|foundation|dummy|feeder|gap)", words
    )
    assert sum(map(int, named)) == sum(len(box.places) for box in stack.boxes)
    assert ("excluder" in words) == stack.excluder
    assert ("Feeder on top" in words) == stack.feeder_over
    assert stack.cover in words


def test_words_add_up_the_combs() -> None:
    words = describe(box_of(Place("comb", 0.5, 0.25, 0, 1), Place("comb", 0.25, 0.25, 0.25, 0.5)))
    assert "bees on 1.5, brood 0.8, stores 0.5, pollen 0.2, empty 0.5" in words


def test_the_legend_names_everything_that_can_be_drawn() -> None:
    inside = ("brood", "stores", "pollen", "empty cells", "foundation", "bees", "dummy board")
    for words in (*inside, "feeder", "gap", "excluder"):
        assert f">{words}<" in legend()
    assert legend(columns=3).count("<text") == legend().count("<text")


def test_the_theme_reaches_every_class_that_is_used() -> None:
    full = box_of(*(Place(h, 0.3, 0.3, 0.2, 0.5, is_new=True) for h in ("comb", "feeder", "gap")))
    used = set(re.findall(r'class="((?:fill|line)-[a-z-]+)"', comb_strip(full, title="x")))
    assert used
    assert all(f".comb .{name}{{" in theme_css() for name in used)
