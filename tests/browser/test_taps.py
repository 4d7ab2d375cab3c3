"""Every task of a day, in one walk through the demo, with taps counted."""

import re
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from PIL import Image
from playwright.sync_api import Browser, Page, Playwright, Route, expect
from tests.browser.chromium import chromium
from tests.browser.conftest import ARGUMENTS, House
from tests.browser.for_everyone import expect_for_everyone
from tests.browser.hands import ROUND, hive
from tests.browser.taps import Hand, taps_told
from tests.browser.test_first_day import TASK as FIRST_DAY

from combwright.services.demo import ON
from combwright.terms.entries import Split, Visit

pytestmark = pytest.mark.browser
Task = Callable[[Hand], None]
DIARY = Path(__file__).parents[1] / "data" / "foreign_sheets" / "hive-diary.csv"
NEXT_DAY = "2027-04-25"
TASKS: dict[str, tuple[str, Task]] = {}
# Pages are carried onto a phone in another test; here they would be fetched at every turn.
CARRIES_NOTHING = "caches.open = () => new Promise(() => {});"


def task(name: str, start: str) -> Callable[[Task], Task]:
    """Name a task and the page on which it begins."""

    def kept(do: Task) -> Task:
        TASKS[name] = (start, do)
        return do

    return kept


def visit_of(house: House, colony: str) -> Visit:
    """The newest visit to a colony on the day."""
    noted = [each for each in house.desk.book.now().on(ON) if isinstance(each, Visit)]
    return next(each for each in reversed(noted) if each.colony == colony)


def saved(page: Page) -> None:
    """Wait until a note has left the device."""
    page.wait_for_url(re.compile(r"/hive/[^?]*$|/round/[\d-]+$"))
    expect(page.locator("#net")).to_have_attribute("data-waiting", "0")


@contextmanager
def asked_for(page: Page, address: str | re.Pattern[str]) -> Iterator[None]:
    """See that a tap asks for an address; to work out what is there is another test's."""

    def stop(route: Route) -> None:
        route.fulfill(status=204)  # and the page stays

    page.route(address, stop)
    with page.expect_response(address):
        yield
    page.unroute(address, stop)


@task("To a hive, to the next, and back to the round", ROUND)
def look_through(hand: Hand) -> None:
    page = hand.page
    hand.tap(page.locator(".order li a").first)
    hand.follow("The next hive")
    hand.tap(page.locator(".back a"))
    expect(page).to_have_url(hand.house.address + ROUND)


@task("The round of one yard", ROUND)
def one_yard(hand: Hand) -> None:
    hand.tap(hand.page.locator(".yards a").first)
    expect(hand.page.locator(".order h2")).to_have_count(1)


@task("The round of tomorrow", ROUND)
def tomorrow(hand: Hand) -> None:
    with asked_for(hand.page, f"{hand.house.address}/round/{NEXT_DAY}"):
        hand.follow("The day after")


@task("The round of another day", ROUND)
def another_day(hand: Hand) -> None:
    hand.type(hand.page.get_by_label("Day of the round"), "2027-05-08")
    hand.taps += 1  # on the day, in the calendar that the first tap opens
    with asked_for(hand.page, f"{hand.house.address}/round?on=2027-05-08"):
        hand.press("Go")


@task("Print the sheet as PDF", ROUND)
def print_it(hand: Hand) -> None:
    with asked_for(hand.page, f"{hand.house.address}{ROUND}/sheet.pdf"):
        hand.follow("Print (PDF)")


@task("A pocket card, or large print", ROUND)
def other_papers(hand: Hand) -> None:
    hand.follow("Other papers")
    expect(hand.page.get_by_role("link", name="large print")).to_be_visible()
    card = f"{hand.house.address}{ROUND}/sheet.pdf?paper=card&yard=Alder%20Bank"
    with asked_for(hand.page, card):
        hand.follow("Pocket card")


@task("Share the sheet", ROUND)
def share_it(hand: Hand) -> None:
    hand.press("Share")
    handed = f"round-{ON}.pdf,application/pdf,%PDF-"
    expect(hand.page.locator("body")).to_have_attribute("data-handed", handed)


@task("The bench list, and its first line ticked", ROUND)
def bench(hand: Hand) -> None:
    hand.follow("Bench")
    hand.tap(hand.page.locator("[data-tick]").first)
    expect(hand.page.locator("[data-tick]").first).to_be_checked()


@task("What the patterns mean", hive("Yarrow"))
def key(hand: Hand) -> None:
    hand.follow("What the patterns mean")
    expect(hand.page.locator(".key svg")).to_be_visible()


@task("A visit done as planned", hive("Yarrow"))
def as_planned(hand: Hand) -> None:
    hand.press("Done as planned")
    expect(hand.page.locator("#said")).to_contain_text("Yarrow: noted")
    saved(hand.page)
    assert visit_of(hand.house, "Yarrow").frames_of_bees is None


