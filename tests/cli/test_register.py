"""``combwright register``: what is missing first, as JSON, on paper, for a spreadsheet."""

import json
from pathlib import Path

from tests.cli.typed import typed

from combwright.services.demo import Paths


def test_the_register_of_the_demo_says_what_is_missing(demo: Paths, tmp_path: Path) -> None:
    paper, cells = tmp_path / "register.pdf", tmp_path / "register.csv"
    words = ("register", "--country", "gb", "--year", "2027", "--book", str(demo.book))
    done = typed(*words, "--pdf", str(paper), "--csv", str(cells), "--json")
    assert done.returncode == 0, done.stderr
    told = json.loads(done.stdout)
    assert told["country"] == "Great Britain"
    assert {each["batch"]: each["used"] for each in told["stock"]} == {"S27-041": 8, "F26-118": 0}
    (strips,) = told["treatments"]
    assert (strips["product"], strips["withdrawal_days"], strips["days"]) == (
        "Example strips",
        0,
        42,
    )
    assert len(strips["colonies"]) == 5
    assert "proof of purchase" in " ".join(told["missing"])
    assert paper.read_bytes().startswith(b"%PDF")
    assert "Check the current law" in cells.read_text("utf-8")


def test_another_country_is_refused_in_a_sentence(demo: Paths) -> None:
    done = typed("register", "--country", "FR", "--book", str(demo.book))
    assert done.returncode != 0
    assert "IE, GB, NI" in done.stderr
