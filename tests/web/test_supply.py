"""The page of nucs and queens: the plan as it comes, whom it names, and the calendar of batches."""

from datetime import date
from typing import Any
from uuid import uuid4

import icalendar
from fastapi.testclient import TestClient
from tests.web.desks import PAGE

from combwright.services.demo import ON
from combwright.services.supply.asked import AskedSupply, WhatIf
from combwright.web.desk import Desk

NEWS = (
    ("order", {"order": "7 Hall", "customer": "Hall", "count": "6", "wanted_by": "2027-05-08"}),
    ("order news", {"order": "7 Hall", "event": "promised", "week": "2027-05-03"}),
)


def test_the_plan_is_waited_for_and_names_whom_to_ring(client: TestClient, desk: Desk) -> None:
    for kind, told in NEWS:
        sent = {"id": str(uuid4()), "on": "2027-04-20", **told}
        assert client.post(f"/enter/{kind}", data=sent, headers=PAGE).status_code == 303
    path = (
        f"/supply/plan?on={ON}&weeks=6&hours=12&price_of=nuc+in+June&price=180"
        "&lost=First+graft&cold_from=2027-05-20"
    )
    assert client.get(path, headers=PAGE).status_code in {200, 202}
    otherwise = WhatIf(
        (("nuc in June", 180.0),), frozenset({"First graft"}), cold_from=date(2027, 5, 20)
    )
    asked = AskedSupply(ON, weeks=6, hours=12.0, what_if=otherwise)
    desk.supplies.begin(asked).future.result(timeout=120)
    answer = client.get(path, headers=PAGE)
    assert answer.status_code == 200
    for words in ("No 4", "Week by week", "Nuc Ash", "What if"):
        assert words in answer.text
    to_ring = answer.text[answer.text.index("Customers to ring") :]
    assert "<strong>Hall</strong> (7 Hall): Promised for the week of 3 May" in to_ring
    assert 'value="180.0"' in answer.text


def test_the_book_of_orders_is_listed_in_its_turn(client: TestClient) -> None:
    text = client.get("/supply", headers=PAGE).text
    assert text.index("No 2") < text.index("No 1")  # who has a promise is served first
    assert "White 7" in text


def test_the_calendar_holds_the_days_of_batches_and_promises(
    client: TestClient, desk: Desk
) -> None:
    answer = client.get(f"/calendar/{desk.access.calendar_key}.ics")
    events: list[Any] = icalendar.Calendar.from_ical(answer.text).walk("VEVENT")
    told = {(str(event["DTSTART"].dt), str(event["SUMMARY"])) for event in events}
    assert ("2027-04-27", "First graft: give the ripe cells") in told
    assert ("2027-06-28", "No 2: 2 promised to Kelly for this week") in told
