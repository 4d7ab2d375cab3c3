"""Fetching a forecast over a real socket from a small server of our own on this machine."""

import threading
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from time import sleep
from urllib.parse import parse_qs, urlsplit

import pytest

from combwright.sources.forecast import Forecast, forecast
from combwright.terms.errors import OutOfRangeError, SourceError

BODY = (Path(__file__).parent.parent / "data" / "weather" / "met_norway.json").read_text("utf-8")
NULLS = BODY.replace('"precipitation_amount": ', '"precipitation_amount": null, "before": ')
NOW = datetime(2025, 5, 1, 6, tzinfo=UTC)
MODIFIED = "Thu, 01 May 2025 04:40:00 GMT"
CONTACT = "keeper@example.org"


@dataclass
class Service:
    """What the server answers next, and what it was asked."""

    address: str = ""
    status: int = 200
    body: str = BODY
    headers: dict[str, str] = field(default_factory=lambda: {"Last-Modified": MODIFIED})
    wait_s: float = 0.0
    asked: list[tuple[str, dict[str, str]]] = field(default_factory=list)


@pytest.fixture
def service() -> Iterator[Service]:
    """Run the server on a free port of 127.0.0.1."""
    state = Service()

    class Handler(BaseHTTPRequestHandler):
        def do_GET(self) -> None:  # the name that http.server calls
            state.asked.append((self.path, dict(self.headers.items())))
            sleep(state.wait_s)
            self.send_response(state.status)
            for name, value in state.headers.items():
                self.send_header(name, value)
            self.end_headers()
            if state.status != 304:
                self.wfile.write(state.body.encode())

        def log_message(self, *_: object) -> None:
            """Keep the test's output clean."""

    server = ThreadingHTTPServer(("127.0.0.1", 0), Handler)
    server.handle_error = lambda *_: None  # type: ignore[method-assign]  # a client that hung up
    state.address = f"http://127.0.0.1:{server.server_port}/compact"
    thread = threading.Thread(target=server.serve_forever, args=(0.01,))
    thread.start()
    yield state
    server.shutdown()
    thread.join()
    server.server_close()


@pytest.fixture
def ask(service: Service, tmp_path: Path) -> Callable[..., Forecast]:
    """Ask for the forecast of a place near Dublin, with a cache of its own."""

    def asking(
        *, now: datetime = NOW, latitude_deg: float = 53.35, timeout_s: float = 5.0
    ) -> Forecast:
        return forecast(
            latitude_deg,
            -6.26,
            contact=CONTACT,
            cache=tmp_path / "kept" / "forecast.json",
            now=now,
            address=service.address,
            timeout_s=timeout_s,
        )

    return asking


def test_a_forecast_is_fetched_and_the_service_is_told_who_asks(
    service: Service, ask: Callable[..., Forecast]
) -> None:
    found = ask(latitude_deg=53.3512345)
    assert [day.on.day for day in found.read.days] == [2, 3, 4]
    assert found.age == timedelta(0)
    assert not found.note
    assert "MET Norway, CC BY 4.0" in found.attribution
    path, headers = service.asked[0]
    assert parse_qs(urlsplit(path).query) == {"lat": ["53.35"], "lon": ["-6.26"]}
    assert headers["User-Agent"].startswith("combwright/")
    assert CONTACT in headers["User-Agent"]


def test_it_is_not_asked_again_before_it_wants_to_be(
    service: Service, ask: Callable[..., Forecast]
) -> None:
    service.headers["Expires"] = "Thu, 01 May 2025 06:30:00 GMT"
    ask()
    found = ask(now=NOW + timedelta(minutes=29))
    assert len(service.asked) == 1
    assert found.age == timedelta(minutes=29)
    ask(now=NOW + timedelta(minutes=31))
    assert len(service.asked) == 2


def test_an_unchanged_forecast_is_not_sent_twice(
    service: Service, ask: Callable[..., Forecast]
) -> None:
    ask()
    service.status = 304
    found = ask(now=NOW + timedelta(hours=2))
    assert service.asked[1][1]["If-Modified-Since"] == MODIFIED
    assert found.age == timedelta(0)
    assert not found.note


