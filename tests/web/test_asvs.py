"""docs/asvs.md is whole and names tests that exist; and those of its requirements tested here."""

import csv
import re
import struct
from datetime import timedelta
from io import BytesIO
from pathlib import Path
from uuid import UUID
from zipfile import ZipFile

import pyotp
import pytest
from fastapi.testclient import TestClient
from tests.web.desks import PAGE, Clock, client_of

from combwright.records.notebook.foreign_sheet import sheet_rows
from combwright.records.store.people_rows import add_person
from combwright.services.access import Caller
from combwright.services.passphrases import fits, hashed, refuse_weak
from combwright.services.people.second_factor import confirm, offer
from combwright.services.people.sharing import invite, person_named
from combwright.terms.errors import NotebookError, OutOfRangeError
from combwright.terms.person import Person, Role
from combwright.web.desk import Desk
from combwright.web.showing import STATIC

ROOT = Path(__file__).parents[2]
ROW = re.compile(r"^\| (\d+\.\d+\.\d+) \| ([12]) \| (.+?) \| (.+?) \| (.+) \|$", re.MULTILINE)
NAMED = re.compile(r"`((?:\w+/)?test_\w+\.py)(?:::(test_\w+))?`")
LINKED = re.compile(r"\]\(([^)#]*)(#[^)]*)?\)")
OLD = "plum velvet anchors drift northward"


@pytest.fixture(scope="module")
def table() -> list[tuple[str, ...]]:
    return ROW.findall((ROOT / "docs" / "asvs.md").read_text("utf-8"))


def test_the_table_holds_every_requirement_once(table: list[tuple[str, ...]]) -> None:
    with (ROOT / "tests" / "data" / "asvs" / "levels.csv").open(encoding="utf-8") as file:
        wanted = [(row["number"], row["level"]) for row in csv.DictReader(file)]
    # as many as the standard has of each level
    assert [sum(level == each for _, level in wanted) for each in "12"] == [70, 183]
    assert [(number, level) for number, level, *_ in table] == wanted
    assert {state for *_, state, _ in table} == {"met", "not met", "does not apply"}


def test_what_is_met_names_tests_that_exist_or_the_document(table: list[tuple[str, ...]]) -> None:
    files = {str(path): path.read_text("utf-8") for path in (ROOT / "tests").rglob("test_*.py")}
    for number, _, _, state, how in table:
        for file, name in NAMED.findall(how):
            there = [text for path, text in files.items() if path.endswith(f"/{file}")]
            assert there, (number, file)
            assert any(f"def {name}(" in text for text in there) or not name, (number, name)
        assert NAMED.search(how) or LINKED.search(how) or state != "met" or "lint" in how, number


def test_the_numbers_above_the_table_are_its_own(table: list[tuple[str, ...]]) -> None:
    said = (ROOT / "docs" / "asvs.md").read_text("utf-8")
    counts = [sum(row[3] == state for row in table) for state in ("met", "not met")]
    assert f"Of {len(table)} requirements" in said
    assert f"{counts[0]} are met, {counts[1]} are not met" in said


@pytest.mark.parametrize(
    ("path", "kind"),
    [
        ("/yards", "text/html; charset=utf-8"),
        ("/static/app.js", "text/javascript; charset=utf-8"),
        ("/figures.css", "text/css; charset=utf-8"),
        ("/api/colonies", "application/json"),
        ("/book.csv", "text/csv; charset=utf-8"),
        ("/colony/Nobody", "text/html; charset=utf-8"),
        ("/no-such-page", "text/html; charset=utf-8"),
    ],
)
def test_every_answer_has_its_headers(client: TestClient, path: str, kind: str) -> None:
    headers = client.get(path, headers=PAGE).headers
    assert headers["Content-Type"] == kind
    assert headers["X-Content-Type-Options"] == "nosniff"
    assert headers["Referrer-Policy"] == "same-origin"
    for part in ("frame-ancestors 'none'", "object-src 'none'", "base-uri 'none'"):
        assert part in headers["Content-Security-Policy"]


def test_a_passphrase_may_be_long_and_of_any_signs() -> None:
    words = "plum · välvet anchors " * 6
    refuse_weak(words)
    kept = hashed(words)
    assert fits(words, kept)
    assert not fits(words[:-1], kept)


def test_passphrases_are_typed_unseen_and_may_be_pasted() -> None:
    fields = [
        field
        for path in sorted((STATIC.parent / "templates").glob("*.html"))
        for field in re.findall(r'<input[^>]*name="(?:passphrase|new)"[^>]*>', path.read_text())
    ]
    assert len(fields) >= 5
    for field in fields:
        assert 'type="password"' in field
        assert re.search(r'autocomplete="(?:\{\{[^}]*)?(?:current|new)-password', field)
        assert "onpaste" not in field
        assert "maxlength" not in field


def test_what_the_book_keeps_opens_nothing(desk: Desk, clock: Clock) -> None:
    ben = Person(UUID(int=1), "Ben", Role.KEEPER, clock())
    with desk.book.writing() as db:
        add_person(db, ben, passphrase=hashed(OLD))
    codes = confirm(
        desk.book, ben, pyotp.TOTP(offer(desk.book, ben, clock()).seed).at(clock()), clock()
    )
    secrets = [*codes, OLD, invite(desk.book, "Cleo", Role.READER, clock(), None)]
    secrets += [desk.access.begin(clock(), Caller(ben)) for _ in range(3)]
    desk.book.close()
    kept = b"".join(path.read_bytes() for path in Path(desk.book.place).parent.glob("*.book*"))
    assert b"$argon2id$" in kept
    for secret in secrets:
        assert secret.replace("-", "").encode() not in kept
        assert secret.encode() not in kept
    assert len(set(secrets)) == len(secrets)
    assert all(len(token) == 43 for token in secrets[-3:])  # 32 bytes, base64


def test_logging_in_again_ends_the_session_before(desk: Desk, clock: Clock) -> None:
    desk.access.set_passphrase(OLD)
    client = client_of(desk)
    client.post("/login", data={"passphrase": OLD})
    first = client.cookies["combwright"]
    clock.now += timedelta(minutes=1)
    client.post("/login", data={"passphrase": OLD})
    assert client.cookies["combwright"] != first
    assert desk.access.who(first, clock()) is None
    assert len(desk.access.going(clock())) == 1


def test_a_name_is_one_line(desk: Desk, clock: Clock) -> None:
    with desk.book.writing() as db:
        add_person(db, Person(UUID(int=1), "Ben", Role.KEEPER, clock()))
    for name in ("Cleo\n2027-04-24 Ben: logged in", "Cleo\x1b[2J", " "):
        with pytest.raises(OutOfRangeError):
            invite(desk.book, name, Role.READER, clock(), None)
    assert person_named(desk.book, " ben ").name == "Ben"


def test_a_sheet_that_would_unpack_to_very_much_is_refused() -> None:
    made = BytesIO()
    with ZipFile(made, "w") as file:
        file.writestr("xl/workbook.xml", "<workbook/>")
    data = bytearray(made.getvalue())
    says = data.index(b"PK\x01\x02") + 24  # its size unpacked, as the directory tells it
    data[says : says + 4] = struct.pack("<I", 300_000_000)
    with pytest.raises(NotebookError) as refused:
        sheet_rows(bytes(data))
    assert "too large inside" in str(refused.value.__cause__)
