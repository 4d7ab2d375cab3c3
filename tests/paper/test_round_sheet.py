"""The round on paper: everything on it, nothing twice, nothing read as markup."""

import io
import re
from collections.abc import Callable
from functools import cache
from itertools import pairwise
from time import sleep

import pytest
from pdfminer.high_level import extract_pages
from pdfminer.layout import LTChar, LTPage, LTTextContainer, LTTextLine

from combwright.paper.pocket_card import card_pdf
from combwright.paper.round_sheet import Paper, round_pdf
from combwright.planning.at_every_colony import everywhere
from combwright.planning.sheet import Handed, LeftOut, RoundSheet
from combwright.terms.combs import Box, Place, StackView
from combwright.terms.place_word import PlaceWord

MOST_A_PAGE = 6
MakeRound = Callable[..., RoundSheet]


@cache  # the same paper is looked at by many tests, and takes seconds to read
def pages(pdf: bytes) -> list[LTPage]:
    return list(extract_pages(io.BytesIO(pdf)))


def words(pdf: bytes) -> str:
    boxes = [box for page in pages(pdf) for box in page if isinstance(box, LTTextContainer)]
    return " ".join(" ".join(box.get_text() for box in boxes).split())


def letters(page: LTPage) -> list[LTChar]:
    boxes = [box for box in page if isinstance(box, LTTextContainer)]
    lines = [line for box in boxes for line in box if isinstance(line, LTTextLine)]
    return [letter for line in lines for letter in line if isinstance(letter, LTChar)]


def without_spaces(text: str) -> str:
    """Take out the spaces and hyphens at which a line may have been broken."""
    return "".join(text.split())


def test_the_same_round_gives_the_same_bytes(sheet: RoundSheet) -> None:
    first = round_pdf(sheet)
    sleep(1.1)  # the clock must tick: PDFs like to carry the time of printing
    assert round_pdf(sheet) == first


def test_the_pdf_declares_itself_accessible(sheet: RoundSheet) -> None:
    # ISO 14289-1 (PDF/UA-1) asks for this mark in the metadata; Typst refuses to write it for a
    # document without title, language, or words for its images.
    assert b"pdfuaid:part>1<" in round_pdf(sheet)


def test_another_date_gives_other_bytes(sheet: RoundSheet) -> None:
    later = sheet.model_copy(update={"on": sheet.on.replace(day=15)})
    assert round_pdf(later) != round_pdf(sheet)


@pytest.mark.parametrize("paper", ["a4", "a5", "large"])
def test_all_that_the_keeper_needs_is_on_paper(sheet: RoundSheet, paper: Paper) -> None:
    text = without_spaces(words(round_pdf(sheet, paper=paper)))
    for colony in sheet.colonies:
        lines = [*colony.jobs, *colony.because, *colony.questions]
        lines += [f"If you find {branch.found}" for branch in colony.branches]
        lines += [step for branch in colony.branches for step in branch.do]
        lines += [f"{colony.portion.litres:.1f} L syrup"] if colony.portion.syrup_g else ["no feed"]
        for line in lines:
            assert without_spaces(line) in text, line
    for line in [sheet.weather, *sheet.notices, *sheet.bench.steps, *sheet.load[0].items]:
        assert without_spaces(line) in text, line
    for line in (f"{sheet.bench.sugar_kg:.1f} kg", f"{sheet.bench.water_kg:.1f} kg"):
        assert without_spaces(line) in text


def test_who_gives_to_whom_and_what_is_left_for_another_day_stand_on_paper(
    sheet: RoundSheet,
) -> None:
    handed = Handed(
        what="comb of stores", count=2, giver="Ash", giver_yard="Alder Bank", taker="Birch",
        taker_yard="Mill Orchard",
    )  # fmt: skip
    left = LeftOut(colony="Elder", yard="Alder Bank", minutes=9.0, costs=4.0, cannot_wait=False)
    changed = sheet.model_copy(update={"handed": [handed], "left_out": [left]})
    text = without_spaces(words(round_pdf(changed)))
    for line in ("2 combs of stores from Ash to Birch at Mill Orchard", left.said):
        assert without_spaces(line) in text
    assert "No time for today" not in words(round_pdf(sheet))
    waits = left.model_copy(update={"colony": sheet.colonies[0].colony})
    waiting = words(round_pdf(sheet.model_copy(update={"left_out": [waits]})))
    assert waiting.count("no time today") == 1


def test_every_colony_has_one_block_in_working_order(sheet: RoundSheet) -> None:
    shuffled = sheet.model_copy(update={"colonies": sheet.colonies[::-1]})
    text = words(round_pdf(shuffled))
    names = [colony.colony for colony in sheet.colonies]
    assert all(text.count(name) == 2 for name in names)  # its block, and its reasons at the end
    assert sorted(names, key=text.index) == names