@pytest.mark.parametrize(
    ("change", "sentence"),
    [
        ({"status": 429}, "asks to be left alone"),
        ({"status": 500}, "answers with the error 500"),
        ({"status": 403}, "answers with the error 403"),
        ({"wait_s": 0.6}, "did not answer within 0.2 s"),
        ({"body": BODY[:500]}, "not whole JSON"),
        ({"body": "<html>captive portal</html>"}, "not whole JSON"),
        ({"body": BODY.replace("precipitation_amount", "another_name")}, "No day"),
        ({"body": NULLS}, "No day"),
        ({"body": '{"type": "Feature"}'}, "no “geometry”"),
    ],
    ids=[
        "429",
        "500",
        "403",
        "timeout",
        "cut off",
        "other page",
        "other names",
        "nulls",
        "other form",
    ],
)
def test_without_an_answer_the_kept_forecast_is_used_and_its_age_said(
    service: Service, ask: Callable[..., Forecast], change: dict[str, object], sentence: str
) -> None:
    later = NOW + timedelta(hours=7)
    with pytest.raises(SourceError, match="climate of the place"):
        _changed(service, change, lambda: ask(timeout_s=0.2))
    kept = ask()
    found = _changed(service, change, lambda: ask(now=later, timeout_s=0.2))
    assert sentence in found.note
    assert "7 hours old" in found.note
    assert found.read.days == kept.read.days
    # and the good copy was not overwritten by the bad answer
    assert not ask(now=later).note


def _changed(service: Service, change: dict[str, object], run: Callable[[], Forecast]) -> Forecast:
    before = {key: getattr(service, key) for key in change}
    for key, value in change.items():
        setattr(service, key, value)
    try:
        return run()
    finally:
        for key, value in before.items():
            setattr(service, key, value)


def test_a_service_that_is_not_there_is_explained(tmp_path: Path) -> None:
    with pytest.raises(SourceError, match=r"cannot be reached.*No forecast is kept"):
        forecast(
            53.35,
            -6.26,
            contact=CONTACT,
            cache=tmp_path / "none.json",
            now=NOW,
            address="http://127.0.0.1:9/compact",
        )


def test_a_forecast_of_last_week_is_not_passed_off_as_one(
    service: Service, ask: Callable[..., Forecast]
) -> None:
    ask()
    service.status = 500
    with pytest.raises(SourceError, match="kept is 7 days old"):
        ask(now=NOW + timedelta(days=7))


def test_the_forecast_of_another_place_is_not_used(
    service: Service, ask: Callable[..., Forecast]
) -> None:
    ask()
    service.status = 500
    with pytest.raises(SourceError, match="No forecast is kept"):
        ask(now=NOW + timedelta(hours=2), latitude_deg=51.9)


@pytest.mark.parametrize("damage", ["", "{", '{"address": 1}', "null", "[]"])
def test_a_damaged_copy_is_as_good_as_none(
    ask: Callable[..., Forecast], tmp_path: Path, damage: str
) -> None:
    ask()
    (tmp_path / "kept" / "forecast.json").write_text(damage, "utf-8")
    assert ask().read.days


def test_a_folder_that_cannot_be_written_does_no_harm(service: Service, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way", "utf-8")
    found = forecast(
        53.35,
        -6.26,
        contact=CONTACT,
        cache=tmp_path / "file" / "forecast.json",
        now=NOW,
        address=service.address,
    )
    assert found.read.days


@pytest.mark.parametrize(("latitude", "contact"), [(153.0, CONTACT), (53.0, " ")])
def test_impossible_questions_are_not_sent(
    service: Service, tmp_path: Path, latitude: float, contact: str
) -> None:
    with pytest.raises((OutOfRangeError, SourceError)):
        forecast(
            latitude,
            -6.26,
            contact=contact,
            cache=tmp_path / "x.json",
            now=NOW,
            address=service.address,
        )
    assert not service.asked
