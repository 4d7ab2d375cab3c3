"""Pages that answer what was sent, or that need a note of their own: for everyone as well."""

import re
from collections.abc import Iterator
from html import unescape
from time import sleep
from urllib.parse import unquote, urlsplit
from uuid import uuid4

import pyotp
import pytest
from fastapi.routing import APIRoute
from fastapi.testclient import TestClient
from playwright.sync_api import Page, Playwright
from starlette.routing import Match
from tests.browser.chromium import chromium
from tests.browser.conftest import ARGUMENTS, PHONE, House, free_port
from tests.browser.for_everyone import expect_for_everyone
from tests.browser.pages import PAGES
from tests.demo import copied
from tests.web.desks import PAGE, Clock, client_of, desk_on
from tests.web.test_entering import BEFORE, FILLED, enter

from combwright.services.demo import ON, Paths
from combwright.web.pages import ROUTERS

pytestmark = pytest.mark.browser
NAMES = (
    *(
        "mend",
        "mend refused",
        "entry refused",
        "table refused",
        "second look",
        "buyer",
        "hand-over",
    ),
    *("plan in work", "plan", "labels", "people", "link", "join", "factor", "codes"),
)
ANSWERED = (
    *("/mend/0", "/buyers/delete", "/bees/sheet", "/honey/labels", "/join/a", "/supply/plan"),
)
PLAN = f"/supply/plan?on={ON}&weeks=2&hours=1"
ACCEPTED = 202
WORDS = "nineteen orange kettles whistle"


def noted(client: TestClient) -> Iterator[tuple[str, str]]:
    """Give the answers to notes, right and wrong."""
    entry = str(uuid4())
    for kind in ("bees sold", *BEFORE["jar weights"]):
        assert enter(client, kind, FILLED[kind])[0] == 303
    assert enter(client, "kit", FILLED["kit"] | {"id": entry})[0] == 303
    yield "mend", client.get(f"/mend/{entry}", headers=PAGE).text
    yield "mend refused", client.post(f"/mend/{entry}", data={"id": entry}, headers=PAGE).text
    yield "entry refused", enter(client, "split", {"colony": "Bramble", "frames_of_bees": "?"})[1]
    table = {"id": str(uuid4()), "colony-1": "Fern", "frames_of_bees-1": "?"}
    yield "table refused", client.post("/begin", data=table, headers=PAGE).text
    odd = {"frames_of_bees": "2", "frames_of_brood": "6"}
    note = {"note": str(uuid4()), "on": str(ON), "colony": "Bramble"} | odd
    yield "second look", client.post("/note", data=note, headers=PAGE).text
    yield "buyer", client.get("/buyers/delete?name=Ryan", headers=PAGE).text
    yield "hand-over", client.get("/bees/sheet?sale=9", headers=PAGE).text
    plan = client.get(PLAN, headers=PAGE)
    yield "plan in work", plan.text
    while plan.status_code == ACCEPTED:
        sleep(0.1)
        plan = client.get(PLAN, headers=PAGE)
    yield "plan", plan.text
    yield "labels", client.get("/honey/labels?lot=L27114-1", headers=PAGE).text


def shared(client: TestClient) -> Iterator[tuple[str, str]]:
    """Give the pages of a book that is shared."""
    keeper = {"name": "Anna", "passphrase": WORDS}
    assert client.post("/people/begin", data=keeper, headers=PAGE).status_code == 303
    assert client.post("/login", data=keeper, headers=PAGE).status_code == 303
    yield "people", client.get("/people", headers=PAGE).text
    guest = {"name": "Ben", "role": "helper", "passphrase": WORDS}
    link = client.post("/people/invite", data=guest, headers=PAGE).text
    yield "link", link
    found = re.search(r"/join/[\w-]+", unescape(link))
    assert found
    yield "join", client.get(found[0], headers=PAGE).text
    factor = client.post("/own-login/factor", data=keeper, headers=PAGE).text
    yield "factor", factor
    (seed,) = re.findall(r"<code>([A-Z2-7]{32})</code>", factor)
    code = pyotp.TOTP(seed).at(client.app.state.desk.clock())  # type: ignore[attr-defined]
    yield "codes", client.post("/own-login/factor/confirm", data={"code": code}, headers=PAGE).text


@pytest.fixture(scope="module")
def answered(
    demo: Paths, tmp_path_factory: pytest.TempPathFactory
) -> Iterator[tuple[str, dict[str, str]]]:
    """The address of a house, and what it answered."""
    desk = desk_on(copied(demo, tmp_path_factory.mktemp("answers")))
    client = client_of(desk)
    answers = dict([*noted(client), *shared(client)])
    house = House(desk, Clock(), free_port())
    house.open()
    yield house.address, answers
    house.shut()
    desk.close()


@pytest.fixture(scope="module")
def phone(playwright: Playwright) -> Iterator[Page]:
    browser = playwright.chromium.launch(executable_path=chromium(), args=ARGUMENTS)
    yield browser.new_page(viewport=PHONE, service_workers="block")
    browser.close()


@pytest.mark.parametrize("name", NAMES)
def test_an_answer_is_for_everyone(
    phone: Page, answered: tuple[str, dict[str, str]], name: str
) -> None:
    """Put before the browser as it came from the server, with its own style."""
    house, answers = answered
    address = f"{house}/answer/{NAMES.index(name)}"
    phone.route(address, lambda route: route.fulfill(body=answers[name], content_type="text/html"))
    phone.goto(address)
    assert "cannot be done" not in phone.locator("h1").inner_text()
    expect_for_everyone(phone)


# Led on from, or for programs, paper and spreadsheets.
NO_PAGES = re.compile(
    r"\.(pdf|csv|ics|\{form\})$|^/(round|bench|hive|places)?$|/progress$|^/photo/"
)


def test_every_page_is_looked_at() -> None:
    routes = [each for router in ROUTERS for each in router.routes if isinstance(each, APIRoute)]
    pages = {
        each.path
        for each in routes
        if "GET" in (each.methods or ()) and not NO_PAGES.search(each.path)
    }
    shown = {urlsplit(address).path for address in (*PAGES.values(), *ANSWERED)}
    seen = {
        each.path
        for each in routes
        for path in shown
        if each.matches({"type": "http", "method": "GET", "path": unquote(path)})[0] == Match.FULL
    }
    assert pages - seen == set()
