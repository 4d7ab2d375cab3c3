"""What a keeper does with the page."""

from collections import Counter
from urllib.parse import quote

from playwright.sync_api import BrowserContext, Locator, Page, expect
from tests.browser.conftest import House

from combwright.services.demo import ON
from combwright.terms.entries import Visit

ROUND = f"/round/{ON}"


def hive(colony: str) -> str:
    """The page of one hive on the round."""
    return f"{ROUND}/hive/{quote(colony)}"


def take_along(context: BrowserContext, house: House) -> Page:
    """Open the round with signal, and wait until all of it is on the phone."""
    page = context.pages[0] if context.pages else context.new_page()
    page.goto(house.address + ROUND)
    page.evaluate("navigator.serviceWorker.ready.then(() => true)")
    expect(page.locator("#carried")).to_have_attribute("data-done", "true")
    return page


def signal_is_back(context: BrowserContext) -> None:
    """Give signal again, and tell the pages, as a phone does; a driven browser does not always."""
    context.set_offline(False)
    for page in context.pages:
        page.evaluate("dispatchEvent(new Event('online'))")


def colonies(house: House) -> list[str]:
    """The colonies of the round in working order."""
    return [each.colony for each in house.desk.rounds.sheet(ON, 7).colonies]


def visited(house: House) -> Counter[str]:
    """How often each colony was visited on the day, by the book."""
    return Counter(each.colony for each in house.desk.book.now().on(ON) if isinstance(each, Visit))


def done_as_planned(page: Page, colony: str) -> None:
    """Tap “Done as planned” on the hive's page, which leads to the next."""
    address = page.url.split("/round")[0]
    if not page.url.endswith(hive(colony)):
        page.goto(address + hive(colony))
    page.get_by_role("button", name="Done as planned").click()
    expect(page.locator("#said")).to_contain_text(f"{colony}: noted")


def look_at(page: Page, colony: str) -> Locator:
    """Open the hive's page, and give what it says of the note."""
    page.goto(page.url.split("/round")[0] + hive(colony))
    return page.locator("article .state")


def waiting(page: Page) -> int:
    """How many notes wait, as the page says."""
    return int(page.locator("#net").get_attribute("data-waiting") or 0)


def expect_waiting(page: Page, count: int) -> None:
    expect(page.locator("#net")).to_have_attribute("data-waiting", str(count))
