"""The round sheet as PDF: colonies in working order, then bench list and load list."""

import json
from collections.abc import Mapping
from importlib.resources import files
from typing import Any, Literal

import typst

from combwright.figures.comb_legend import legend
from combwright.figures.comb_strip import comb_strip
from combwright.figures.comb_words import describe
from combwright.paper.printable import printable
from combwright.paper.sheet_words import (
    bench_words,
    colony_words,
    day_words,
    everywhere_words,
    stop_words,
)
from combwright.planning.at_every_colony import Everywhere, everywhere
from combwright.planning.sheet import ColonySheet, RoundSheet

Paper = Literal["a4", "a5"]
ROOM_MM: Mapping[Paper, int] = {"a4": 265, "a5": 175}


def round_pdf(sheet: RoundSheet, *, paper: Paper = "a4") -> bytes:
    """Print a round sheet as an accessible PDF (PDF/UA-1).

    The same sheet gives the same bytes on every machine: its date is the date of the round, its
    fonts are those that come with Typst.
    """
    return bytes(
        typst.compile(
            files("combwright.paper").joinpath("round.typ").read_bytes(),
            sys_inputs={"sheet": json.dumps(sheet_content(sheet, paper), ensure_ascii=False)},
            ignore_system_fonts=True,
            pdf_standards="ua-1",
        )
    )


def sheet_content(sheet: RoundSheet, paper: Paper) -> dict[str, Any]:
    """Return everything that the template prints; it is set as text, never read as markup."""
    said = everywhere(sheet)
    in_order = sorted(sheet.colonies, key=lambda colony: colony.order)
    return {
        "paper": paper,
        "room_mm": ROOM_MM[paper],
        "date": [sheet.on.year, sheet.on.month, sheet.on.day],
        "day": day_words(sheet.on),
        "version": printable(sheet.version),
        "weather": printable(sheet.weather),
        "yards": [printable(yard) for yard in sheet.yards],
        "notices": [printable(notice) for notice in sheet.notices],
        "legend": legend(columns=6 if paper == "a4" else 4),
        "colonies": [_colony(colony, said, ROOM_MM[paper]) for colony in in_order],
        "everywhere": everywhere_words(said),
        "bench": bench_words(sheet.bench),
        "load": [stop_words(stop) for stop in sheet.load],
    }


def _colony(colony: ColonySheet, said: Everywhere, room_mm: float) -> dict[str, Any]:
    words = colony_words(colony, said)
    strip = comb_strip(colony.before, colony.after, title=f"Stack of {words['colony']}")
    seen = f"Expected: {describe(colony.before)} Leave it so: {describe(colony.after)}"
    strip_mm = float(strip.split('height="', 1)[1].split("mm", 1)[0])
    return words | {
        "strip": strip,
        "strip_words": seen,
        "may_be_long": strip_mm + _text_mm(words) > room_mm,
    }


def _text_mm(words: dict[str, Any]) -> float:
    """Estimate, rather too high, how much of a page the words about a colony take."""
    lines = [*words["jobs"], *words["because"], *words["questions"]]
    lines += [words["colony"], words["chances"]]
    lines += [" ".join((b["found"], *b["do"], b["because"])) for b in words["branches"]]
    return 15 + sum(4.6 * (1 + len(line) / 40) for line in lines)