@task("Everything usual noted as expected", f"{ROUND}/note/Bramble")
def as_expected(hand: Hand) -> None:
    """And none of it needs scrolling to."""
    page = hand.page
    bar = page.locator(".sticky").bounding_box()
    assert bar is not None
    for what in (
        *page.get_by_role("button", name="as expected").all()[:3],
        page.locator("input[name=eggs][value=yes]"),
        page.locator("input[name=queen_cells][value=none]"),
    ):
        box = what.bounding_box()
        assert box is not None
        assert box["y"] + box["height"] <= bar["y"]
        hand.tap(what)
    hand.press("Save")
    saved(page)
    visit = visit_of(hand.house, "Bramble")
    assert None not in {visit.frames_of_bees, visit.frames_of_brood, visit.frames_of_stores}
    assert (visit.eggs, visit.queen_cells) == (True, "none")


@task("Charged queen cells, how many and where", hive("Comfrey"))
def cells(hand: Hand) -> None:
    page = hand.page
    hand.follow("Note what I saw")
    hand.tap(page.locator("input[name=queen_cells][value=charged]"))
    hand.type(page.locator("#f-cells_found"), "7")
    hand.tap(page.locator("input[name=cells_place]").nth(1))
    hand.press("Save")
    saved(page)
    visit = visit_of(hand.house, "Comfrey")
    assert (visit.queen_cells, visit.cells_found) == ("charged", 7)
    assert visit.cells_place is not None


@task("What I found is not what was expected", hive("Mallow"))
def something_else(hand: Hand) -> None:
    page = hand.page
    hand.tap(page.locator(".find summary").first)
    hand.follow("Note this")
    hand.press("Save")
    saved(page)
    assert visit_of(hand.house, "Mallow")


@task("A photo with the visit", f"{ROUND}/note/Thrift")
def photo(hand: Hand) -> None:
    taken = hand.room / "comb.jpg"
    Image.new("RGB", (60, 40), "orange").save(taken)
    hand.unfold("photo")
    hand.give(hand.page.locator("#f-photo"), taken)
    hand.press("Save")
    saved(hand.page)
    assert hand.house.desk.photos.of(visit_of(hand.house, "Thrift").id)


@task("A remark spoken, and what was heard put into its field", f"{ROUND}/note/Vetch")
def spoken(hand: Hand) -> None:
    hand.type(hand.page.get_by_label("Remark"), "6 frames of bees")
    hand.tap(hand.page.locator("#heard button"))
    hand.press("Save")
    saved(hand.page)
    assert visit_of(hand.house, "Vetch").frames_of_bees == 6


@task("A refused note mended", f"{ROUND}/note/Bramble")
def mend_refused(hand: Hand) -> None:
    page = hand.page
    page.locator("#f-frames_of_bees").fill("1")  # another note of the day said otherwise
    page.get_by_role("button", name="Save").click()
    page.wait_for_url(re.compile("/hive/"))
    expect(page.locator("#net")).to_have_attribute("data-refused", "1")
    page.goto(hand.house.address + hive("Bramble"))
    hand.follow("Mend it")
    expect(page.locator("#fault-frames_of_bees")).to_contain_text("in another note")
    hand.type(page.locator("#f-frames_of_bees"), "")
    hand.press("Save")
    saved(page)
    expect(page.locator("#net")).to_have_attribute("data-refused", "0")


@task("What was written on paper, by keyboard alone", ROUND)
def written(hand: Hand) -> None:
    page = hand.page
    hand.follow("Enter from paper")
    expect(page.locator("h1")).to_contain_text("Enter from paper")
    row = next(
        e.order for e in hand.house.desk.rounds.sheet(ON, 7).colonies if e.colony == "Teasel"
    )
    for _ in range(40):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.id") == f"f-frames_of_bees-{row}":
            break
    page.keyboard.type("5")
    for value in ("3", "2"):
        page.keyboard.press("Tab")
        page.keyboard.type(value)
    page.keyboard.press("Enter")
    page.wait_for_url(hand.house.address + ROUND)
    seen = visit_of(hand.house, "Teasel")
    assert (seen.frames_of_bees, seen.frames_of_brood, seen.frames_of_stores) == (5, 3, 2)


@task("What if", "/colony/Bramble")
def what_if(hand: Hand) -> None:
    hand.follow("What if")
    hand.tap(hand.page.get_by_label("Feed"))
    with asked_for(hand.page, re.compile(r"/what-if\?.*feed_g=[1-9]")):
        hand.press("Try it")


@task("A note taken back", hive("Clary"))
def undo(hand: Hand) -> None:
    hand.page.get_by_role("button", name="Done as planned").click()
    expect(hand.page.locator("#said")).to_contain_text("Clary: noted")
    hand.press("Undo")
    expect(hand.page.locator("#said")).to_contain_text("taken back")


