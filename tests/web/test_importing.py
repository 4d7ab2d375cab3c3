"""A spreadsheet of one's own, through the page."""

import re
from pathlib import Path

from fastapi.testclient import TestClient
from tests.web.desks import PAGE

from combwright.web.desk import Desk

DIARY = Path(__file__).parents[1] / "data" / "foreign_sheets" / "hive-diary.csv"


def test_a_sheet_is_shown_put_right_and_taken(client: TestClient, desk: Desk) -> None:
    before = desk.book.now().last
    data = DIARY.read_bytes().replace(b"/26;", b"/27;")
    shown = client.post("/import", files={"file": ("diary.csv", data)}, headers=PAGE).text
    assert "Take all" not in shown
    assert desk.book.now().last == before
    sheet = re.search(r'name="sheet" value="([^"]+)"', shown)
    assert sheet
    told = {"sheet": sheet[1], "name": "diary.csv", "yard": "Orchard Lane", "column Food": ""}
    again = client.post("/import", data=told, headers=PAGE).text
    assert "Take all 4" in again
    assert "stores kg</small>" not in again
    taken = client.post("/import", data=told | {"take": "yes"}, headers=PAGE)
    assert taken.status_code == 200
    assert desk.book.now().standings["2"].yard == "Orchard Lane"


def test_the_book_goes_out_as_a_spreadsheet(client: TestClient) -> None:
    answer = client.get("/book.xlsx")
    assert answer.content.startswith(b"PK")
    assert "spreadsheetml" in answer.headers["Content-Type"]


def test_a_sheet_that_did_not_come_whole_is_said(client: TestClient) -> None:
    assert "did not come whole" in client.post("/import", data={"sheet": "§"}, headers=PAGE).text
