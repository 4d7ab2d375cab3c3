"""Pictures of every page on a phone and on a desk: ``make screenshots`` writes docs/screens."""

import sys
from io import BytesIO
from pathlib import Path
from tempfile import TemporaryDirectory

from PIL import Image
from playwright.sync_api import Browser, ViewportSize, sync_playwright
from tests.browser.chromium import chromium
from tests.browser.conftest import ARGUMENTS, PHONE, House, free_port
from tests.browser.pages import PAGES, made_from
from tests.web.desks import Clock

from combwright.records.store.book_handle import Book
from combwright.services.demo import ON, write_demo
from combwright.web.desk import lay_out
from combwright.web.pages.reading import AT_HAND

DESK: ViewportSize = {"width": 1280, "height": 900}
SIZES = {"phone": PHONE, "desk": DESK}
COLOURS = 128
PATIENCE_MS = 180_000  # a busy machine takes its time over a page that is worked out
ANCHORS: dict[str, str] = {}
THEMES = {"round-dark": ("round", "dark")}


def take(browser: Browser, house: House, folder: Path) -> None:
    """Take every picture."""
    views = {name: (name, "sunlight") for name in PAGES} | THEMES
    for size, viewport in SIZES.items():
        for picture, (name, theme) in views.items():
            page = browser.new_page(viewport=viewport, service_workers="block")
            page.set_default_timeout(PATIENCE_MS)
            page.goto(house.address + PAGES[name])
            page.evaluate(f"document.documentElement.dataset.theme = '{theme}'")
            if name in ANCHORS:
                page.locator(ANCHORS[name]).first.evaluate("e => e.scrollIntoView()")
            page.wait_for_timeout(300)  # until the page has come to rest
            taken = Image.open(BytesIO(page.screenshot()))
            # a few colours do for lines and letters, and make a third of the size
            taken.convert("RGB").quantize(COLOURS).save(
                folder / f"{picture}-{size}.png", optimize=True
            )
            page.close()


def main() -> None:
    """Write the demo, show it, and take the pictures."""
    folder = Path(sys.argv[1])
    folder.mkdir(parents=True, exist_ok=True)
    with TemporaryDirectory() as room:
        clock = Clock()
        desk = lay_out(Book(write_demo(Path(room)).book), clock=clock, is_demo=True)
        desk.rounds.sheet(ON, 7)
        AT_HAND.findings(60.0)
        house = House(desk, clock, free_port())
        house.open()
        with sync_playwright() as found:
            browser = found.chromium.launch(executable_path=chromium(), args=ARGUMENTS)
            for old in folder.glob("*.png"):
                old.unlink()
            take(browser, house, folder)
            (folder / "made-from.txt").write_text(made_from() + "\n", "utf-8")
            browser.close()
        house.shut()
        desk.close()


if __name__ == "__main__":
    main()
