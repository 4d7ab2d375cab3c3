"""``combwright prices``: shown, set, and asked for again."""

import json
from pathlib import Path

from tests.cli.typed import typed


def test_prices_are_set_and_shown(tmp_path: Path) -> None:
    book = str(tmp_path / "a.book")
    words = ("--set", "honey=9.5", "--aim", "nucs first", "--on", "2027-04-02", "--book", book)
    done = typed("prices", *words)
    assert done.returncode == 0, done.stderr
    assert "9.5" in done.stdout
    told = json.loads(typed("prices", "--on", "2027-05-01", "--json", "--book", book).stdout)
    assert told["aim"] == "nucs first"
    assert {each["of"]: each["amount"] for each in told["prices"]}["honey"] == 9.5


def test_what_is_no_price_is_refused_with_what_to_write(tmp_path: Path) -> None:
    done = typed("prices", "--set", "honey", "--book", str(tmp_path / "a.book"))
    assert done.returncode == 2
    assert "write it as honey=9.5" in done.stderr
