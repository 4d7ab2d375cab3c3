"""Plans of colonies that are kept: the same answers, and only what is new is made again."""

from dataclasses import fields, replace
from datetime import timedelta
from pathlib import Path
from typing import Any
from uuid import UUID

import pytest
from tests.demo import FEW, copied
from tests.noted import noted

from combwright.records.store.book_handle import Book
from combwright.services.book.book import add_entries
from combwright.services.demo import ON, Paths
from combwright.services.rounds.from_book import round_sheet
from combwright.services.rounds.kept_plans import KeptPlans, Planned, rests_on
from combwright.services.rounds.situations import AskedRound, Beside, Situations, situations_of
from combwright.terms.entries import End, Visit

MEMBERS = 20
LINES = (
    "2027-04-17,Top,Oak,national timber,2026,Dublin Airport,7,3,yes,2",
    "2027-04-17,Low,Ash,nuc 6 polystyrene,2026,Dublin Airport,3,1.5,yes,1",
)


@pytest.fixture(scope="module")
def situations(demo: Paths, tmp_path_factory: pytest.TempPathFactory) -> Situations:
    book = Book(copied(demo, tmp_path_factory.mktemp("plans")))
    return situations_of(book, AskedRound(ON, members=FEW))


def test_an_unchanged_book_is_answered_from_what_was_planned(tmp_path: Path) -> None:
    """By this program, and by another that finds the plans in the folder."""
    book, folder = Book(noted(tmp_path, *LINES)), tmp_path / "plans"
    kept = KeptPlans(folder)
    first = round_sheet(book, ON, members=MEMBERS, kept=kept)
    assert kept.made == len(kept) == len(first.colonies)
    again = round_sheet(book, ON, members=MEMBERS, kept=kept)
    assert again == first == round_sheet(book, ON, members=MEMBERS)
    assert len(kept) == len(first.colonies)
    assert {path.stat().st_mode & 0o777 for path in folder.iterdir()} == {0o600}
    another = KeptPlans(folder)
    assert round_sheet(book, ON, members=MEMBERS, kept=another) == first
    assert another.made == 0


@pytest.mark.parametrize("damage", ["", "no plan", "0\n{}"])
def test_a_damaged_plan_counts_as_none(tmp_path: Path, damage: str) -> None:
    gone = Planned(sheet=None)
    KeptPlans(tmp_path).put("a", gone)
    assert KeptPlans(tmp_path).get("a") == gone
    (file,) = tmp_path.iterdir()
    file.write_text(damage, "utf-8")
    assert KeptPlans(tmp_path).get("a") is None


def test_a_folder_that_cannot_be_written_costs_no_answer(tmp_path: Path) -> None:
    (tmp_path / "a file").write_text("mine")
    kept = KeptPlans(tmp_path / "a file")
    kept.put("a", Planned(sheet=None))
    assert kept.get("a") is not None
    assert kept.get("b") is None


def test_only_what_a_note_touches_is_followed_and_planned_again(tmp_path: Path) -> None:
    """And the round is the same as one that was planned anew."""
    book, kept = Book(noted(tmp_path, *LINES)), KeptPlans()
    round_sheet(book, ON, members=MEMBERS, kept=kept)
    made = kept.made
    seen = Visit(id=UUID(int=1), on=ON - timedelta(days=1), colony="Ash", frames_of_bees=2.0)
    add_entries(book, [seen])
    after = round_sheet(book, ON, members=MEMBERS, kept=kept)
    assert kept.made == made + 1
    assert after == round_sheet(book, ON, members=MEMBERS, kept=KeptPlans())


def test_a_colony_that_has_ended_is_not_followed_again(tmp_path: Path) -> None:
    book, kept = Book(noted(tmp_path, *LINES)), KeptPlans()
    add_entries(book, [End(id=UUID(int=1), on=ON - timedelta(days=1), colony="Ash", reason="dead")])
    first = round_sheet(book, ON, members=MEMBERS, kept=kept)
    assert [each.colony for each in first.colonies] == ["Oak"]
    assert kept.made == 2
    assert round_sheet(book, ON, members=MEMBERS, kept=kept) == first
    assert kept.made == 2


@pytest.mark.parametrize("name", [each.name for each in fields(Beside)])
def test_all_that_the_book_says_beside_a_belief_makes_another_plan(
    situations: Situations, monkeypatch: pytest.MonkeyPatch, name: str
) -> None:
    before = rests_on("Bramble", situations)
    changed: Any = {name: () if name == "history" else "another"}
    other = replace(situations.beside("Bramble", ""), **changed)
    monkeypatch.setattr(Situations, "beside", lambda *_: other)
    assert rests_on("Bramble", situations) != before


def test_another_day_or_weather_is_another_plan(situations: Situations) -> None:
    later = replace(situations, asked=replace(situations.asked, on=ON + timedelta(days=1)))
    tables = {yard: table + 0.001 for yard, table in situations.around.tables.items()}
    warmer = replace(situations, around=replace(situations.around, tables=tables, _prints={}))
    keys = {rests_on("Bramble", each) for each in (situations, later, warmer)}
    assert len(keys) == 3
