"""Before there is anything to plan, every page of a round says from when on there is."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from fastapi.testclient import TestClient
from tests.web.desks import PAGE, Clock, client_of, desk_on

from combwright.web.desk import Desk

OF_A_ROUND = (
    *("/round/{}", "/round/{}/papers", "/round/{}/written", "/round/{}/found", "/bench/{}"),
    *("/round/{}/hive/Bramble", "/round/{}/note/Bramble", "/round/{}/sheet.pdf"),
)


@pytest.fixture
def empty(tmp_path: Path) -> Iterator[Desk]:
    made = desk_on(tmp_path / "own.book", Clock())
    yield made
    made.close()


@pytest.mark.parametrize("address", OF_A_ROUND)
def test_an_empty_book_leads_to_its_beginning(empty: Desk, address: str) -> None:
    text = client_of(empty).get(address.format("2027-04-24"), headers=PAGE).text
    assert "The book is still empty." in text
    assert 'href="/begin"' in text


@pytest.mark.parametrize("address", OF_A_ROUND)
def test_a_day_before_the_first_note_leads_to_that_of_the_first(
    client: TestClient, address: str
) -> None:
    text = client.get(address.format("2020-01-01"), headers=PAGE).text
    assert "Saturday 6 March 2027" in text
    assert 'href="/round/2027-03-06"' in text
