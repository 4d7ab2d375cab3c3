from datetime import timedelta
from typing import Any

import icalendar
import pytest
from fastapi.testclient import TestClient
from tests.web.desks import PAGE

from combwright.services.demo import ON
from combwright.web.desk import Desk

NOTEBOOK = b"date,yard,colony,hive,frames of bees\n2027-04-23,Alder Bank,Fern,national timber,5\n"


def take_in(client: TestClient, content: bytes, name: str = "spring.csv") -> tuple[int, str]:
    answer = client.post("/book/add", files={"file": (name, content)}, headers=PAGE)
    return answer.status_code, answer.text


@pytest.mark.parametrize("form", ["csv", "json"])
def test_the_book_comes_and_goes_whole(client: TestClient, desk: Desk, form: str) -> None:
    whole = client.get(f"/book.{form}").content
    before = desk.book.now().last
    status, text = take_in(client, whole, f"book.{form}")
    assert status == 200
    assert f"0 new, {before} known" in text
    assert desk.book.now().last == before


def test_a_notebook_is_taken_in_once(client: TestClient, desk: Desk) -> None:
    before = desk.book.now().last
    assert take_in(client, NOTEBOOK)[0] == 200
    after = desk.book.now().last
    assert after > before
    assert take_in(client, NOTEBOOK)[0] == 200
    assert desk.book.now().last == after
    assert desk.book.now().colony("Fern").yard == "Alder Bank"


def test_a_wrong_notebook_is_refused_with_its_lines(client: TestClient, desk: Desk) -> None:
    before = desk.book.now().last
    status, text = take_in(client, NOTEBOOK.replace(b",5", b",55"))
    assert status == 422
    assert "spring.csv" in text
    assert "Line 2" in text
    assert desk.book.now().last == before


@pytest.mark.parametrize("content", [b"", b"\x00\x01\x02", b"\xff\xd8\xff\xe0 a photo"])
def test_what_is_no_notebook_is_refused(client: TestClient, content: bytes) -> None:
    assert take_in(client, content)[0] == 422


@pytest.mark.parametrize("name", ["..", "a\x00b.csv", "/etc/passwd", "x" * 300, "\udcff.csv"])
def test_whatever_a_file_is_called_it_is_taken_in(client: TestClient, name: str) -> None:
    quoted = name.encode("utf-8", "surrogatepass").replace(b"\x00", b"%00")
    head = b'--x\r\nContent-Disposition: form-data; name="file"; filename="' + quoted + b'"\r\n\r\n'
    answer = client.post(
        "/book/add",
        content=head + NOTEBOOK + b"\r\n--x--\r\n",
        headers=PAGE | {"Content-Type": "multipart/form-data; boundary=x"},
    )
    assert answer.status_code == 200


def test_more_than_the_limit_is_refused_at_once(client: TestClient) -> None:
    assert take_in(client, b"x" * 12_500_000)[0] == 413


def test_the_calendar_holds_the_round_and_the_next_visits(client: TestClient, desk: Desk) -> None:
    sheet = desk.rounds.sheet(ON, 7)
    key = desk.access.calendar_key
    answer = client.get(f"/calendar/{key}.ics")
    assert answer.headers["Content-Type"].startswith("text/calendar")
    events: list[Any] = icalendar.Calendar.from_ical(answer.text).walk("VEVENT")
    told = {(event["DTSTART"].dt, str(event["SUMMARY"]).split(":")[0]) for event in events}
    assert {(ON, yard) for yard in sheet.yards} <= told
    assert {(each.next_visit, each.yard) for each in sheet.colonies} <= told
    assert all(event["DTEND"].dt - event["DTSTART"].dt == timedelta(days=1) for event in events)
    assert len({str(event["UID"]) for event in events}) == len(events)


def test_the_calendar_opens_to_its_key_alone(client: TestClient, desk: Desk) -> None:
    desk.access.set_passphrase("four unlikely words together")
    assert client.get("/calendar/guessed.ics").status_code == 404
    assert client.get(f"/calendar/{desk.access.calendar_key}.ics").status_code == 200


def test_weather_of_a_file_is_kept_and_changes_the_round(client: TestClient, desk: Desk) -> None:
    before = desk.rounds.begin(ON, 7)
    table = b"date,tmax_c,tmin_c,rain_mm,sun_h,wind_m_s\n2027-04-24,21,9,0,11,2\n"
    answer = client.post(
        "/weather/add",
        data={"yard": "Alder Bank"},
        files={"file": ("april.csv", table)},
        headers=PAGE,
    )
    assert answer.status_code == 200
    assert "1 days" in answer.text
    assert desk.rounds.begin(ON, 7) is not before
    desk.rounds.sheet(ON, 7)
    assert "9 to 21 °C, 11 h of sun, 0 mm of rain, wind 2 m/s" in client.get(f"/round/{ON}").text


def test_a_forecast_without_a_place_says_what_is_missing(client: TestClient) -> None:
    asked = {"yard": "Alder Bank", "contact": "keeper@example.org"}
    answer = client.post("/weather/forecast", data=asked, headers=PAGE)
    assert answer.status_code == 404
    assert "latitude" in answer.text


def test_the_code_on_a_hive_leads_to_its_note(client: TestClient) -> None:
    answer = client.get("/hive?colony=Nuc%20Ash", follow_redirects=False)
    assert answer.status_code == 303
    assert answer.headers["Location"].endswith("/note/Nuc%20Ash")
    assert client.get("/hive/labels.pdf?yard=Alder%20Bank").content.startswith(b"%PDF")
