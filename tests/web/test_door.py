import json
from concurrent.futures import ThreadPoolExecutor
from http.cookies import SimpleCookie
from pathlib import Path

import pytest
from fastapi.testclient import TestClient
from tests.web.desks import PAGE, ROUND, Clock, client_of, planned

from combwright.services.access import Access
from combwright.services.login_tries import TRIES
from combwright.terms.errors import OutOfRangeError
from combwright.web.app import build
from combwright.web.desk import Desk
from combwright.web.login import own_path

WORDS = "four unlikely words together"


@pytest.fixture
def locked(desk: Desk) -> Desk:
    desk.access.set_passphrase(WORDS)
    return desk


def log_in(client: TestClient, words: str = WORDS, to: str = ROUND) -> int:
    return client.post("/login", data={"passphrase": words, "to": to}).status_code


def statuses(caplog: pytest.LogCaptureFixture) -> list[int]:
    return [json.loads(one.getMessage())["status"] for one in caplog.records]


def test_without_a_passphrase_only_this_machine_may_come_in(desk: Desk) -> None:
    with client_of(desk) as here:
        assert here.get("/yards").status_code == 200
        assert here.get("/yards", headers={"X-Forwarded-For": "203.0.113.9"}).status_code == 403
        assert here.get("/yards", headers={"Host": "bees.example"}).status_code == 403
    with TestClient(build(desk), client=("203.0.113.9", 5000)) as elsewhere:
        answer = elsewhere.get("/yards")
        assert answer.status_code == 403
        assert "--set-passphrase" in answer.text


@pytest.mark.usefixtures("locked")
def test_its_health_is_told_to_all_and_nothing_else(client: TestClient, desk: Desk) -> None:
    assert client.get("/health").json() == {"status": "well"}
    Path(desk.book.place).write_bytes(b"no book" * 4000)
    assert client.get("/health").status_code == 503


@pytest.mark.usefixtures("locked")
def test_the_log_tells_no_name_no_address_and_no_key(
    client: TestClient, desk: Desk, caplog: pytest.LogCaptureFixture
) -> None:
    caplog.set_level("INFO", "combwright.page")
    log_in(client)
    client.get("/colony/Bramble?on=2027-04-24")
    client.get(f"/calendar/{desk.access.calendar_key}.ics")
    told = [json.loads(one.getMessage()) for one in caplog.records]
    assert [one["route"] for one in told] == [
        "/login",
        "/colony/{name:path}",
        "/calendar/{key}.ics",
    ]
    assert all(one["status"] in {200, 303} and one["ms"] >= 0 for one in told)
    for secret in ("Bramble", desk.access.calendar_key, WORDS, "127.0.0.1"):
        assert secret not in caplog.text


@pytest.mark.usefixtures("locked")
def test_what_is_refused_is_a_line_of_the_log_too(
    client: TestClient, caplog: pytest.LogCaptureFixture
) -> None:
    caplog.set_level("INFO", "combwright.page")
    client.get("/api/colonies")
    client.get("/api/colonies", headers={"Sec-Fetch-Site": "cross-site"})
    client.post("/note", headers={"Content-Length": "13000000"}, content=b"x")
    assert statuses(caplog) == [401, 403, 413]


@pytest.mark.usefixtures("locked")
def test_every_page_offers_to_log_out(client: TestClient) -> None:
    assert "/logout" not in client.get("/login").text
    log_in(client)
    for path in ("/yards", "/more", "/glossary", "/colony/Nobody"):
        assert 'action="/logout"' in client.get(path, headers=PAGE).text


@pytest.mark.usefixtures("locked")
def test_with_a_passphrase_every_page_asks_for_it(client: TestClient) -> None:
    for path in (ROUND, "/book.csv", "/api/entries", "/settings", "/photo/x"):
        answer = client.get(path, headers=PAGE)
        assert answer.status_code == 303
        assert answer.headers["Location"].startswith("/login?to=")
    assert client.get("/api/entries").status_code == 401


@pytest.mark.usefixtures("locked")
def test_what_a_phone_needs_without_login_holds_nothing_of_the_book(client: TestClient) -> None:
    for path in ("/static/app.js", "/sw.js", "/manifest.webmanifest", "/waiting", "/login"):
        answer = client.get(path)
        assert answer.status_code == 200
        assert "Bramble" not in answer.text


@pytest.mark.usefixtures("locked")
def test_the_right_passphrase_opens_and_logging_out_closes(client: TestClient) -> None:
    assert log_in(client, "wrong wrong wrong") == 422
    assert log_in(client) == 303
    assert client.get("/yards", headers=PAGE).status_code == 200
    client.post("/logout")
    assert client.get("/yards", headers=PAGE).status_code == 303


def test_a_session_ends_after_thirty_days(client: TestClient, locked: Desk, clock: Clock) -> None:
    log_in(client)
    for _ in range(3):
        clock.pass_days(9.9)
        assert client.get("/api/colonies").status_code == 200
    clock.pass_days(2)
    assert client.get("/api/colonies").status_code == 401
    note = client.post("/note", data=planned(locked, "Bramble"))
    assert note.status_code == 401


