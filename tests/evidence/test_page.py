"""The committed page says what the checks say today."""

from pathlib import Path

from combwright.evidence.check_files import read_checks
from combwright.evidence.page import markdown
from combwright.evidence.running import run_all

PAGE = Path(__file__).parents[2] / "docs" / "evidence.md"


def test_the_committed_page_is_current() -> None:
    renew = "renew it: python -m combwright.evidence.page docs/evidence.md"
    assert PAGE.read_text(encoding="utf-8") == markdown(run_all(read_checks())), renew
