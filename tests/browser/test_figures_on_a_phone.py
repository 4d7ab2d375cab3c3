"""Charts and tables on a telephone: letters that can be read, and words for who listens."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Page, Playwright, expect
from tests.browser.chromium import chromium
from tests.browser.conftest import ARGUMENTS, PHONE, House
from tests.browser.pages import PAGES

pytestmark = pytest.mark.browser
LEAST_PX = 11.0  # what can be read at arm's length; judgement
SMALLEST = """svg => Math.min(...[...svg.querySelectorAll("text")].map(
  text => parseFloat(getComputedStyle(text).fontSize) * svg.getScreenCTM().a))"""
BESIDE = """[...document.querySelectorAll(".stack-cells tbody tr:first-child td")].map(
  td => getComputedStyle(td, "::before").content)"""


@pytest.fixture(scope="module")
def phone(playwright: Playwright) -> Iterator[Page]:
    browser = playwright.chromium.launch(executable_path=chromium(), args=ARGUMENTS)
    yield browser.new_page(viewport=PHONE, service_workers="block")
    browser.close()


@pytest.mark.parametrize("name", ["worth", "colony-ahead", "what-if"])
def test_a_chart_can_be_read_and_is_told_in_words(
    phone: Page, shared_house: House, name: str
) -> None:
    phone.goto(shared_house.address + PAGES[name])
    shown = phone.locator("svg.season").filter(visible=True)
    expect(shown.first).to_be_visible()
    aloud = phone.get_by_role("img")  # what is hidden from who listens is none
    assert aloud.count() == shown.count() > 0
    for chart in shown.all():
        assert chart.evaluate(SMALLEST) >= LEAST_PX
        assert len(chart.locator("desc").first.text_content() or "") > len(
            chart.get_attribute("aria-label") or ""
        )


def test_each_worth_stands_under_what_it_is_of(phone: Page, shared_house: House) -> None:
    phone.goto(shared_house.address + PAGES["worth"])
    phone.get_by_text("In numbers, week by week").click()
    table = phone.get_by_role("table")
    assert table.get_by_role("columnheader").all_inner_texts()[1] == "a frame of bees"
    boxes = [one.bounding_box() for one in table.get_by_role("columnheader").all()]
    values = [one.bounding_box() for one in table.get_by_role("row").nth(1).locator("th, td").all()]
    assert [round(box["x"]) for box in boxes if box] == [round(box["x"]) for box in values if box]
    assert all(box["x"] + box["width"] <= PHONE["width"] for box in boxes if box)


@pytest.mark.parametrize(
    ("name", "told"),
    [("settings", "Usual"), ("colonies", "Last seen"), ("numbers-room", "Range")],
)
def test_cells_below_each_other_say_what_they_are(
    phone: Page, shared_house: House, name: str, told: str
) -> None:
    phone.goto(shared_house.address + PAGES[name])
    phone.evaluate("document.querySelectorAll('details').forEach(d => { d.open = true })")
    assert any(told in words for words in phone.evaluate(BESIDE))
