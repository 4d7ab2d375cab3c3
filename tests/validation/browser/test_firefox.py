"""Every page in Firefox as well: for everyone, on the smallest phone, in large letters."""

from pathlib import Path

import pytest
from axe_playwright_python.base import AXE_SCRIPT
from tests.browser.conftest import PHONE, House, shared_house
from tests.browser.for_everyone import COVERED, SMALL, TWICE, WCAG_2_2
from tests.browser.pages import PAGES
from tests.validation.browser.firefox import Marionette, firefox, opened

__all__ = ["shared_house"]
pytestmark = pytest.mark.validation
LEAST_PX = 500  # Firefox without a screen makes no window narrower
RULES = f"{{runOnly: {WCAG_2_2}}}"
AXE = f"return (await axe.run(document, {RULES})).violations.map(v => v.id + v.nodes[0].html)"
OPEN = "document.querySelectorAll('main details').forEach(d => { d.open = true })"
TOO_WIDE = "return document.documentElement.scrollWidth > innerWidth"
LARGE = f"document.documentElement.style.fontSize = '{TWICE}'"


@pytest.mark.skipif(firefox() is None, reason="no Firefox is here, and FIREFOX names none")
def test_every_page_in_firefox(shared_house: House, tmp_path: Path) -> None:
    program = firefox()
    assert program
    with opened(program, tmp_path) as browser:
        browser.ask("WebDriver:SetWindowRect", **PHONE)
        assert browser.run("return innerWidth") <= LEAST_PX
        found = {name: faults(browser, shared_house, name) for name in PAGES}
    assert not any(found.values()), {name: some for name, some in found.items() if some}


def faults(browser: Marionette, house: House, name: str) -> list[object]:
    """Look at one page, and give what is wrong."""
    browser.ask("WebDriver:Navigate", url=house.address + PAGES[name])
    browser.run(f"{OPEN}; {AXE_SCRIPT}; window.axe = axe")
    wrong = [browser.run(AXE), browser.run(TOO_WIDE), browser.run(f"return {SMALL.strip()}")]
    browser.run(LARGE)
    return [
        each
        for each in [*wrong, browser.run(TOO_WIDE), browser.run(f"return {COVERED.strip()}")]
        if each
    ]
