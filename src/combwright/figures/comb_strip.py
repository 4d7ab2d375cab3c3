"""The comb strip: a colony's stack from above, as expected and as it should be left."""

from html import escape

from combwright.figures.comb_box import box_height, box_width, changed, draw_box, plus
from combwright.figures.comb_fills import (
    FONT,
    INK,
    Area,
    horizontal,
    rectangle,
    stroke,
    vertical,
    waves,
)
from combwright.figures.comb_words import describe, entrance_words, tray_words
from combwright.terms.combs import Box, StackView

TEXT = 29
LETTER = 17.5
LINE = 38
LEAST_WIDTH = 440.0
LONGEST_ENTRANCE = len("entrance shut")
SIGN_ROOM = 40.0
ARROW_ROOM = 60.0
FULL_ENTRANCE_MM = 430
FULL_TRAY_MM = 460


def comb_strip(
    before: StackView,
    after: StackView | None = None,
    *,
    title: str,
    captions: tuple[str, str] = ("expected", "leave it so"),
) -> str:
    """Draw a stack from above, or two side by side, as SVG.

    An ``svg`` element, 1 unit = 0.1 mm, for page and paper. It has no ids and no style of its own,
    so that many can stand on a page; see ``comb_fills.theme_css`` for its colours.

    ``before`` is the stack as it is expected to be found, ``after`` as it should stand until the
    next visit; what differs is marked with a plus. ``captions`` stand over the two.
    """
    columns = [(before, before, captions[0])]
    if after is not None:
        columns.append((after, before, captions[1]))
    heights = [_column_height(stack) for stack, _, _ in columns]
    widths = [_column_width(stack, caption) for stack, _, caption in columns]
    left, foot = 0.0, max(heights)
    drawn: list[str] = []
    for i, (stack, earlier, caption) in enumerate(columns):
        if i:
            drawn.append(_arrow(left + widths[0], foot - _floor_height() - 120))
            left += widths[0] + ARROW_ROOM
        drawn.append(_column(stack, earlier, caption, left, foot))
    width = left + widths[-1]
    words = [f"{caption}: {describe(stack)}" for stack, _, caption in columns]
    return svg("".join(drawn), width, foot, title=title, words=" ".join(words))


def comb_stack(stack: StackView, earlier: StackView, *, caption: str, title: str) -> str:
    """Draw one stack alone, with what differs from an earlier one marked."""
    height, width = _column_height(stack), _column_width(stack, caption)
    body = _column(stack, earlier, caption, 0.0, height)
    return svg(body, width, height, title=title, words=f"{caption}: {describe(stack)}")


def svg(body: str, width: float, height: float, *, title: str, words: str) -> str:
    """Wrap drawn parts into an image with a name and a description in words."""
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="comb" role="img" '
        f'aria-label="{escape(title)}" width="{width / 10:.1f}mm" height="{height / 10:.1f}mm" '
        f'viewBox="0 0 {width:.0f} {height:.0f}" font-family="{FONT}" font-size="{TEXT}">'
        f"<title>{escape(title)}</title><desc>{escape(words)}</desc>{body}</svg>"
    )


def label(x: float, y: float, words: str, *, is_strong: bool = False) -> str:
    """Write words with their foot at a point."""
    weight = ' font-weight="bold"' if is_strong else ""
    return (
        f'<text class="fill-ink" x="{x:.0f}" y="{y:.0f}" fill="{INK}"{weight}>'
        f"{escape(words)}</text>"
    )


def _stack_width(stack: StackView) -> float:
    return max((box_width(box) for box in stack.boxes), default=LEAST_WIDTH)


def _column_width(stack: StackView, caption: str) -> float:
    words = LETTER * (len(caption) + 2 + len(stack.cover))
    return SIGN_ROOM + max(_stack_width(stack), LEAST_WIDTH, words) + 10


def _floor_height() -> float:
    return LINE + 42.0


def _column_height(stack: StackView) -> float:
    boxes = sum(box_height(box) + 6 for box in stack.boxes)
    feeder = 50 if stack.feeder_over else 0
    excluder = 20 if stack.excluder else 0
    return LINE + 16 + feeder + boxes + excluder + _floor_height()


