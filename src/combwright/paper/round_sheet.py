"""The round sheet as PDF: colonies in working order, then bench list and load list."""

from collections.abc import Mapping, Sequence
from datetime import date
from typing import Any, Literal

from combwright.figures.comb_legend import legend
from combwright.figures.comb_strip import comb_stack
from combwright.figures.comb_words import describe
from combwright.paper.printable import printable
from combwright.paper.sheet_words import (
    bench_words,
    colony_words,
    day_words,
    everywhere_words,
    stop_words,
    usual_kit,
)
from combwright.paper.typeset import READ_ALOUD, typeset
from combwright.planning.at_every_colony import Everywhere, everywhere
from combwright.planning.sheet import ColonySheet, RoundSheet
from combwright.services.rounds.from_book import NOTICES
from combwright.terms.place_word import USUAL, PlaceWord

Paper = Literal["a4", "a5", "large"]
ROOM_MM: Mapping[Paper, int] = {"a4": 265, "a5": 175, "large": 265}
LETTERS: Mapping[Paper, float] = {"a4": 1.0, "a5": 1.0, "large": 1.6}


def round_pdf(
    sheet: RoundSheet,
    *,
    paper: Paper = "a4",
    day_weather: Sequence[str] = (),
    words: PlaceWord = USUAL,
) -> bytes:
    """Print a round sheet as an accessible PDF (PDF/UA-1), with the weather of its day.

    The same sheet gives the same bytes on every machine: its date is the date of the round, its
    fonts are those that come with Typst.
    """
    content = sheet_content(sheet, paper)
    content["day_weather"] = [printable(line) for line in day_weather]
    return typeset("round", words.into_data(content), READ_ALOUD)


def sheet_content(sheet: RoundSheet, paper: Paper) -> dict[str, Any]:
    """Return everything that the template prints; it is set as text, never read as markup."""
    said = everywhere(sheet)
    usual = usual_kit(sheet.load)
    waits = {left.colony for left in sheet.left_out}
    in_order = sorted(sheet.colonies, key=lambda colony: colony.order)
    return {
        "paper": paper,
        "room_mm": ROOM_MM[paper],
        "date": [sheet.on.year, sheet.on.month, sheet.on.day],
        "day": day_words(sheet.on),
        "version": printable(sheet.version),
        "weather": printable(sheet.weather),
        "yards": [printable(yard) for yard in sheet.yards],
        "called": "Yards" if len(sheet.yards) > 1 else "Yard",
        "each": "For every yard",
        "notices": [printable(each) for each in sheet.notices if each not in NOTICES],
        "usual": [printable(each) for each in sheet.notices if each in NOTICES],
        "legend": legend(columns=4 if paper == "a5" else 6),
        "colonies": [
            _colony(colony, said, sheet.on, paper) | {"waits": colony.colony in waits}
            for colony in in_order
        ],
        "everywhere": everywhere_words(said),
        "handed": [printable(each.said) for each in sheet.handed],
        "left_out": [printable(each.said) for each in sheet.left_out],
        "bench": bench_words(sheet.bench),
        "usual_kit": [printable(item) for item in usual],
        "load": [stop_words(stop, usual) for stop in sheet.load],
    }


def _colony(colony: ColonySheet, said: Everywhere, on: date, paper: Paper) -> dict[str, Any]:
    words = colony_words(colony, said, on)
    strips = _strips(colony, words["colony"])
    if paper == "a5":
        strips = strips[-1:]  # as it should be left: what is expected is said in words beside it
    tall = [float(one["svg"].split('height="', 1)[1].split("mm", 1)[0]) for one in strips]
    strip_mm = max(tall)
    text_mm = LETTERS[paper] * _text_mm(words)
    return words | {"strips": strips, "may_be_long": strip_mm + text_mm > ROOM_MM[paper]}


def _strips(colony: ColonySheet, name: str) -> list[dict[str, str]]:
    """Draw the stack as expected and as it should be left, or once where nothing changes."""
    shown = [("expected", colony.before), ("leave it so", colony.after)]
    if colony.before == colony.after:
        shown = [("leave as it is", colony.before)]
    return [
        {
            "svg": comb_stack(stack, colony.before, caption=caption, title=f"{name}, {caption}"),
            "words": f"{caption}: {describe(stack)}",
        }
        for caption, stack in shown
    ]


def _text_mm(words: dict[str, Any]) -> float:
    """Estimate, rather too high, how much of a page the words about a colony take."""
    lines = [*words["jobs"], *words["questions"], words["colony"]]
    lines += [" ".join((b["found"], *b["do"])) for b in words["branches"]]
    return 28 + sum(4.6 * (1 + len(line) / 40) for line in lines)
