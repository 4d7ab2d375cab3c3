"""What was written on paper, entered on one page."""

import io
import re
from uuid import uuid4

import pytest
from fastapi.testclient import TestClient
from pdfminer.high_level import extract_text
from tests.web.desks import PAGE, ROUND

from combwright.services.demo import ON
from combwright.terms.entries import Feed, Visit
from combwright.web.desk import Desk


@pytest.fixture
def rows(desk: Desk) -> list[str]:
    return [each.colony for each in desk.rounds.sheet(ON, 7).colonies]


def visits(desk: Desk) -> dict[str, Visit]:
    found = (each for each in desk.book.now().on(ON) if isinstance(each, Visit))
    return {each.colony: each for each in found}


def test_rows_with_anything_in_them_become_visits(
    client: TestClient, desk: Desk, rows: list[str]
) -> None:
    text = client.get(f"{ROUND}/written", headers=PAGE).text
    assert [text.index(f'name="seen-{at}"') for at in range(1, len(rows) + 1)] == sorted(
        text.index(f'name="seen-{at}"') for at in range(1, len(rows) + 1)
    )
    page = {
        "id": str(uuid4()),
        "frames_of_bees-1": "7,5",
        "queen_cells-1": "charged",
        "cells_found-1": "3",
        "feed_g-1": "450",
        "seen-2": "on",
        "remark-4": "calm",
    }
    for _ in range(2):
        assert client.post(f"{ROUND}/written", data=page, headers=PAGE).status_code == 303
    found = visits(desk)
    assert set(found) == {rows[0], rows[1], rows[3]}
    first = found[rows[0]]
    assert (first.frames_of_bees, first.queen_cells, first.cells_found) == (7.5, "charged", 3)
    fed = [each.grams for each in desk.book.now().of(rows[0]) if isinstance(each, Feed)]
    assert fed[-1] == 450
    assert found[rows[3]].remark == "calm"


def test_a_wrong_row_is_shown_again_and_the_others_are_kept(
    client: TestClient, desk: Desk, rows: list[str]
) -> None:
    page = {"id": str(uuid4()), "frames_of_bees-1": "7", "frames_of_bees-2": "99"}
    answer = client.post(f"{ROUND}/written", data=page, headers=PAGE)
    assert answer.status_code == 422
    assert re.search(r'id="fault-frames_of_bees-2">[^<]*Give 40 or less', answer.text)
    assert set(visits(desk)) == {rows[0]}
    right = page | {"frames_of_bees-2": "9"}
    assert client.post(f"{ROUND}/written", data=right, headers=PAGE).status_code == 303
    assert set(visits(desk)) == {rows[0], rows[1]}
    assert len([each for each in desk.book.now().on(ON) if isinstance(each, Visit)]) == 2


@pytest.mark.parametrize("paper", ["a4", "card"])
def test_every_paper_is_one_tap_away(client: TestClient, desk: Desk, paper: str) -> None:
    desk.rounds.sheet(ON, 7)
    assert f"{ROUND}/sheet.pdf" in client.get(ROUND).text
    assert "Pocket card" in client.get(f"{ROUND}/papers").text
    answer = client.get(f"{ROUND}/sheet.pdf?paper={paper}&yard=Alder+Bank")
    assert answer.content.startswith(b"%PDF")
    assert answer.headers["Content-Type"] == "application/pdf"


def test_a_short_day_is_printed_with_what_to_leave_out(client: TestClient, desk: Desk) -> None:
    desk.rounds.sheet(ON, 7)
    answer = client.get(f"{ROUND}/sheet.pdf?minutes=25&yard=Alder+Bank")
    assert "No time for today" in extract_text(io.BytesIO(answer.content))
    assert client.get(f"{ROUND}/sheet.pdf?minutes=0").status_code == 422
