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


def test_a_sheet_without_a_column_that_is_known_says_what_it_lacks(tmp_path: Path) -> None:
    sheet = tmp_path / "other.csv"
    sheet.write_text("apples,pears\n1,2\n", "utf-8")
    shown = typed("book", "import", str(sheet), "--book", str(tmp_path / "a.book"))
    assert shown.returncode == 0, shown.stderr
    assert "No column is taken for date" in shown.stdout
    assert "No column is taken for colony" in shown.stdout
    taken = typed("book", "import", str(sheet), "--book", str(tmp_path / "a.book"), "--take")
    assert taken.returncode == 2
    assert "No column is taken for date or colony." in taken.stderr


def test_a_sheet_that_is_refused_names_no_option_of_another_command(tmp_path: Path) -> None:
    sheet = tmp_path / "diary.csv"
    sheet.write_text("Day,Apiary,Hive,Type,FoB\n2026-04-11,Low,Oak,national timber,five\n", "utf-8")
    words = ("book", "import", str(sheet), "--book", str(tmp_path / "a.book"))
    shown = typed(*words)
    assert "1 line. Nothing was written." in shown.stdout
    assert "2026-04-11" in shown.stdout
    taken = typed(*words, "--take")
    assert taken.returncode == 2
    assert "“five” is not a number" in taken.stderr
    assert "--keep-good" not in taken.stderr