def test_a_block_stays_on_one_page_with_room_to_write(sheet: RoundSheet) -> None:
    for page in pages(round_pdf(sheet)):
        text = without_spaces("".join(letter.get_text() for letter in letters(page)))
        # The first line of every block and its last are on the same page.
        assert text.count("remark") == text.count("nonecups")
        assert text.count("remark") <= MOST_A_PAGE


@pytest.mark.parametrize("paper", ["a4", "a5"])
def test_colonies_have_the_room_and_what_holds_at_all_stands_behind_them(
    sheet: RoundSheet, paper: Paper
) -> None:
    told = [
        without_spaces("".join(letter.get_text() for letter in letters(page)))
        for page in pages(round_pdf(sheet, paper=paper))
    ]
    blocks = [text.count("nonecups") for text in told]
    with_any = [count for count in blocks if count]
    assert sum(with_any) / len(with_any) >= (3 if paper == "a4" else 1.5)
    for branch in everywhere(sheet).branches:
        found = without_spaces(branch.found)
        assert not any(found in text for text in told[: len(with_any) - 1])


def test_what_is_written_stands_in_the_order_of_the_notebook(sheet: RoundSheet) -> None:
    row = "beesbroodstoreseggsyesnoqueenseencellsnonecupschargedsealedfeed"
    first, *_ = pages(round_pdf(sheet))
    across = sorted(letters(first), key=lambda letter: (round(letter.y0), letter.x0))
    assert row in without_spaces("".join(letter.get_text() for letter in across))


def test_the_weather_of_the_day_stands_on_top(sheet: RoundSheet) -> None:
    text = words(round_pdf(sheet, day_weather=["Weather: 9 to 15 °C, wind 3 m/s."]))
    assert text.index("Weather: 9 to 15 °C") < text.index(sheet.colonies[0].colony)


def test_a_sheet_says_apiary_where_the_keeper_does(sheet: RoundSheet) -> None:
    said = words(round_pdf(sheet, words=PlaceWord("apiary")))
    assert "Apiaries: " in said
    assert "For every apiary" in said
    assert "yard" not in said.lower()


def test_a_card_has_a_line_a_hive_and_room_to_write(sheet: RoundSheet) -> None:
    lines = {each.colony: f"Line of {each.colony}" for each in sheet.colonies}
    text = words(card_pdf(sheet, lines, day_weather=["Weather: fine."]))
    assert all(text.count(line) == 1 for line in lines.values())
    assert text.count("eggs") == len(lines)


@pytest.mark.parametrize(("paper", "most"), [("a4", 7), ("a5", 14), ("large", 13)])
def test_pages_are_few_numbered_and_dated(sheet: RoundSheet, paper: Paper, most: int) -> None:
    printed = pages(round_pdf(sheet, paper=paper))
    assert len(printed) <= most
    for i, page in enumerate(printed):
        text = without_spaces("".join(letter.get_text() for letter in letters(page)))
        assert f"page{i + 1}of{len(printed)}" in text
        assert "Tuesday14April2026·Combwright0.1.0" in text
        assert "bylabelandlocallawonly" in text


def test_no_letter_is_smaller_than_eight_points(sheet: RoundSheet) -> None:
    for page in pages(round_pdf(sheet)):
        assert min(letter.size for letter in letters(page)) >= 7.99


def test_nothing_is_printed_off_the_page(sheet: RoundSheet) -> None:
    for page in pages(round_pdf(sheet)):
        for letter in letters(page):
            assert 0 < letter.x0 < letter.x1 < page.width
            assert 0 < letter.y0 < letter.y1 < page.height


HOSTILE = [
    '#panic("no") #let x = 1',
    "*bold* _under_ `code` $x$",
    '"quoted" \\ <label> @ref </svg>',
    "= Heading // comment /* x */",
    ']] #eval("1") [[ {{ }}',
    "%PDF-1.7 \x00\x07 endobj",
    "https://example.org/~a",
]


@pytest.mark.parametrize("name", HOSTILE)
def test_hostile_names_are_printed_as_they_are(name: str, make_round: MakeRound) -> None:
    shown = without_spaces(name.replace("\x00", "").replace("\x07", ""))
    printed = words(round_pdf(make_round((name,), ("Yard",))))
    assert shown in without_spaces(printed)