def _column(stack: StackView, earlier: StackView, caption: str, left: float, height: float) -> str:
    x = left + SIGN_ROOM
    width = _stack_width(stack)
    y = height - _column_height(stack)
    parts = [label(x, y + TEXT, caption, is_strong=True)]
    words_end = x + LETTER * (len(caption) + 1.6)
    parts += [_changed(words_end, y + TEXT, stack.cover, is_changed=stack.cover != earlier.cover)]
    y += LINE
    parts += [stroke(horizontal(x - 10, x + width + 4, y + 4), 8)]
    y += 16
    if stack.feeder_over:
        parts += [_feeder_over(x, y, width, is_new=not earlier.feeder_over)]
        y += 50
    for box, is_new, has_excluder in _from_the_top(stack, earlier):
        if has_excluder:
            parts += [_excluder(x, y + 8, width, is_new=not earlier.excluder)]
            y += 20
        parts += [draw_box(box, x, y, width)]
        y += box_height(box) + 6
        if is_new:
            parts += [plus(left + 20, y - 40)]
    return f'<g class="stack">{"".join(parts)}{_floor(stack, earlier, x, y, width)}</g>'


def _from_the_top(stack: StackView, earlier: StackView) -> list[tuple[Box, bool, bool]]:
    """List boxes from the top down, whether each is new, and whether the excluder lies on it."""
    rows = []
    kinds = [box.kind for box in stack.boxes]
    top_of_brood = max((i for i, kind in enumerate(kinds) if kind == "brood"), default=0)
    for i, box in enumerate(stack.boxes):
        stood = sum(old.kind == box.kind for old in earlier.boxes)
        is_new = kinds[: i + 1].count(box.kind) > stood
        rows.append((box, is_new, stack.excluder and i == top_of_brood))
    return rows[::-1]


def _changed(x: float, y: float, words: str, *, is_changed: bool) -> str:
    return (changed(x - 26, y - 11) if is_changed else "") + label(
        x, y, words, is_strong=is_changed
    )


def _feeder_over(x: float, y: float, width: float, *, is_new: bool) -> str:
    tub = Area(x, y, width, 44)
    words = label(x + 16, y + 32, "feeder", is_strong=True)
    liquid = stroke(waves(Area(x + 150, y - 2, width - 160, 44)), 4)
    return (
        rectangle(tub, "syrup", outline=6)
        + liquid
        + words
        + (plus(x - 24, y + 22) if is_new else "")
    )


def _excluder(x: float, y: float, width: float, *, is_new: bool) -> str:
    line = stroke(horizontal(x - 6, x + width + 4, y), 12, dashes="30 8 6 8")
    return line + (plus(x - 24, y) if is_new else "")


def _floor(stack: StackView, earlier: StackView, x: float, y: float, width: float) -> str:
    opening = width * min(stack.entrance_mm / FULL_ENTRANCE_MM, 1)
    door = x + (width - opening) / 2
    sides = horizontal(x - 3, door, y + 8) + horizontal(door + opening, x + width + 3, y + 8)
    posts = vertical(door, y, y + 22) + vertical(door + opening, y, y + 22)
    entrance, tray = entrance_words(stack), tray_words(stack)
    behind = x + LETTER * max(LONGEST_ENTRANCE, len(entrance)) + SIGN_ROOM - 12
    is_reset = round(stack.entrance_mm) != round(earlier.entrance_mm)
    return (
        stroke(sides, 16)
        + stroke(posts, 5)
        + _tray(stack, x, y + 26, max(width, LEAST_WIDTH))
        + _changed(x, y + 70, entrance, is_changed=is_reset)
        + _changed(behind, y + 70, tray, is_changed=tray != tray_words(earlier))
    )


def _tray(stack: StackView, x: float, y: float, width: float) -> str:
    """Draw the tray under the floor: dark as far as it is pushed in."""
    pushed_in = width * (1 - min(stack.tray_open_mm / FULL_TRAY_MM, 1))
    return rectangle(Area(x, y, width, 14), "back", outline=3) + rectangle(
        Area(x, y, pushed_in, 14), "ink"
    )


def _arrow(left: float, y: float) -> str:
    return stroke(f"M{left + 14:.0f} {y:.0f}h44m-18 -18l18 18l-18 18", 9)
