"""The page that waits for a round, while the notes of every colony are read for the first time."""

from collections.abc import Iterator
from itertools import groupby
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect
from tests.browser.conftest import PHONE, House, Telephone, free_port
from tests.browser.for_everyone import SMALL, WCAG_2_2, violations
from tests.browser.hands import ROUND, signal_is_back
from tests.demo import copied
from tests.web.desks import Clock

from combwright.records.store.book_handle import Book
from combwright.services.demo import ON, Paths
from combwright.services.progress import LEARNING, OPENING, PLANNING, READING, READY
from combwright.web.desk import lay_out

pytestmark = pytest.mark.browser
MANY = 500  # members: slow enough for the page to be looked at
LONG_MS = 120_000
# what is shown is kept where it outlives the page, but watched only until the page is left
WATCH = """() => {
  const wait = document.querySelector("#wait");
  const [doing, bar] = ["[role=status]", "progress"].map(part => wait.querySelector(part));
  const seen = [];
  const look = () => {
    seen.push([doing.textContent, bar.hasAttribute("value") ? bar.value : 0]);
    sessionStorage.setItem("seen", JSON.stringify(seen));
  };
  new MutationObserver(look).observe(wait, {
    subtree: true, childList: true, attributes: true
  });
  look();
}"""


@pytest.fixture
def waiting(demo: Paths, tmp_path: Path, telephone: Telephone) -> Iterator[Page]:
    """A telephone that has asked for a round which takes some seconds."""
    clock = Clock()
    desk = lay_out(Book(copied(demo, tmp_path)), clock=clock, members=MANY)
    house = House(desk, clock, free_port())
    house.open()
    assert telephone.context is not None
    page = telephone.context.pages[0]
    page.goto(house.address + ROUND)
    yield page
    house.shut()
    desk.close()


def test_it_tells_the_work_in_its_order_and_gives_way_to_the_round(waiting: Page) -> None:
    """What was noted just before is said while it waits, and again on the round."""
    waiting.evaluate(f"sessionStorage.noted = JSON.stringify({{colony: 'Bramble', on: '{ON}'}})")
    waiting.reload()
    expect(waiting.locator("#said")).to_contain_text("Bramble: noted")
    waiting.evaluate(WATCH)
    expect(waiting.locator(".order li")).to_have_count(16, timeout=LONG_MS)
    expect(waiting.locator("#said")).to_contain_text("Bramble: noted")
    seen: list[tuple[str, int]] = waiting.evaluate("JSON.parse(sessionStorage.seen)")
    # the page looks once a second, so that what is done sooner may pass unseen
    told = [doing for doing, _ in groupby(doing for doing, _ in seen)]
    assert told == [
        doing for doing in (OPENING, READY, LEARNING, READING, PLANNING) if doing in told
    ]
    assert {LEARNING, READING} & set(told)
    for half in (LEARNING, READING, PLANNING):
        done = [count for doing, count in seen if doing == half]
        assert done == sorted(done)
        assert not done or done[-1] <= 16
    assert any(0 < count < 16 for doing, count in seen if doing in {LEARNING, READING})


def test_it_is_for_everyone_and_outlasts_a_gap_in_the_signal(waiting: Page) -> None:
    """Without JavaScript it looks again by itself."""
    browser = waiting.context.browser
    assert browser is not None
    plain = browser.new_page(java_script_enabled=False)
    plain.goto(waiting.url)
    expect(plain.locator("h1")).to_contain_text("Working out")
    waiting.context.set_offline(True)
    expect(waiting.locator("#wait [role=status]")).to_contain_text("No signal")
    assert violations(waiting, WCAG_2_2) == []
    assert waiting.evaluate("document.documentElement.scrollWidth") <= PHONE["width"]
    assert waiting.evaluate(SMALL) == []
    signal_is_back(waiting.context)
    expect(waiting.locator(".order li")).to_have_count(16, timeout=LONG_MS)
    expect(plain.locator(".order li")).to_have_count(16, timeout=LONG_MS)
