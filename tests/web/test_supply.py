"""The page of nucs and queens: the plan as it comes, whom it names, and the calendar of batches."""

from typing import Any

import icalendar
from fastapi.testclient import TestClient
from tests.web.desks import PAGE

from combwright.services.demo import ON
from combwright.services.supply.asked import AskedSupply
from combwright.web.desk import Desk


def test_the_plan_is_waited_for_and_then_shown(client: TestClient, desk: Desk) -> None:
    path = f"/supply/plan?on={ON}&weeks=6&hours=12"
    assert client.get(path, headers=PAGE).status_code in {200, 202}
    desk.supplies.begin(AskedSupply(ON, weeks=6, hours=12.0)).future.result(timeout=120)
    answer = client.get(path, headers=PAGE)
    assert answer.status_code == 200
    for words in ("4 Daly", "Week by week", "Nuc Ash", "What if"):
        assert words in answer.text


def test_the_book_of_orders_is_listed_in_its_turn(client: TestClient) -> None:
    text = client.get("/supply", headers=PAGE).text
    assert text.index("2 Kelly") < text.index("1 Byrne")  # who has a promise is served first
    assert "White 7" in text


def test_the_calendar_holds_the_days_of_batches_and_promises(
    client: TestClient, desk: Desk
) -> None:
    answer = client.get(f"/calendar/{desk.access.calendar_key}.ics")
    events: list[Any] = icalendar.Calendar.from_ical(answer.text).walk("VEVENT")
    told = {(str(event["DTSTART"].dt), str(event["SUMMARY"])) for event in events}
    assert ("2027-04-27", "First graft: give the ripe cells") in told
    assert ("2027-06-28", "2 Kelly: 2 promised to Kelly for this week") in told
