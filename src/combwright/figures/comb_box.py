"""One box from above: its places as bars, and the bees between them.

Brood is drawn from the entrance end, pollen next to it, stores from the far end: what stays white
between them is room. Bees reach from the entrance end too, so that brood beyond their edge is
brood that nobody warms.
"""

from combwright.figures.comb_fills import (
    Area,
    brood,
    horizontal,
    number,
    pollen,
    rectangle,
    stores,
    stroke,
    vertical,
    waves,
)
from combwright.terms.combs import Box, Place

PITCH = 34.0
BAR = 24.0
WALL = 8.0
PUT_IN_ROOM = 28.0
LENGTHS = {"brood": 136.0, "super": 62.0}


def box_width(box: Box) -> float:
    """Return the width of a box with its walls [0.1 mm]."""
    return PITCH * max(len(box.places), 1) + 2 * WALL


def box_height(box: Box) -> float:
    """Return the height of a box with its walls and the signs for what is put in [0.1 mm]."""
    signs = PUT_IN_ROOM if any(place.is_new for place in box.places) else 0
    return LENGTHS[box.kind] + 2 * WALL + signs


def draw_box(box: Box, left: float, top: float, width: float) -> str:
    """Draw a box with its top left corner at a point; its places share its width evenly."""
    bottom = top + box_height(box)
    length = LENGTHS[box.kind]
    walls = Area(left, bottom - length - 2 * WALL, width, length + 2 * WALL)
    pitch = (width - 2 * WALL) / max(len(box.places), 1)
    slots = [
        Area(left + WALL + pitch * i, walls.y + WALL, pitch, length) for i in range(len(box.places))
    ]
    pairs = list(zip(box.places, slots, strict=True))
    return (
        f'<g class="box {box.kind}">'
        + rectangle(walls, "back", outline=6)
        + "".join(_bees(place, slot) for place, slot in pairs)
        + "".join(_place(place, slot) for place, slot in pairs)
        + _edge_of_bees(pairs)
        + "</g>"
    )


def plus(x: float, y: float) -> str:
    """Draw the sign of what is put in on this round, centred on a point."""
    half = 12.0
    path = horizontal(x - half, x + half, y) + vertical(x, y - half, y + half)
    return stroke(path, 8, colour="put-in")


def changed(x: float, y: float) -> str:
    """Draw the sign of what is set differently on this round, centred on a point."""
    return stroke(f"M{number(x - 8)} {number(y - 11)}l16 11l-16 11", 8, colour="put-in")


def share(value: float) -> float:
    """Return a share as it can be drawn, 0 to 1."""
    return min(1.0, max(0.0, value))


def _reach(place: Place) -> float:
    return share(place.bees)


def _bees(place: Place, slot: Area) -> str:
    depth = _reach(place) * slot.height
    if depth == 0:
        return ""
    return rectangle(Area(slot.x, slot.bottom - depth, slot.width, depth), "bees")


def _edge_of_bees(pairs: list[tuple[Place, Area]]) -> str:
    """Draw the edge of the bees as one stepped line over all bars, with a light rim."""
    path, is_low = "", True
    for place, slot in pairs:
        depth = _reach(place) * slot.height
        start = f"M{number(slot.x)} {number(slot.bottom)}" if is_low and depth else ""
        rise = f"V{number(slot.bottom - depth)}" if depth or not is_low else ""
        level = f"H{number(slot.right)}" if depth else ""
        path, is_low = path + start + rise + level, not depth
    if not path:
        return ""
    path += "" if is_low else f"V{number(pairs[-1][1].bottom)}"
    return stroke(path, 10, colour="back") + stroke(path, 5)


def _place(place: Place, slot: Area) -> str:
    bar = Area(slot.x + (slot.width - BAR) / 2, slot.y, BAR, slot.height)
    drawn = {
        "comb": _comb,
        "foundation": _foundation,
        "dummy board": _dummy_board,
        "feeder": _feeder,
        "gap": _gap,
    }[place.holds](place, bar)
    sign = plus(bar.x + BAR / 2, slot.y - WALL - PUT_IN_ROOM / 2) if place.is_new else ""
    return f'<g class="place" data-holds="{place.holds}">{drawn}{sign}</g>'


def _comb(place: Place, bar: Area) -> str:
    shares = [share(place.brood), share(place.pollen), share(place.stores)]
    whole = max(1.0, sum(shares))
    of_brood, of_pollen, of_stores = (bar.height * part / whole for part in shares)
    foot = bar.bottom - of_brood
    parts = (
        (brood, Area(bar.x, foot, BAR, of_brood)),
        (pollen, Area(bar.x, foot - of_pollen, BAR, of_pollen)),
        (stores, Area(bar.x, bar.y, BAR, of_stores)),
    )
    inside = "".join(draw(area) for draw, area in parts if area.height > 0)
    return rectangle(bar, "empty") + inside + _outline(bar)


def _foundation(_: Place, bar: Area) -> str:
    sheet = Area(bar.x + BAR / 2 - 5, bar.y + 6, 10, bar.height - 12)
    middle = stroke(vertical(bar.x + BAR / 2, sheet.y, sheet.bottom), 4, dashes="14 9")
    return rectangle(bar, "empty") + _outline(bar, dashes="5 7") + middle


def _dummy_board(_: Place, bar: Area) -> str:
    return rectangle(Area(bar.x + 5, bar.y, BAR - 10, bar.height), "ink")


def _feeder(_: Place, bar: Area) -> str:
    return rectangle(bar, "syrup") + stroke(waves(bar), 4) + _outline(bar)


def _gap(_: Place, bar: Area) -> str:
    ends = [(bar.y, bar.y + 14), (bar.bottom - 14, bar.bottom)]
    return stroke("".join(vertical(bar.x + BAR / 2, a, b) for a, b in ends), 4)


def _outline(bar: Area, dashes: str = "") -> str:
    path = (
        f"M{number(bar.x)} {number(bar.y)}H{number(bar.right)}V{number(bar.bottom)}"
        f"H{number(bar.x)}Z"
    )
    return stroke(path, 3, dashes=dashes)
