"""``combwright honey`` and ``combwright bees`` on the demo's papers."""

import json
import re
from datetime import date
from pathlib import Path
from uuid import UUID

import pytest
from tests.cli.typed import typed

from combwright.records.store.book_handle import Book
from combwright.services.book.book import add_entries
from combwright.services.demo import Paths
from combwright.terms.entries import Order, OrderNews

WORDS = (
    (("honey", "list"), "The next lot today"),
    (("honey", "trace", "L26232-1"), "Comfrey"),
    (("honey", "labels", "L26232-1", "--article", "9501101530003"), "(10)26232-1(3103)000340"),
    (("buyers", "list"), "Ryan: sale 26-1 of 13 June 2026, kept until 13 June 2031"),
    (("bees", "list"), "American foulbrood"),
    (("bees", "sheet", "26-1"), "Hand-over of a nuc"),
    (("bees", "register", "--since", "2026-01-01", "--until", "2027-01-01"), "Sheehan"),
)


@pytest.mark.parametrize(("words", "told"), WORDS, ids=lambda one: " ".join(one[:2]))
def test_each_tells_in_words_and_as_json(demo: Paths, words: tuple[str, ...], told: str) -> None:
    done = typed(*words, "--book", str(demo.book))
    assert done.returncode == 0, done.stderr
    assert told in done.stdout
    assert json.loads(typed(*words, "--book", str(demo.book), "--json").stdout)


def test_papers_are_written(demo: Paths, tmp_path: Path) -> None:
    paper, cells = tmp_path / "a.pdf", tmp_path / "a.csv"
    book = ("--book", str(demo.book), "--pdf", str(paper))
    for words in (*(("bees", "sheet", one) for one in ("26-1", "26-2", "26-3")),
                  ("honey", "labels", "L26275-1", "--sheet", "8")):  # fmt: skip
        assert typed(*words, *book).returncode == 0
        assert paper.read_bytes().startswith(b"%PDF")
    for words in (("honey", "trace", "Summer 2026"), ("bees", "register", "--since", "2026-01-01")):
        assert typed(*words, *book, "--csv", str(cells)).returncode == 0
        assert "Seal" in cells.read_text("utf-8")


def test_no_buyer_is_deleted_without_being_sure(demo: Paths) -> None:
    done = typed("buyers", "delete", "Byrne", "--book", str(demo.book))
    assert done.returncode == 1
    assert "order No 1" in done.stdout
    assert "Nothing was deleted" in done.stdout
    assert typed("buyers", "delete", "--book", str(demo.book)).returncode == 2
    early = typed("buyers", "delete", "Ryan", "--sure", "--book", str(demo.book))
    assert (early.returncode, "13 June 2031" in early.stderr) == (2, True)


def test_a_buyer_is_deleted_for_good(tmp_path: Path) -> None:
    path, day = tmp_path / "a.book", date(2020, 3, 1)
    asked = Order(id=UUID(int=1), on=day, order="7", customer="Byrne", wanted_by=date(2020, 6, 1))
    gone = OrderNews(id=UUID(int=2), on=day, order="7", event="cancelled")
    add_entries(Book(path), [asked, gone])
    book = ("--book", str(path))
    done = typed("buyers", "delete", "Byrne", "--sure", *book)
    assert (done.returncode, "Deleted in 1 note" in done.stdout) == (0, True), done.stderr
    assert "No buyer" in typed("buyers", "list", *book).stdout
    due = typed("buyers", "delete", "--due", "--sure", "--json", *book)
    assert json.loads(due.stdout)["deleted"] == 0


def test_figures_are_held_against_the_law() -> None:
    assert "at most 5" in typed("honey", "analysis", "--plant", "clover", "--sucrose", "6").stdout
    move = ("bees", "eu-move", "--afb-km", "2.9", "--afb-days", "29")
    assert "within 3 km" in typed(*move).stdout
    assert json.loads(typed(*move, "--json").stdout)["faults"]
    assert json.loads(typed("honey", "analysis", "--hmf", "40", "--json").stdout)["faults"] == []


def test_days_of_a_register_that_are_turned_round_are_refused(demo: Paths) -> None:
    words = ("bees", "register", "--since", "2027-01-01", "--until", "2026-01-01")
    done = typed(*words, "--book", str(demo.book))
    assert done.returncode == 2
    assert "1 January 2026, the last day, lies before the first, 1 January 2027" in done.stderr


def test_what_is_told_in_the_terminal_stands_under_its_title_in_whole_sentences(
    demo: Paths,
) -> None:
    sheet = typed("bees", "sheet", "26-1", "--book", str(demo.book)).stdout
    assert "Treatments in the last 12 months\n  None" in sheet
    duties = typed("bees", "list", "--book", str(demo.book)).stdout
    assert re.search(r"\. [a-z]", duties) is None
    told = typed("bees", "register", "--since", "2026-01-01", "--until", "2026-12-31",
                 "--book", str(demo.book)).stdout  # fmt: skip
    assert "13 June 2026" in " ".join(told.split())
    assert "2026-06-13" not in told
