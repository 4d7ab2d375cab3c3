"""``combwright book import``: shown first, taken when asked for."""

import json
from pathlib import Path

from tests.cli.typed import typed

DIARY = Path(__file__).parents[1] / "data" / "foreign_sheets" / "hive-diary.csv"


def test_a_sheet_is_shown_and_then_taken(tmp_path: Path) -> None:
    words = ("book", "import", str(DIARY), "--book", str(tmp_path / "a.book"))
    shown = typed(*words)
    assert shown.returncode == 0, shown.stderr
    assert "Food -> stores kg" in shown.stdout
    assert "Put that right first" in shown.stdout
    taken = typed(*words, "--same", "yard=Home", "--match", "Food=", "--take", "--json")
    assert json.loads(taken.stdout)["taken"]["lines"] == 4
