"""What a keeper does with the page."""

import re
from collections import Counter

from playwright.sync_api import BrowserContext, Page, expect
from tests.browser.conftest import House

from combwright.services.demo import ON
from combwright.terms.entries import Visit

ROUND = f"/round/{ON}"


def take_along(context: BrowserContext, house: House) -> Page:
    """Open the round with signal, and wait until all of it is on the phone."""
    page = context.pages[0] if context.pages else context.new_page()
    page.goto(house.address + ROUND)
    page.evaluate("navigator.serviceWorker.ready.then(() => true)")
    expect(page.locator("#carried")).to_have_attribute("data-done", "true")
    return page


def colonies(house: House) -> list[str]:
    """The colonies of the round in working order."""
    return [each.colony for each in house.desk.rounds.sheet(ON, 7).colonies]


def visited(house: House) -> Counter[str]:
    """How often each colony was visited on the day, by the book."""
    return Counter(each.colony for each in house.desk.book.now().on(ON) if isinstance(each, Visit))


def done_as_planned(page: Page, colony: str) -> None:
    """Tap “Done as planned” on the round's page."""
    article = page.locator(f'article[data-colony="{colony}"]')
    article.get_by_role("button", name="Done as planned").click()
    expect(article.locator(".state")).to_have_text(re.compile("noted"))


def waiting(page: Page) -> int:
    """How many notes wait, as the page says."""
    return int(page.locator("#net").get_attribute("data-waiting") or 0)


def expect_waiting(page: Page, count: int) -> None:
    expect(page.locator("#net")).to_have_attribute("data-waiting", str(count))