@pytest.mark.parametrize(
    "name",
    [
        "🐝🐝🐝",
        "👩‍🌾 farm",
        "מושב הדבש",
        "منحل العسل",
        "پگاه نحل",
        "ไทย 蜂蜜 かな",
        "Z͑ͫ̓ͪ̂ͫ̽͏̴̙̤̞͉͚̯̞̠͍A",
        "a\u202eb\u2066c",
        "x" * 60,
        "\U0001d4e0ueen",
        "\ud83d",
    ],
)
def test_any_script_can_be_printed(name: str, make_round: MakeRound) -> None:
    for paper in ("a4", "a5"):
        pdf = round_pdf(make_round((name, name), (name,)), paper=paper)
        assert pdf.startswith(b"%PDF")


def test_long_words_do_not_push_the_rest_off_the_page(make_round: MakeRound) -> None:
    for page in pages(round_pdf(make_round(("W" * 60,), ("M" * 60,)))):
        assert max(letter.x1 for letter in letters(page)) < page.width


def test_a_colony_with_too_much_for_one_page_is_still_printed_whole(make_round: MakeRound) -> None:
    sheet = make_round(("Long",), ("Yard",))
    jobs = [f"job number {i} of very many" for i in range(120)]
    long = sheet.colonies[0].model_copy(update={"jobs": jobs})
    text = words(round_pdf(sheet.model_copy(update={"colonies": [long]})))
    assert all(job in text for job in jobs)


@pytest.mark.parametrize("paper", ["a4", "a5"])
@pytest.mark.parametrize("count", [6, 9, 12, 15, 18, 21, 25, 30])
def test_no_block_runs_into_the_foot_of_the_page(
    count: int, paper: Paper, make_round: MakeRound
) -> None:
    sheet = make_round(("Long", "Next"), ("Yard",))
    jobs = [f"job {i}: MOVE THE FRAME WITH MOST OF THE BROOD" for i in range(count)]
    long = sheet.colonies[0].model_copy(update={"jobs": jobs})
    printed = pages(round_pdf(sheet.model_copy(update={"colonies": [long]}), paper=paper))
    for page in printed:
        foot = [letter for letter in letters(page) if letter.y0 < 19 * 72 / 25.4 - 6]
        text = "".join(letter.get_text() for letter in foot)
        assert "MOVE" not in text
        assert "remark" not in text


def test_a_tall_stack_fits_the_page(make_round: MakeRound) -> None:
    sheet = make_round(("Tower",), ("Yard",))
    super_box = Box("super", (Place("comb", stores=0.9),) * 10)
    brood_box = Box("brood", (Place("comb", brood=0.5, bees=1),) * 12)
    tower = StackView((brood_box,) * 3 + (super_box,) * 8, True, True, 430, 460, "vented")  # noqa: FBT003 - excluder and feeder
    colony = sheet.colonies[0].model_copy(update={"before": tower, "after": tower})
    for paper in ("a4", "a5"):
        printed = pages(round_pdf(sheet.model_copy(update={"colonies": [colony]}), paper=paper))
        for page in printed:
            assert min(letter.y0 for letter in letters(page)) > 0
            assert max(letter.x1 for letter in letters(page)) < page.width


def test_an_empty_round_prints_its_lists(sheet: RoundSheet) -> None:
    bare = sheet.model_copy(update={"colonies": [], "load": [], "notices": []})
    text = words(round_pdf(bare))
    assert "Bench list" in text
    assert "0 colonies" in text


def lines_of(page: LTPage) -> list[LTTextLine]:
    boxes = [box for box in page if isinstance(box, LTTextContainer)]
    return [line for box in boxes for line in box if isinstance(line, LTTextLine)]


@pytest.mark.parametrize("paper", ["a4", "a5", "large"])
def test_a_number_stays_on_one_line_with_its_unit(sheet: RoundSheet, paper: Paper) -> None:
    units = re.compile(r"^(%|(g|kg|L|mm|°C|am|pm|[A-Z][a-z]{2})\b)")
    for page in pages(round_pdf(sheet, paper=paper)):
        told = [line.get_text().strip() for line in lines_of(page)]
        torn = [two for two in pairwise(told) if two[0][-1:].isdigit() and units.match(two[1])]
        assert not torn


def test_the_reasons_are_shared_out_over_the_width_of_the_page(sheet: RoundSheet) -> None:
    """In columns that fill one after the other a short round left half a page empty."""
    lefts = {
        order: line.x0 / page.width
        for page in pages(round_pdf(sheet))
        for line in lines_of(page)
        for order in (1, 2, 3, 4)
        if line.get_text().startswith(f"{order} {sheet.colonies[order - 1].colony}.")
    }
    assert lefts[1] == lefts[3] < 0.1
    assert lefts[2] == lefts[4] > 0.5


def test_nobody_is_told_to_do_at_every_colony_what_is_asked_of_none(sheet: RoundSheet) -> None:
    assert not everywhere(sheet).jobs
    assert any(not colony.jobs for colony in sheet.colonies)
    assert "what is done at every colony" not in words(round_pdf(sheet))
