"""How each thing in a box looks: a colour, and a pattern that does without the colour.

Patterns are drawn as dashes and lines of their own, not as SVG ``pattern`` elements: those need
ids, and ids clash when a page holds more than one drawing.
"""

from collections.abc import Mapping
from dataclasses import dataclass

INK = "#111111"
COLOURS: Mapping[str, str] = {
    "ink": INK,
    "back": "#ffffff",
    "bees": "#7b8089",
    "brood": "#5c1a4c",
    "brood-dots": "#ffffff",
    "pollen": "#5cc0b4",
    "stores": "#ffcf5a",
    "empty": "#ffffff",
    "syrup": "#d5e6f5",
    "put-in": "#a3120a",
}
FONT = "'DejaVu Sans Mono', ui-monospace, monospace"


@dataclass(frozen=True, slots=True)
class Area:
    """A rectangle of the drawing, from its top left corner [0.1 mm]."""

    x: float
    y: float
    width: float
    height: float

    @property
    def right(self) -> float:
        """The right edge [0.1 mm]."""
        return self.x + self.width

    @property
    def bottom(self) -> float:
        """The lower edge [0.1 mm]."""
        return self.y + self.height


def number(value: float) -> str:
    """Write a coordinate with one decimal at most, so that equal drawings have equal bytes."""
    return f"{round(value, 1) + 0.0:.1f}".removesuffix(".0")


def rectangle(area: Area, fill: str, *, outline: float = 0) -> str:
    """Fill a rectangle with a named colour, with an outline of some width."""
    edge = f' stroke="{INK}" stroke-width="{number(outline)}"' if outline else ""
    box = " ".join(
        f'{name}="{number(value)}"'
        for name, value in (
            ("x", area.x),
            ("y", area.y),
            ("width", area.width),
            ("height", area.height),
        )
    )
    return f'<rect class="fill-{fill}" {box} fill="{COLOURS[fill]}"{edge}/>'


def stroke(path: str, width: float, *, colour: str = "ink", dashes: str = "") -> str:
    """Draw a line along a path in a named colour, dashed if asked."""
    dashed = f' stroke-dasharray="{dashes}"' if dashes else ""
    return (
        f'<path class="line-{colour}" d="{path}" fill="none" stroke="{COLOURS[colour]}" '
        f'stroke-width="{number(width)}"{dashed}/>'
    )


def vertical(x: float, top: float, bottom: float) -> str:
    """Return the path of an upright line."""
    return f"M{number(x)} {number(top)}V{number(bottom)}"


def horizontal(left: float, right: float, y: float) -> str:
    """Return the path of a level line."""
    return f"M{number(left)} {number(y)}H{number(right)}"


def brood(area: Area) -> str:
    """Dark, with two rows of light dots."""
    dots = [area.x + area.width * share for share in (0.3, 0.7)]
    path = "".join(vertical(x, area.bottom - 7, area.y) for x in dots)
    mark = stroke(path, 6, colour="brood-dots", dashes="6 12") if area.height > 7 else ""  # noqa: PLR2004 - a dot and its margin
    return rectangle(area, "brood") + mark


def pollen(area: Area) -> str:
    """Middle tone, with heavy level stripes."""
    middle = area.x + area.width / 2
    stripes = stroke(vertical(middle, area.bottom, area.y), area.width, dashes="5 6")
    return rectangle(area, "pollen") + stripes


def stores(area: Area) -> str:
    """Light, with slanting lines."""
    return rectangle(area, "stores") + stroke(slanting(area, step=11), 3)


def slanting(area: Area, *, step: float) -> str:
    """Return the path of lines at 45 degrees, cut off at the edges of the area."""
    parts = []
    offset = step / 2
    while offset < area.width + area.height:
        start = max(0.0, offset - area.height)
        end = min(area.width, offset)
        if end - start > 1:
            parts.append(
                f"M{number(area.x + start)} {number(area.y + offset - start)}"
                f"L{number(area.x + end)} {number(area.y + offset - end)}"
            )
        offset += step
    return "".join(parts)


def waves(area: Area) -> str:
    """Return the path of level waves: liquid."""
    rows, step = [], 16.0
    y = area.y + step * 0.75
    while y < area.bottom - 3:
        ripples = max(1, round(area.width / 30))
        half = area.width / ripples / 2
        rows.append(
            f"M{number(area.x)} {number(y)}"
            + f"q{number(half / 2)} -8 {number(half)} 0t{number(half)} 0" * ripples
        )
        y += step
    return "".join(rows)


def theme_css() -> str:
    """Return style rules by which a page can give every part another colour.

    Each colour is a custom property (``--comb-brood`` and so on) with the printed colour as its
    fallback; patterns stay, so that no theme can make colour the only sign.

    Examples
    --------
    >>> ".comb .fill-brood{fill:var(--comb-brood,#5c1a4c)}" in theme_css()
    True

    """
    rules = [".comb text{font-family:var(--comb-font,ui-monospace,monospace)}"]
    for name, colour in COLOURS.items():
        rules += [
            f".comb .{part}-{name}{{{what}:var(--comb-{name},{colour})}}"
            for part, what in (("fill", "fill"), ("line", "stroke"))
        ]
        rules.append(f".comb .fill-{name}[stroke]{{stroke:var(--comb-ink,{INK})}}")
    return "\n".join(rules) + "\n"
