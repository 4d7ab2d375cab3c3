"""What holds for every page: read aloud, in either theme, on a small phone, in large letters."""

from typing import Any

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page
from tests.browser.conftest import PHONE

WCAG_2_2 = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
# What was looked for and what is wrong; not all that is right, which would take its time to tell.
LOOK = """runOnly => axe.run({ runOnly, resultTypes: ["violations"] }).then(found => [
  found.passes.length,
  found.violations.flatMap(one => one.nodes.slice(0, 3).map(
    node => [one.id, node.html.slice(0, 200), node.any.slice(0, 1).map(each => each.message)])),
])"""
# Everything that is tapped and smaller than 44 px; links within a line of text may be.
SMALL = """
[...document.querySelectorAll("a, button, input, select, textarea, summary")]
  .filter(e => e.checkVisibility() && e.type !== "hidden")
  .filter(e => e.tagName !== "A" || e.matches(".button") || !e.closest("p, dd, td, .head"))
  .map(e => [(e.closest("label") ?? e).getBoundingClientRect(), e])
  .filter(([r]) => r.width > 0 && r.left >= 0 && (r.height < 43.5 || r.width < 43.5))
  .map(([r, e]) => `${e.outerHTML.slice(0, 90)} ${r.width} x ${r.height}`)
"""
# With letters twice as large no bar covers more than a third of the page, and no words run over.
COVERED = """
[...document.querySelectorAll("header nav, .sticky, h1, button, .button, th, label, summary")]
  .filter(e => e.checkVisibility())
  .map(e => [e, getComputedStyle(e)])
  .filter(([e, style]) => e.scrollWidth > e.clientWidth + 1 && style.display !== "inline"
    || ["fixed", "sticky"].includes(style.position) && e.offsetHeight > innerHeight / 3)
  .map(([e]) => e.outerHTML.slice(0, 120))
"""
TWICE = "225%"  # of ours, which are 112.5 %


def violations(page: Page, rules: list[str]) -> list[Any]:
    """What axe finds wrong on a page, by the rules of these names."""
    if not page.evaluate("'axe' in window"):
        page.evaluate(Axe().axe_script)
    looked_for, found = page.evaluate(LOOK, rules)
    assert looked_for
    return list(found)


def expect_for_everyone(page: Page) -> None:
    """Look at a page in both themes, as it is, and in letters twice as large."""
    page.set_viewport_size(PHONE)
    page.evaluate("document.querySelectorAll('main details').forEach(d => { d.open = true })")
    page.evaluate("document.documentElement.dataset.theme = 'sunlight'")
    assert violations(page, WCAG_2_2) == []
    page.evaluate("document.documentElement.dataset.theme = 'dark'")
    assert violations(page, ["color-contrast"]) == []
    assert page.evaluate("document.documentElement.scrollWidth") <= PHONE["width"]
    assert page.evaluate(SMALL) == []
    page.evaluate(f"document.documentElement.style.fontSize = '{TWICE}'")
    assert page.evaluate("document.documentElement.scrollWidth") <= PHONE["width"]
    assert page.evaluate(COVERED) == []
    page.evaluate("document.documentElement.style.fontSize = ''")
    page.evaluate("delete document.documentElement.dataset.theme")