@task("The history of a colony, and a visit in it put right", hive("Comfrey"))
def history(hand: Hand) -> None:
    page = hand.page
    hand.unfold("Why")
    hand.follow("All about Comfrey")
    hand.follow("Put right: visit")
    hand.type(page.get_by_label("Why"), "one was a cup")
    hand.type(page.get_by_label("How many cells"), "6")
    hand.press("Save")
    expect(page.locator("main")).to_contain_text("one was a cup")
    assert visit_of(hand.house, "Comfrey").cells_found == 6


@task("A split", "/yards")
def split(hand: Hand) -> None:
    page = hand.page
    hand.follow("Split", exact=True)
    hand.choose(page.locator("#f-colony"), "Bramble")
    hand.type(page.locator("#f-new_colony"), "Fern")
    hand.choose(page.locator("#f-hive"), "nuc 6 polystyrene")
    hand.type(page.locator("#f-frames_of_bees"), "2")
    hand.type(page.locator("#f-frames_of_brood"), "1")
    hand.press("Save")
    expect(page).not_to_have_url(re.compile("/enter/"))
    assert [
        each.new_colony for each in hand.house.desk.book.now().on(ON) if isinstance(each, Split)
    ]


@task("The order of the yards", "/yards")
def order_of_yards(hand: Hand) -> None:
    hand.follow("Change Quarry Field")
    hand.type(hand.page.locator("#f-stop"), "1")
    hand.press("Save")
    expect(hand.page).not_to_have_url(re.compile("/enter/"))
    assert hand.house.desk.book.now().yards["Quarry Field"].stop == 1


@task("“Apiary” instead of “yard”", "/round/2020-01-01")
def apiary(hand: Hand) -> None:
    hand.follow("More")
    hand.follow("Settings")
    hand.unfold("Your words")
    hand.follow("Choose “yard”")
    hand.choose(hand.page.locator("#f-place"), "“apiary”")
    hand.press("Save")
    expect(hand.page.locator("summary", has_text="Your words")).to_contain_text("“apiary”")


@task("Dark, on this device", "/more")
def dark(hand: Hand) -> None:
    hand.follow("Settings")
    hand.unfold("This device")
    hand.tap(hand.page.locator("input[name=theme][value=dark]"))
    assert hand.page.evaluate("document.documentElement.dataset.theme") == "dark"


@task("The address of the calendar copied", "/more")
def calendar(hand: Hand) -> None:
    hand.follow("Settings")
    hand.unfold("Calendar")
    hand.press("Copy the address")
    expect(hand.page.locator("#copied")).not_to_be_empty()


@task("A notebook with faults, told line by line", "/settings")
def faults_of_a_file(hand: Hand) -> None:
    broken = hand.room / "broken.csv"
    broken.write_text("date,colony,frames of bees\n2027-04-24,Bramble,lots\n2027-04-24,Nobody,4\n")
    hand.unfold("The book")
    hand.give(hand.page.locator("#f-file"), broken)
    hand.press("Put it into the book")
    for line in ("line 2", "line 3"):
        expect(hand.page.locator("main li", has_text=line).first).to_be_visible()
    expect_for_everyone(hand.page)


@task("A spreadsheet of one’s own taken in", "/more")
def take_in(hand: Hand) -> None:
    page = hand.page
    diary = hand.room / "diary.csv"
    diary.write_bytes(DIARY.read_bytes().replace(b"/26;", b"/27;"))
    hand.follow("Take in a spreadsheet")
    hand.give(page.locator("#f-file"), diary)
    hand.press("Look at it")
    hand.type(page.get_by_label("of all lines").first, "Orchard Lane")
    hand.press("Look again")
    expect(page.get_by_role("button", name="Take all")).to_be_visible()
    expect_for_everyone(page)
    hand.press("Take all")
    expect(page.locator("h1")).to_contain_text("is in the book")
    expect_for_everyone(page)


@pytest.fixture(scope="module")
def browser(playwright: Playwright) -> Iterator[Browser]:
    found = playwright.chromium.launch(executable_path=chromium(), args=ARGUMENTS)
    yield found
    found.close()


SHARES = (
    "navigator.canShare = () => true;"
    "navigator.share = async ({ files: [one] }) => {"
    " const begins = await one.slice(0, 5).text();"
    " document.body.dataset.handed = [one.name, one.type, begins].join(); };"
)


def test_every_task_needs_the_taps_that_the_docs_tell(
    browser: Browser, house: House, tmp_path: Path
) -> None:
    context = browser.new_context(
        viewport={"width": 390, "height": 844}, has_touch=True, service_workers="block"
    )
    context.grant_permissions(["clipboard-write"])
    context.add_init_script(SHARES + CARRIES_NOTHING)
    page = context.new_page()
    told, counted = taps_told(), {}
    for name, (start, do) in TASKS.items():
        page.goto(house.address + start)
        hand = Hand(page, house, tmp_path)
        do(hand)
        counted[name] = hand.taps
    context.close()
    assert counted == {name: told.get(name) for name in TASKS}
    assert set(told) == {*TASKS, FIRST_DAY}
