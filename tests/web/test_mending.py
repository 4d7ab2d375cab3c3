"""A note of any day is put right, or struck out, on the page."""

from uuid import uuid4

import pytest
from fastapi.testclient import TestClient
from tests.web.desks import PAGE

from combwright.terms.entries import Visit
from combwright.web.desk import Desk


@pytest.fixture
def visit(desk: Desk) -> Visit:
    return next(each for each in desk.book.now().of("Bramble") if isinstance(each, Visit))


def send(client: TestClient, visit: Visit, **fields: str) -> tuple[int, str]:
    answer = client.post(f"/mend/{visit.id}", data={"id": str(uuid4()), **fields}, headers=PAGE)
    return answer.status_code, answer.text


def test_it_is_put_right_and_the_page_tells_what_it_said(
    client: TestClient, desk: Desk, visit: Visit
) -> None:
    asked = client.get(f"/mend/{visit.id}")
    assert asked.status_code == 200
    assert f'value="{visit.frames_of_bees}"' in asked.text
    assert send(client, visit, stores_kg="12.5", reason="misread the scale")[0] == 303
    again = next(each for each in desk.book.now().of("Bramble") if isinstance(each, Visit))
    assert (again.stores_kg, again.frames_of_bees) == (12.5, visit.frames_of_bees)
    shown = client.get("/colony/Bramble").text
    assert "misread the scale" in shown
    assert "Put right" in shown


def test_it_is_struck_out(client: TestClient, desk: Desk, visit: Visit) -> None:
    assert send(client, visit, strike="yes", reason="the wrong hive")[0] == 303
    assert visit not in desk.book.now().of("Bramble")


def test_without_a_reason_it_is_asked_for(client: TestClient, desk: Desk, visit: Visit) -> None:
    status, text = send(client, visit, stores_kg="12.5")
    assert status == 422
    assert "Say in a few words what was wrong" in text
    assert visit in desk.book.now().of("Bramble")


def test_a_note_that_is_not_there_is_said_so(client: TestClient) -> None:
    assert client.get(f"/mend/{uuid4()}").status_code == 404
