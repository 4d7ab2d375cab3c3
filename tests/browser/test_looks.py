"""Every page: for everyone, on the smallest phone, in both themes, with a keyboard."""

from collections.abc import Iterator
from io import BytesIO

import pytest
from pdfminer.pdfpage import PDFPage
from playwright.sync_api import Browser, Page, Playwright, expect
from tests.browser.chromium import chromium
from tests.browser.conftest import ARGUMENTS, PHONE, House
from tests.browser.for_everyone import expect_for_everyone
from tests.browser.hands import hive
from tests.browser.pages import PAGES

from combwright.web.addresses import segment

pytestmark = pytest.mark.browser


@pytest.fixture(scope="module")
def browser(playwright: Playwright) -> Iterator[Browser]:
    found = playwright.chromium.launch(executable_path=chromium(), args=ARGUMENTS)
    yield found
    found.close()


@pytest.fixture(scope="module")
def shown(shared_house: House) -> House:
    return shared_house


@pytest.fixture(scope="module")
def phone(browser: Browser) -> Iterator[tuple[Page, list[str]]]:
    """One page for all looks, and what was said to its console: a new one each is dear."""
    said: list[str] = []
    page = browser.new_page(viewport=PHONE)
    page.on("console", lambda message: said.append(message.text))
    page.on("pageerror", lambda error: said.append(str(error)))
    yield page, said
    page.close()


@pytest.mark.usefixtures("some_evidence")
@pytest.mark.parametrize("name", PAGES)
def test_a_page_is_for_everyone(phone: tuple[Page, list[str]], shown: House, name: str) -> None:
    """And nothing goes wrong meanwhile that only a console would tell."""
    page, said = phone
    said.clear()
    page.goto(shown.address + PAGES[name])
    expect(page.locator("h1")).to_be_visible()
    expect(page.locator("#net")).to_have_attribute("data-waiting", "0")
    expect_for_everyone(page)
    assert [line for line in said if "404 (Not Found)" not in line] == []


def test_a_note_is_made_without_javascript(browser: Browser, house: House) -> None:
    page = browser.new_page(java_script_enabled=False)
    page.goto(house.address + PAGES["note"])
    expect(page.get_by_label("Frames of bees: more")).to_be_hidden()  # it would do nothing
    page.locator("#f-frames_of_bees").fill("99")
    page.get_by_role("button", name="Save").click()
    expect(page.locator("#fault-frames_of_bees")).to_contain_text("Give 40 or less.")
    page.locator("#f-frames_of_bees").fill("9")
    page.get_by_role("button", name="Save").click()
    page.goto(house.address + hive("Bramble"))
    expect(page.locator("article .state")).to_have_text("noted")
    page.close()


def test_a_round_can_be_noted_with_the_keyboard_alone(browser: Browser, house: House) -> None:
    page = browser.new_page(viewport=PHONE)
    page.goto(house.address + PAGES["note"])
    page.keyboard.press("Tab")
    expect(page.locator(".skip")).to_be_focused()
    page.keyboard.press("Enter")
    page.keyboard.press("Tab")
    expect(page.get_by_role("button", name="as expected").first).to_be_focused()
    page.keyboard.press("Enter")
    assert float(page.locator("#f-frames_of_bees").input_value()) > 0
    page.locator("#f-frames_of_bees").press("Enter")
    page.wait_for_url("**/hive/*")
    page.close()


SPOKEN = {
    "Seven and a half frames of bees, 4 brood, two stores": {
        "frames_of_bees": "7.5",
        "frames_of_brood": "4",
        "frames_of_stores": "2",
    },
    "wasps at the entrance, no flow": {"entrance_trouble": "wasps", "flow": "none"},
    "no wasps, not any robbing; without eggs": {},
    "stores granulated, pollen coming in": {"granulated": "yes", "pollen": "yes"},
    "saw the queen, no eggs, two sealed cells": {
        "queen_seen": "yes",
        "eggs": "no",
        "queen_cells": "sealed",
    },
    "patchy brood and no larvae, strong flow": {
        "brood_pattern": "patchy",
        "larvae": "no",
        "flow": "strong",
    },
    "quiet, all well": {},
}
NAMES = ("Bramble", "a/b", "..", ".", "%2e", "=2E", "Hive 3", "Ähre?", "a\\b", "#1", "50 %")


