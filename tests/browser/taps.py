"""A hand whose taps are counted, and the table in the docs that says how many a task may need."""

import re
from pathlib import Path

from playwright.sync_api import Locator, Page
from tests.browser.conftest import House

TOLD = Path(__file__).parents[2] / "docs" / "page.md"
ROW = re.compile(r"^\| ([^|]+?) \| ([^|]+?) \| (\d+) \|$", re.MULTILINE)


class Hand:
    """One hand on a page of a house, with a room for files.

    A tap is a tap, and so is going to a field before typing there.
    """

    def __init__(self, page: Page, house: House, room: Path) -> None:
        self.page, self.house, self.room, self.taps = page, house, room, 0

    def tap(self, what: Locator) -> None:
        what.tap()
        self.taps += 1

    def press(self, name: str) -> None:
        self.tap(self.page.get_by_role("button", name=name))

    def follow(self, name: str, *, exact: bool = False) -> None:
        self.tap(self.page.get_by_role("link", name=name, exact=exact).first)

    def unfold(self, name: str) -> None:
        self.tap(self.page.locator("summary", has_text=name).first)

    def type(self, what: Locator, words: str) -> None:
        what.fill(words)
        self.taps += 1

    def choose(self, what: Locator, words: str) -> None:
        """Open a list, and tap what is meant."""
        what.select_option(label=words)
        self.taps += 2

    def give(self, what: Locator, file: Path) -> None:
        """Open what chooses a file, and tap the file."""
        what.set_input_files(file)
        self.taps += 2


def taps_told() -> dict[str, int]:
    """Read how many taps the docs promise for each task."""
    return {task: int(taps) for task, _, taps in ROW.findall(TOLD.read_text("utf-8"))}
