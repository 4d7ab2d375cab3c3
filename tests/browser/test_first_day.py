"""From an empty folder to the first sheet, by hand, with taps counted."""

import re
import time
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect
from tests.browser.conftest import House, Telephone, free_port
from tests.browser.taps import taps_told
from tests.web.desks import Clock, desk_on

pytestmark = pytest.mark.browser
FIVE_MINUTES_S = 300
A_TAP_S = 3  # with dry hands, and a word of two or a number typed; judgement
SEEN = {"1": ("7", "4", "2"), "2": ("5", "3", "2"), "3": ("3", "1", "1")}
TASK = "From an empty folder to the first sheet of three colonies"


def fill(page: Page) -> None:
    page.get_by_label("Yard").fill("Home")
    place = page.get_by_label("Nearest town or village")
    place.press_sequentially("Bantr")
    offered = page.locator("#places option").first
    expect(offered).to_have_attribute("value", re.compile("Bantry"))
    place.fill(offered.get_attribute("value") or "")
    for row, (name, seen) in enumerate(SEEN.items(), 1):
        page.locator(f"#f-colony-{row}").fill(name)
        for field, value in zip(("bees", "brood", "stores"), seen, strict=True):
            page.locator(f"#f-frames_of_{field}-{row}").fill(value)


def test_three_colonies_have_a_sheet_within_five_minutes(
    telephone: Telephone, tmp_path: Path
) -> None:
    desk = desk_on(tmp_path / "new" / "own.book", Clock())
    house = House(desk, desk.clock, free_port())  # type: ignore[arg-type]
    house.open()
    begun = time.monotonic()
    assert telephone.context
    page = telephone.context.pages[0]
    page.goto(house.address)
    fill(page)
    page.get_by_role("button", name="Make today’s sheet").click()
    taps = len(SEEN) * 4 + 4  # yard, place, its choice, four fields a colony, and the button
    expect(page.locator(".order li")).to_have_count(3, timeout=60_000)
    expect(page.locator(".wanted")).to_contain_text("how you count")
    assert taps == taps_told()[TASK]
    assert taps * A_TAP_S + time.monotonic() - begun < FIVE_MINUTES_S
    house.shut()
    desk.close()
