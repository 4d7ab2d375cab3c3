"""What the signs of the comb strip mean, drawn with the strip's own functions."""

from collections.abc import Callable

from combwright.figures.comb_box import changed, plus
from combwright.figures.comb_fills import (
    Area,
    brood,
    horizontal,
    pollen,
    rectangle,
    stores,
    stroke,
    vertical,
    waves,
)
from combwright.figures.comb_strip import label, svg

SAMPLE = 56.0
HEIGHT = 30.0
ROW = 46.0


def legend(*, columns: int = 6) -> str:
    """Draw what each sign of the comb strip means, as SVG in rows of so many samples."""
    widths = [
        max(_width(words) for words, _ in SAMPLES[column::columns]) for column in range(columns)
    ]
    lefts = [sum(widths[:column]) for column in range(columns)]
    drawn = []
    for i, (words, draw) in enumerate(SAMPLES):
        area = Area(lefts[i % columns] + 4, ROW * (i // columns) + 6, SAMPLE, HEIGHT)
        drawn.append(draw(area) + label(area.right + 14, area.bottom - 5, words))
    height = ROW * -(-len(SAMPLES) // columns)
    words = "Signs of the comb strip: " + ", ".join(words for words, _ in SAMPLES) + "."
    return svg("".join(drawn), sum(widths), height, title="Signs of the comb strip", words=words)


def _width(words: str) -> float:
    return SAMPLE + 14 + 17.6 * len(words) + 34


def _framed(draw: Callable[[Area], str]) -> Callable[[Area], str]:
    def drawn(area: Area) -> str:
        edge = horizontal(area.x, area.right, area.y) + vertical(area.right, area.y, area.bottom)
        edge += horizontal(area.right, area.x, area.bottom) + vertical(area.x, area.bottom, area.y)
        return draw(area) + stroke(edge, 3)

    return drawn


def _empty(area: Area) -> str:
    return rectangle(area, "empty")


def _foundation(area: Area) -> str:
    y = area.y + HEIGHT / 2
    edges = horizontal(area.x, area.right, area.y) + horizontal(area.x, area.right, area.bottom)
    middle = stroke(horizontal(area.x, area.right, y), 4, dashes="14 9")
    return rectangle(area, "empty") + stroke(edges, 3, dashes="5 7") + middle


def _bees(area: Area) -> str:
    edge = horizontal(area.x, area.right, area.y + 3)
    return rectangle(area, "bees") + stroke(edge, 5)


def _dummy_board(area: Area) -> str:
    return rectangle(Area(area.x, area.y + 5, area.width, HEIGHT - 10), "ink")


def _feeder(area: Area) -> str:
    return rectangle(area, "syrup") + stroke(waves(area), 4)


def _excluder(area: Area) -> str:
    y = area.y + HEIGHT / 2
    return stroke(horizontal(area.x, area.right, y), 12, dashes="30 8 6 8")


def _gap(area: Area) -> str:
    y = area.y + HEIGHT / 2
    ends = horizontal(area.x, area.x + 14, y) + horizontal(area.right - 14, area.right, y)
    return stroke(ends, 4)


def _put_in(area: Area) -> str:
    return plus(area.x + SAMPLE / 2, area.y + HEIGHT / 2)


def _changed(area: Area) -> str:
    return changed(area.x + SAMPLE / 2, area.y + HEIGHT / 2)


SAMPLES: tuple[tuple[str, Callable[[Area], str]], ...] = (
    ("brood", _framed(brood)),
    ("pollen", _framed(pollen)),
    ("empty cells", _framed(_empty)),
    ("stores", _framed(stores)),
    ("bees", _bees),
    ("foundation", _foundation),
    ("dummy board", _dummy_board),
    ("feeder", _framed(_feeder)),
    ("excluder", _excluder),
    ("put in", _put_in),
    ("set anew", _changed),
    ("gap", _gap),
)
