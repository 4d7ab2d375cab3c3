"""Why the sheet says what it says: every decision with its reason, a new one too."""

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
from tests.noted import HEADINGS, noted

from combwright.advice.plan import DECISIONS
from combwright.cli.why import show
from combwright.planning.sheet import DecisionShown
from combwright.records.store.book_handle import Book
from combwright.services.rounds.why import LESSONS, Told, why

NOTE = "2027-04-03,Top,Oak,national timber,2026,Dublin Airport,7,3,yes,3,9"


def one_colony(folder: Path) -> Book:
    return Book(noted(folder, NOTE, headings=f"{HEADINGS},frames in box"))


@pytest.fixture(scope="module")
def told(tmp_path_factory: pytest.TempPathFactory) -> Told:
    return why(one_colony(tmp_path_factory.mktemp("why")), "Oak", date(2027, 4, 17), members=60)


def test_each_decision_that_is_told_has_its_reason_or_its_job(told: Told) -> None:
    assert all(each.jobs or each.because for each in told.sheet.decisions)
    assert len(told.sheet.decisions) <= len(DECISIONS)


def test_every_topic_of_today_has_a_lesson(told: Told) -> None:
    assert {each.topic for each in told.sheet.decisions} <= set(LESSONS)


def test_a_new_topic_is_told_though_it_has_no_lesson(
    told: Told, capsys: pytest.CaptureFixture[str]
) -> None:
    new = DecisionShown(
        topic="roof", actions=[], jobs=[], because=["It is on."], inputs={}, runner_up=""
    )
    sheet = told.sheet.model_copy(update={"decisions": [*told.sheet.decisions, new]})
    show(replace(told, sheet=sheet), short=False)
    said = capsys.readouterr().out
    assert "roof" in said
    assert "It is on." in said
