"""The browser for the tests: one that stands here, else one fetched by Playwright's installer.

``python -m tests.browser.chromium`` fetches one into the virtual environment where none is found.
"""

import os
import shutil
import subprocess
import sys
from functools import cache
from pathlib import Path

from playwright.sync_api import sync_playwright

NAMES = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome")
PLACES = ("/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",)
INSTALLER = [sys.executable, "-m", "playwright", "install", "--no-shell", "chromium"]
# Beside the package, so that what was fetched goes with the virtual environment.
os.environ.setdefault("PLAYWRIGHT_BROWSERS_PATH", "0")


def starts(path: str | Path) -> bool:
    """Whether it is there with all that it needs: a library missing stops it here already."""
    try:
        said = subprocess.run([path, "--version"], check=False, capture_output=True, timeout=60)
    except (OSError, subprocess.TimeoutExpired):
        return False
    return said.returncode == 0


def fetched() -> Path | None:
    """What Playwright's installer has put here."""
    with sync_playwright() as playwright:
        path = playwright.chromium.executable_path
    return Path(path) if starts(path) else None


@cache
def chromium() -> Path | None:
    """The browser that CHROMIUM names and no other; else the first that starts."""
    if named := os.environ.get("CHROMIUM"):
        return Path(named) if starts(named) else None
    here = (*filter(None, map(shutil.which, NAMES)), *PLACES)
    return next((Path(path) for path in here if starts(path)), None) or fetched()


def main() -> None:
    """Fetch a browser where none is."""
    if chromium() is not None:
        return
    print("No Chromium or Chrome here; fetching one for the tests of the pages ...")  # noqa: T201
    tried = subprocess.run(INSTALLER, check=False, capture_output=True, text=True)
    chromium.cache_clear()
    if chromium() is None:
        why = "it does not start here" if tried.returncode == 0 else "the download failed"
        print(f"There is none yet: {why}. The tests of the pages will be left out.")  # noqa: T201


if __name__ == "__main__":
    main()
