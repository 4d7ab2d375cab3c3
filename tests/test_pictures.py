"""The pictures in the docs are those of today's pages."""

import re

from tests.browser.pages import SCREENS, made_from

SHOWING = ("README.md", "docs/look.md")


def test_pictures_are_as_new_as_templates_and_styles() -> None:
    kept = (SCREENS / "made-from.txt").read_text("utf-8").strip()
    assert kept == made_from(), "run `make screenshots`, and look at them one by one"


def test_every_picture_that_is_shown_is_there() -> None:
    root = SCREENS.parents[1]
    for name in SHOWING:
        page = root / name
        shown = re.findall(r"\]\(([^)]+\.png)\)", page.read_text("utf-8"))
        assert len(shown) >= 3
        assert all((page.parent / picture).is_file() for picture in shown)
