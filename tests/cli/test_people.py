import json
from datetime import datetime
from pathlib import Path

import pytest
from tests.cli.typed import typed
from tests.noted import noted
from typer.testing import CliRunner

from combwright.cli.main import app
from combwright.records.store.book_handle import Book
from combwright.services.access import Access

OAK = "2027-04-03,Top,Oak,national timber,2026,Dublin Airport,7,3,yes,1"


@pytest.fixture
def book(tmp_path: Path) -> str:
    return str(noted(tmp_path, OAK))


def test_people_come_and_go_at_the_machine(book: str, tmp_path: Path) -> None:
    words = tmp_path / "words.txt"
    words.write_text("nineteen orange kettles whistle\n", "utf-8")
    assert "alone" in typed("people", "list", "--book", book).stdout
    refused = typed("people", "invite", "Ben", "--book", book)
    assert refused.returncode == 2
    assert "Begin with your own" in refused.stderr
    begun = typed("people", "begin", "Anna", "--passphrase-file", str(words), "--book", book)
    assert begun.returncode == 0, begun.stderr
    invited = typed(
        *("people", "invite", "Ben", "--role", "reader"),
        *("--page", "https://bees.example.org/", "--book", book, "--json"),
    )
    assert json.loads(invited.stdout)["link"].startswith("https://bees.example.org/join/")
    assert "is a helper now" in typed("people", "role", "Ben", "helper", "--book", book).stdout
    assert "/join/" in typed("people", "lost", "Ben", "link", "--book", book).stdout
    told = json.loads(typed("people", "list", "--book", book, "--json").stdout)
    assert [(one["name"], one["role"]) for one in told["people"]] == [
        ("Anna", "keeper"),
        ("Ben", "helper"),
    ]
    assert "hash" not in json.dumps(told)
    alone = typed("people", "end", "Anna", "--book", book)
    assert "only keeper" in alone.stderr
    for name in ("Ben", "Anna"):  # and the book is a single keeper's again
        assert typed("people", "end", name, "--book", book).returncode == 0
    lines = [
        one["what"] for one in json.loads(typed("people", "log", "--book", book, "--json").stdout)
    ]
    assert lines == [
        "ended what Anna may do",
        "ended what Ben may do",
        "gave Ben a new link",
        "made Ben a helper",
        "invited Ben as reader",
        "began to share the book",
    ]


def test_sessions_second_factors_and_passphrases_are_ended_and_set_there(book: str) -> None:
    words, access = "nineteen orange kettles whistle\n", Access(Book(book))
    begun = CliRunner().invoke(app, ["people", "begin", "Anna", "--book", book], input=words * 2)
    assert "Anna is the first of its people." in begun.output
    now = datetime.now().astimezone()
    access.begin(now, access.weigh("Anna", words.strip(), "", now).result(), "a phone")
    (line,) = [one for one in typed("people", "list", "--book", book).stdout.splitlines()
               if one.startswith("Session ")]  # fmt: skip
    assert line.endswith("a phone")
    session = line.split()[1].rstrip(":")
    over = typed("people", "end", session, "--session", "--book", book, "--json")
    assert json.loads(over.stdout) == {"session": session}
    assert "Session" not in typed("people", "list", "--book", book).stdout
    told = typed("people", "lost", "Anna", "factor", "--book", book).stdout
    assert told == "Anna comes in by the passphrase alone.\n"
    other = "twelve green spoons in a tree\n"
    setting = ["people", "passphrase", "Anna", "--book", book]
    assert CliRunner().invoke(app, setting, input=other * 2).exit_code == 0
    door = typed("people", "log", "--lines", "2", "--book", book).stdout.splitlines()
    assert len(door) == 2
    whole = typed("people", "log", "--lines", "9" * 60, "--book", book)
    assert whole.stdout.splitlines()[:2] == door
    assert " UTC  " in door[0]


def test_a_door_at_which_nobody_was_says_so(book: str) -> None:
    assert "Nobody has come in" in typed("people", "log", "--book", book).stdout