def test_sessions_outlive_the_server_and_a_new_passphrase_ends_them(
    client: TestClient, locked: Desk
) -> None:
    log_in(client)
    token = client.cookies["combwright"]
    now = locked.clock()
    assert Access(locked.book).who(token, now)
    locked.access.set_passphrase("another four unlikely words")
    assert locked.access.who(token, now) is None


@pytest.mark.usefixtures("locked")
def test_wrong_tries_have_to_wait(
    client: TestClient, clock: Clock, caplog: pytest.LogCaptureFixture
) -> None:
    caplog.set_level("INFO", "combwright.page")
    assert [log_in(client, "wrong wrong wrong") for _ in range(TRIES)] == [422] * TRIES
    assert log_in(client) == 429
    assert statuses(caplog) == [*[422] * TRIES, 429]
    clock.pass_days(11 / 24 / 60)
    assert log_in(client) == 303


@pytest.mark.usefixtures("locked")
def test_tries_at_the_same_moment_are_counted_too(client: TestClient) -> None:
    with ThreadPoolExecutor(20) as many:
        answers = list(many.map(lambda _: log_in(client, "wrong wrong wrong"), range(20)))
    assert sorted(answers) == [422] * TRIES + [429] * (20 - TRIES)


@pytest.mark.usefixtures("locked")
def test_no_page_of_the_book_stays_in_the_browser(client: TestClient) -> None:
    log_in(client)
    assert client.get("/settings").headers["Cache-Control"] == "no-store"
    assert "no-store" not in client.get("/static/app.js").headers["Cache-Control"]
    assert client.post("/logout").headers["Clear-Site-Data"] == '"cache"'


@pytest.mark.usefixtures("locked")
def test_the_cookie_is_kept_from_scripts_and_from_plain_connections(desk: Desk) -> None:
    with client_of(desk, "https://bees.example") as secure:
        answer = secure.post("/login", data={"passphrase": WORDS})
        shown = secure.get(ROUND, headers=PAGE)
    assert answer.headers["Strict-Transport-Security"] == "max-age=31536000; includeSubDomains"
    cookies = SimpleCookie(answer.headers["Set-Cookie"])
    if shown.status_code == 200:  # a round that is still being worked out remembers no day
        cookies.load(shown.headers["Set-Cookie"])
        assert "__Host-day" in cookies
    for name, cookie in cookies.items():
        assert name.startswith("__Host-")
        assert cookie["httponly"]
        assert cookie["secure"]
        assert cookie["samesite"] == "lax"
        assert cookie["path"] == "/"


def test_no_method_shows_what_was_sent_and_no_folder_is_listed(client: TestClient) -> None:
    for path in ("/yards", "/static/app.js"):
        assert client.request("TRACE", path).status_code == 405
    assert client.get("/static/").status_code == 404
    for path in ("/docs", "/redoc", "/.git/config"):
        assert client.get(path).status_code == 404


def test_the_file_holds_neither_passphrase_nor_token(client: TestClient, locked: Desk) -> None:
    log_in(client)
    path = Path(f"{locked.book.place}.access")
    text = path.read_text("utf-8")
    assert WORDS not in text
    assert client.cookies["combwright"] not in text
    assert "$argon2id$" in text
    assert path.stat().st_mode & 0o077 == 0


def test_a_short_passphrase_is_refused(desk: Desk) -> None:
    with pytest.raises(OutOfRangeError, match="12 or more"):
        desk.access.set_passphrase("short")
    assert not desk.access.needs_passphrase


@pytest.mark.parametrize(
    "elsewhere", ["https://evil.example/", "//evil.example", "/\\evil.example", "evil", ""]
)
def test_logging_in_never_leads_elsewhere(elsewhere: str) -> None:
    assert own_path(elsewhere) == "/"


@pytest.mark.parametrize(
    ("headers", "is_let_in"),
    [
        ({"Sec-Fetch-Site": "same-origin"}, True),
        ({"Sec-Fetch-Site": "none"}, True),
        ({"Sec-Fetch-Site": "cross-site"}, False),
        ({"Sec-Fetch-Site": "same-site"}, False),
        ({"Origin": "http://localhost:8321"}, True),
        ({"Origin": "https://evil.example"}, False),
        ({}, True),
    ],
)
def test_another_site_s_page_cannot_write(
    client: TestClient, desk: Desk, headers: dict[str, str], is_let_in: bool
) -> None:
    answer = client.post("/note", data=planned(desk, "Bramble"), headers=headers)
    assert (answer.status_code == 200) is is_let_in
    assert bool(len(desk.book.now().on(desk.clock().date()))) is is_let_in


def test_another_site_s_page_cannot_ask_for_rounds(client: TestClient, desk: Desk) -> None:
    foreign = {"Sec-Fetch-Site": "cross-site", "Sec-Fetch-Mode": "no-cors"}
    assert client.get("/round/2027-05-01", headers=foreign).status_code == 403
    assert client.get("/static/app.js", headers=foreign).status_code == 200
    led_here = {"Sec-Fetch-Site": "cross-site", "Sec-Fetch-Mode": "navigate"} | PAGE
    asked = client.get("/round/2027-05-01?days=9", headers=led_here)
    assert asked.status_code == 200
    assert 'href="/round/2027-05-01?days=9"' in asked.text
    assert desk.rounds.newest() is None
    assert len(desk.rounds) == 0
