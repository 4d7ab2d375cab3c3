"""What one colony or yard has wrong never takes the others' round with it."""

import json
from datetime import date
from pathlib import Path

import pytest
from tests.noted import noted
from tests.records.samples import noted_as
from tests.services.rounds.conftest import LINES

from combwright.records.store.book_handle import Book
from combwright.records.store.kept_entries import keep
from combwright.services.progress import Step
from combwright.services.rounds.from_book import round_sheet
from combwright.services.rounds.kept_plans import KeptPlans, Planned
from combwright.services.rounds.kept_rounds import Rounds

ON = date(2027, 4, 10)


def test_an_older_book_s_oddities_are_said_and_the_round_goes_on(tmp_path: Path) -> None:
    """Before the gate knew better, a book could take all of these."""
    book = Book(noted(tmp_path, *LINES))
    odd = [
        noted_as("yard", 1, "2027-04-04", yard="Low", climate="Atlantis", district="sea floor"),
        noted_as("colony", 2, "2027-04-03", colony="Yew", yard="Top", hive="a skep"),
        noted_as("visit", 3, "9999-12-31", colony="Oak", frames_of_bees=4),
        noted_as("visit", 4, "2037-04-03", colony="Elm", frames_of_bees=4),
    ]
    with book.writing() as db:
        keep(db, odd)
    sheet = round_sheet(book, ON, members=20)
    assert {each.colony for each in sheet.colonies} == {"Oak", "Ash", "Elm"}
    said = " ".join(sheet.notices)
    assert "“Yew” is left out of this round" in said
    assert "a skep" in said
    assert "Atlantis" in said
    assert "sea floor" in said
    rounds = Rounds(book, members=20)
    assert rounds.begin(ON, 7).future.result(60).on == ON
    rounds.close()
    assert book.now().next_round(date(2027, 4, 5)) == date(2027, 4, 5)


def test_notes_from_before_anybody_s_time_are_left_aside_with_a_sentence(tmp_path: Path) -> None:
    """They were lived through from their day on, and from 1917 back they stopped the round."""
    book = Book(noted(tmp_path, *LINES))
    expected = round_sheet(book, ON, members=20)
    days = ("1989-12-31", "1910-05-01", "0001-01-01")
    old = [noted_as("visit", n, on, colony="Oak", frames_of_bees=4) for n, on in enumerate(days)]
    with book.writing() as db:
        keep(db, old)
    sheet = round_sheet(book, ON, members=20)
    assert sheet.colonies == expected.colonies
    said = set(sheet.notices) - set(expected.notices)
    assert len(said) == len(days)
    assert all("“Oak” does not count: it lies before 1990" in each for each in said)


class Forgetful(KeptPlans):
    """Plans that are kept, but of one colony: there keeping fails as a fault of our own does."""

    def put(self, key: str, planned: Planned) -> None:
        if planned.sheet is not None and planned.sheet.colony == "Ash":
            raise ValueError(planned.sheet.colony)
        super().put(key, planned)


def test_a_mistake_of_our_own_costs_one_colony_and_is_logged_without_its_name(
    tmp_path: Path, caplog: pytest.LogCaptureFixture
) -> None:
    book = Book(noted(tmp_path, *LINES))
    told: list[Step] = []
    sheet = round_sheet(book, ON, members=20, kept=Forgetful(tmp_path), progress=told.append)
    assert {each.colony for each in sheet.colonies} == {"Oak", "Elm"}
    (said,) = (each for each in sheet.notices if "left out" in each)
    assert said.startswith("“Ash” is left out of this round: Combwright made a mistake")
    (line, *_) = [json.loads(each.message) for each in caplog.records]
    assert line["failed"] == "ValueError"
    assert "sheet_of" in "".join(line["at"])
    assert "Ash" not in caplog.text
