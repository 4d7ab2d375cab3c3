import json
from pathlib import Path

import pytest
from tests.cli.typed import typed
from tests.noted import noted
from typer.testing import CliRunner

from combwright.cli.main import app

OAK = "2027-04-03,Top,Oak,national timber,2026,Dublin Airport,7,3,yes,1"


@pytest.fixture
def book(tmp_path: Path) -> Path:
    return noted(tmp_path, OAK)


def test_there_and_back_again(book: Path, tmp_path: Path) -> None:
    words = tmp_path / "words"
    words.write_text("four unlikely words together\n", "utf-8")
    sealed = ("--passphrase-file", str(words))
    made = json.loads(
        typed(
            "backup", "--book", str(book), "--to", str(tmp_path / "stick"), *sealed, "--json"
        ).stdout
    )
    assert made["sealed"]
    assert "all of them whole" in typed("check", made["path"], *sealed).stdout
    new = str(tmp_path / "new.book")
    back = typed("restore", made["path"], *sealed, "--book", new)
    assert "entries, as they were at" in back.stdout
    assert typed("book", "export", "--book", new).stdout == (
        typed("book", "export", "--book", str(book)).stdout
    )
    refused = typed("restore", made["path"], "--book", str(tmp_path / "x.book"))
    assert refused.returncode == 2
    assert "--passphrase-file" in refused.stderr


def test_of_many_backups_the_newest_are_kept_and_their_passphrase_may_be_typed(
    book: Path, tmp_path: Path
) -> None:
    stick, words = tmp_path / "stick", "four unlikely words together\n"
    given = ["backup", "--book", str(book), "--to", str(stick), "--sealed", "--keep", "1"]
    for _ in range(2):
        for old in stick.glob("*"):  # of another day: within a second they bear one name
            old.rename(old.with_name("a.book-2026-01-01-120000.backup.zip"))
        done = CliRunner().invoke(app, given, input=words * 2)
        assert done.exit_code == 0, done.output
        assert "entries and 0 photos" in done.output
    assert "1 older ones are gone" in done.output
    (path,) = stick.iterdir()
    found = CliRunner().invoke(app, ["check", str(path), "--sealed", "--json"], input=words)
    assert '"wrong": []' in found.output
    new = str(tmp_path / "typed.book")
    back = ["restore", str(path), "--sealed", "--book", new, "--json"]
    assert f'"book": "{new}"' in CliRunner().invoke(app, back, input=words).output


def test_a_book_is_moved_to_another_file_and_compared(book: Path, tmp_path: Path) -> None:
    there = str(tmp_path / "there.book")
    move = ("book", "move", "--book", str(book), "--to", there)
    told = typed(*move).stdout.splitlines()
    assert f"The book is now in {there}." in told
    assert typed("book", "export", "--book", there).stdout == (
        typed("book", "export", "--book", str(book)).stdout
    )
    assert "something in this book already" in typed(*move).stderr


def test_a_damaged_book_is_told_in_a_sentence(book: Path) -> None:
    assert typed("book", "check", "--book", str(book)).returncode == 0
    content = bytearray(book.read_bytes())
    content[8192:12288] = b"\xff" * 4096
    book.write_bytes(bytes(content))
    for words in (("book", "check"), ("book", "check", "--json"), ("book", "show", "Oak")):
        told = typed(*words, "--book", str(book))
        assert (told.returncode == 0) is ("show" in words)
        assert "damaged" in told.stderr
        assert "Traceback" not in told.stderr
    refused = typed("book", "mend", "0000", "--strike", "--reason", "no", "--book", str(book))
    assert refused.returncode == 2
