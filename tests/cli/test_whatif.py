"""``combwright whatif`` and ``combwright why``: one colony, from every side."""

import json
from pathlib import Path
from typing import Any

import pytest
from tests.cli.typed import Done, typed
from tests.noted import noted

LINES = (
    "2027-04-10,Top,Oak,national timber,2026,Dublin Airport,7,3,yes,2",
    "2027-04-10,Top,Ash,nuc 6 polystyrene,2026,Dublin Airport,3,1.5,yes,1",
    "2027-04-15,Top,Oak,,,,8,3.5,yes,1.5",
)
HARMS_AND_HOPES = ("frames of bees", "frames of brood", "stores kg", "room cells", "mites")


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return noted(tmp_path_factory.mktemp("asked"), *LINES)


def ask(book: Path, command: str, *words: str, on: str = "2027-04-17") -> Done:
    return typed(command, "Oak", "--on", on, "--book", str(book), *words)


def ways(book: Path, *words: str) -> dict[str, Any]:
    done = ask(book, "whatif", "--json", *words)
    assert done.returncode == 0, done.stderr
    return {way["name"]: way for way in json.loads(done.stdout)["ways"]}


def without_name(way: dict[str, Any]) -> dict[str, Any]:
    return {what: value for what, value in way.items() if what != "name"}


def test_no_idea_of_ones_own_is_the_plan_and_fares_as_the_plan(book: Path) -> None:
    """Under the same weather and luck the same doing ends the same, to the last mite."""
    found = ways(book)
    assert list(found) == ["the plan", "your idea", "nothing done"]
    assert without_name(found["your idea"]) == without_name(found["the plan"])


def test_more_feed_leaves_more_stores_and_an_idea_changes_nothing_else(book: Path) -> None:
    none, much = (ways(book, "--feed-g", grams) for grams in ("0", "6000"))
    assert much["your idea"]["feed_g"] == 6000
    assert much["your idea"]["set_up"] == much["the plan"]["set_up"] == none["the plan"]["set_up"]
    fed, unfed = (found["your idea"]["expected"]["stores kg"] for found in (much, none))
    assert fed["low"] > unfed["low"]
    assert fed["mid"] > unfed["mid"] + 1.0
    assert none["nothing done"] == much["nothing done"]


def test_a_super_comes_with_its_excluder_and_goes_with_it(book: Path) -> None:
    with_one = ways(book, "--supers", "1")["your idea"]["set_up"]
    without = ways(book, "--supers", "0")["your idea"]["set_up"]
    assert (with_one["supers"], with_one["excluder"]) == (1, True)
    assert (without["supers"], without["excluder"]) == (0, False)


def test_the_terminal_sets_three_ways_side_by_side(book: Path) -> None:
    shown = ask(book, "whatif", "--feed-g", "3000", "--sugar-percent", "60").stdout
    for word in ("the plan", "your idea", "nothing done", "3,000 g", *HARMS_AND_HOPES, "chance: "):
        assert word in shown, word


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["--feed-g", "90000"], "Give 0 to 20000 grams of feed."),
        (["--frames", "99"], "Give 0 to 36 frames."),
        (["--frames", "10", "--foundation", "12"], "foundation"),
        (["--sugar-percent", "10"], "10 % sugar cannot be fed."),
        (["--supers", "12"], "Give 0 to 8 supers."),
    ],
)
def test_an_idea_that_cannot_be_is_refused_in_a_sentence(
    book: Path, words: list[str], says: str
) -> None:
    done = ask(book, "whatif", *words)
    assert done.returncode == 2
    assert says in done.stderr


def test_why_tells_the_decisions_of_the_sheet(book: Path) -> None:
    told = json.loads(ask(book, "why", "--json").stdout)
    sheet = json.loads(typed("round", "--on", "2027-04-17", "--book", str(book), "--json").stdout)
    (oak,) = (each for each in sheet["colonies"] if each["colony"] == "Oak")
    assert told["decisions"] == oak["decisions"]
    assert told["notes"]["frames_of_bees"] == [["2027-04-10", 7.0], ["2027-04-15", 8.0]]


def test_why_gives_beginners_the_lesson_and_the_expert_numbers_only(book: Path) -> None:
    long, short = ask(book, "why").stdout, ask(book, "why", "--short").stdout
    for topic in ("queen", "room and warmth", "food", "next visit"):
        assert f"\n{topic}\n" in long
        assert f"\n{topic}\n" in short
    assert "noted frames of bees: 7 on 10 Apr, 8 on 15 Apr" in long
    assert "noted stores kg: 4.2 on 10 Apr, 3.2 on 15 Apr" in long  # 2 and 1½ frames of 2.1 kg
    assert "noted frames" not in short
    assert "The queen can lay only in drawn, empty, warm cells" in " ".join(long.split())
    assert "The queen can lay only" not in short


@pytest.mark.parametrize("command", ["why", "whatif"])
def test_a_colony_that_is_not_there_is_said(book: Path, command: str) -> None:
    done = typed(command, "Elm", "--on", "2027-04-17", "--book", str(book))
    assert done.returncode == 2
    assert "Elm" in done.stderr