def test_what_is_spoken_is_offered_and_names_lead_where_they_should(
    browser: Browser, shown: House
) -> None:
    """Also of a colony called “..”: page and server write its address alike."""
    page = browser.new_page(viewport=PHONE)
    page.goto(shown.address + PAGES["note"])
    for words, meant in SPOKEN.items():
        ask = "async w => [...(await import('/static/spoken.js')).heard(w)]"
        assert dict(page.evaluate(ask, words)) == meant, words
    ask = "async names => names.map((await import('/static/states.js')).segment)"
    assert page.evaluate(ask, NAMES) == [segment(name) for name in NAMES]
    page.get_by_label("Remark").fill("wasps, 6 frames of bees")
    page.locator("#heard button", has_text="frames of bees").click()
    expect(page.locator("#f-frames_of_bees")).to_have_value("6")
    page.locator("#heard button", has_text="wasps").click()
    assert (
        page.evaluate("document.querySelector('#note').elements.entrance_trouble.value") == "wasps"
    )
    expect(page.locator("#heard")).not_to_contain_text("6")
    page.close()


def test_the_browser_prints_no_more_than_the_sheet(browser: Browser, shown: House) -> None:
    page = browser.new_page()
    sheet = page.request.get(f"{shown.address}{PAGES['round']}/sheet.pdf").body()
    for name, most in (("round", printed(sheet)), ("hive", 2), ("bench", 1)):
        page.goto(shown.address + PAGES[name])
        assert printed(page.pdf(format="A4")) <= most, name
    page.close()


@pytest.mark.parametrize("name", ["register", "colony", "supply", "history", "bench"])
def test_what_is_only_tapped_is_not_printed(browser: Browser, shown: House, name: str) -> None:
    page = browser.new_page()
    page.goto(shown.address + PAGES[name])
    page.emulate_media(media="print")
    expect(page.locator("h1")).to_be_visible()
    tapped = page.locator("main :is(.button, button, select, input:not([type=checkbox]))")
    assert tapped.count()
    assert tapped.filter(visible=True).count() == 0
    page.close()


@pytest.mark.parametrize("has_script", [True, False])
def test_another_row_keeps_what_was_typed(
    browser: Browser, shown: House, *, has_script: bool
) -> None:
    page = browser.new_page(java_script_enabled=has_script)
    page.goto(shown.address + PAGES["begin"])
    page.locator("#f-colony-2").fill("Fern")
    page.get_by_role("button", name="Another row").click()
    expect(page.locator("#f-colony-4")).to_be_visible()
    expect(page.locator("#f-colony-2")).to_have_value("Fern")
    page.close()


@pytest.mark.parametrize("field", ["Frames of bees", "Frames of brood"])
def test_what_is_expected_is_said_with_what_it_is_of(
    browser: Browser, shown: House, field: str
) -> None:
    page = browser.new_page(viewport=PHONE)
    page.goto(shown.address + PAGES["note"])
    page.get_by_role("button", name=f"{field} as expected").click()
    assert float(page.get_by_label(field, exact=True).input_value()) > 0
    page.close()


def printed(pdf: bytes) -> int:
    """How many pages a PDF has."""
    return len(list(PDFPage.get_pages(BytesIO(pdf))))


def test_the_printed_round_is_the_sheet_alone(browser: Browser, shown: House) -> None:
    page = browser.new_page()
    page.goto(shown.address + PAGES["hive"])
    page.emulate_media(media="print")
    expect(page.locator("header")).to_be_hidden()
    expect(page.get_by_role("button", name="Done as planned")).to_be_hidden()
    expect(page.locator(".strip svg").first).to_be_visible()
    expect(page.locator(".find li").first).to_be_visible()
    page.close()
