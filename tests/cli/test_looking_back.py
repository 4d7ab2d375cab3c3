"""``combwright book find``, ``history`` and ``photo`` on a small book."""

import json
from pathlib import Path

import pytest
from tests.cli.typed import Done, typed
from tests.noted import HEADINGS, noted
from tests.services.book.test_photos import picture

NOTES = (
    "2026-08-02,Top,Oak,national timber,2026,Dublin Airport,7,3,yes,1,Wasps at the door",
    "2027-04-03,Top,Oak,,,,8,3,yes,1,",
    "2027-04-03,Top,Ash,national timber,2026,Dublin Airport,5,2,yes,1,no wasps here",
)


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> str:
    return str(noted(tmp_path_factory.mktemp("a"), *NOTES, headings=f"{HEADINGS},remark"))


def asked(*words: str, book: str) -> Done:
    done = typed("book", *words, "--book", book)
    assert done.returncode == 0, done.stderr
    return done


def test_notes_are_found_by_word_and_by_day_newest_first(book: str) -> None:
    wasps = asked("find", "wasp", book=book).stdout.splitlines()
    assert [line[: len("2027-04-03 Ash")] for line in wasps] == ["2027-04-03 Ash", "2026-08-02 Oak"]
    assert "no wasps here [" in wasps[0]
    told = json.loads(asked("find", "--on", "2027-04-03", "--json", book=book).stdout)
    assert {one["on"] for one in told} == {"2027-04-03"}
    assert {one["about"] for one in told} >= {"Ash", "Oak"}
    assert asked("find", "hornet", book=book).stdout == "No note is like this.\n"


def test_the_history_is_a_line_a_visit_with_what_changed(book: str) -> None:
    oak = asked("history", "--colony", "Oak", book=book).stdout.splitlines()
    assert oak[0].startswith("2027-04-03 Oak: ")
    assert "8 (+1)" in oak[0]
    assert "“Wasps at the door”" in oak[-1]
    told = json.loads(asked("history", "--year", "2027", "--json", book=book).stdout)
    assert [one["colony"] for one in told] == ["Oak", "Ash"]
    none = asked("history", "--yard", "Top", "--year", "2020", book=book).stdout
    assert none == "Nothing is noted of this yet.\n"


def test_a_photo_is_kept_with_a_note_found_and_written_out_again(book: str, tmp_path: Path) -> None:
    sent, kept = tmp_path / "label.jpg", tmp_path / "out.webp"
    sent.write_bytes(picture())
    (note,) = (
        one["entry"]
        for one in json.loads(asked("find", "door", "--json", book=book).stdout)
        if one["kind"] == "visit"
    )
    assert "no photo is kept" in asked("photo", note, book=book).stdout
    assert "a photo is kept" in asked("photo", note, str(sent), book=book).stdout
    told = json.loads(asked("photo", note, "--out", str(kept), "--json", book=book).stdout)
    assert told == {"entry": note, "has_photo": True}
    assert kept.stat().st_mode & 0o777 == 0o600
    assert b"Snapper" not in kept.read_bytes()
    (line,) = asked("find", "--photos", book=book).stdout.splitlines()
    assert line.endswith(f"[{note[:8]}, photo]")


def test_who_is_not_in_the_book_is_told_who_is(book: str) -> None:
    unlike = typed("book", "history", "--colony", "Nettle", "--book", book)
    assert unlike.returncode == 2
    assert "It knows: Ash, Oak." in unlike.stderr
