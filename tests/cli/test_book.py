import json
from pathlib import Path

import pytest
from tests.cli.typed import typed
from tests.records.samples import notebook
from typer.testing import CliRunner

from combwright.cli.main import app, main
from combwright.cli.options import book_place

run = CliRunner()


@pytest.fixture
def paths(tmp_path: Path) -> tuple[str, str]:
    """Give a notebook and where its book is to be."""
    file = tmp_path / "notes.csv"
    file.write_bytes(notebook("2026-04-06,,Alder,,,7,,,,500,"))
    return str(file), str(tmp_path / "a.book")


def test_adding_says_what_was_new(paths: tuple[str, str]) -> None:
    file, book = paths
    first = run.invoke(app, ["book", "add", file, "--book", book])
    assert first.exit_code == 0
    assert f"2 lines read into {book}: 7 new entries" in first.stdout
    again = json.loads(run.invoke(app, ["book", "add", file, "--book", book, "--json"]).stdout)
    assert again == {"lines": 2, "new": 0, "known": 5, "corrected": 0, "problems": []}


def test_a_refused_file_ends_with_code_two_and_every_place(
    paths: tuple[str, str], monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    file, book = paths
    Path(file).write_bytes(notebook('3/4/2026,,Alder,,,"6,5",,,,,', "2026-04-09,,Elder,,,7,,,,,"))
    monkeypatch.setattr("sys.argv", ["combwright", "book", "add", file, "--book", book])
    with pytest.raises(SystemExit) as ended:
        main()
    assert ended.value.code == 2
    told = capsys.readouterr()
    assert told.out == ""
    assert told.err.startswith(f"combwright: {file}: 4 problems, so nothing was added.")
    for place in ("line 3, column 1 “date”", "line 3, column 6 “frames of bees”", "line 4, column"):
        assert place in told.err
    assert "Traceback" not in told.err


def test_a_refused_file_is_told_as_json_too(paths: tuple[str, str]) -> None:
    file, book = paths
    Path(file).write_bytes(notebook("3/4/2026,,Alder,,,7,,,,,"))
    refused = run.invoke(app, ["book", "add", file, "--book", book, "--json"])
    assert refused.exit_code == 2
    (problem,) = json.loads(refused.stdout)["problems"]
    assert (problem["line"], problem["column"]) == (3, "column 1 “date”")
    assert "2026-04-03" in problem["remedy"]


def test_the_good_lines_are_kept_and_the_others_named(paths: tuple[str, str]) -> None:
    file, book = paths
    Path(file).write_bytes(notebook("3/4/2026,,Alder,,,7,,,,,"))
    kept = run.invoke(app, ["book", "add", file, "--book", book, "--keep-good"])
    assert kept.exit_code == 0
    assert "Left out:\n  line 3, column 1 “date”" in kept.stdout


def test_a_colony_is_shown(paths: tuple[str, str]) -> None:
    file, book = paths
    run.invoke(app, ["book", "add", file, "--book", book])
    shown = run.invoke(app, ["book", "show", "Alder", "--book", book])
    assert "national timber at Mill Lane since 3 April 2026, queen of 2025" in shown.stdout
    assert "frames of bees 7" in shown.stdout
    page = json.loads(run.invoke(app, ["book", "show", "Alder", "--book", book, "--json"]).stdout)
    assert page["standing"]["frames"] == 8
    assert [each["kind"] for each in page["entries"]][:2] == ["colony", "visit"]


@pytest.mark.parametrize("form", ["csv", "json"])
def test_an_exported_book_can_be_added_to_an_empty_one(
    paths: tuple[str, str], tmp_path: Path, form: str
) -> None:
    file, book = paths
    run.invoke(app, ["book", "add", file, "--book", book])
    out, copy = str(tmp_path / "all"), str(tmp_path / "copy.book")
    written = run.invoke(app, ["book", "export", "--format", form, "--out", out, "--book", book])
    assert (written.exit_code, written.stdout) == (0, "")
    assert run.invoke(app, ["book", "add", out, "--book", copy]).exit_code == 0
    texts = [run.invoke(app, ["book", "export", "--book", one]).stdout for one in (book, copy)]
    assert texts[0] == texts[1]
    assert texts[0].startswith("id,kind,on,")


def test_without_a_named_book_the_keepers_own_folder_is_used(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path))
    assert book_place(None) == str(tmp_path / "combwright" / "keeper.book")
    assert book_place("mine.book") == "mine.book"


def test_every_book_command_says_what_it_does_and_gives_an_example() -> None:
    for name in ("add", "show", "export"):
        told = run.invoke(app, ["book", name, "--help"], env={"COLUMNS": "200"}).stdout
        assert f"Example: combwright book {name}" in told
        assert "--book" in told


def test_orders_and_batches_are_listed_and_shown(tmp_path: Path) -> None:
    file, book = tmp_path / "orders.csv", str(tmp_path / "a.book")
    file.write_text(
        "date,colony,order,customer,how many,wanted by,batch of cells,day 0,begun\n"
        "2027-01-10,,A7,Byrne,2,2027-06-20,,,\n"
        "2027-05-10,,,,,,B1,2027-05-10,30\n",
        "utf-8",
    )
    assert run.invoke(app, ["book", "add", str(file), "--book", book]).exit_code == 0
    listed = run.invoke(app, ["book", "list", "orders", "--book", book])
    assert listed.stdout.startswith("A7: 2 nucs of 5 frames for Byrne, wanted by 20 June 2027")
    (batch,) = json.loads(
        run.invoke(app, ["book", "list", "batches", "--book", book, "--json"]).stdout
    )
    assert (batch["batch"], batch["day_0"], batch["begun"]) == ("B1", "2027-05-10", 30)
    shown = json.loads(run.invoke(app, ["book", "show", "A7", "--book", book, "--json"]).stdout)
    assert (shown["order"], len(shown["entries"])) == ("A7", 1)
    assert "no queens" in run.invoke(app, ["book", "list", "queens", "--book", book]).stdout


def test_one_is_said_as_one_and_what_was_odd_is_said_of_new_lines_alone(
    paths: tuple[str, str],
) -> None:
    file, book = paths
    run.invoke(app, ["book", "add", file, "--book", book])
    Path(file).write_bytes(notebook("2026-04-06,,Alder,,,30,,,,500,"))
    told = run.invoke(app, ["book", "add", file, "--book", book, "--correct"]).stdout
    assert "2 lines read" in told
    assert "1 new entry, " in told
    assert "1 earlier entry corrected" in told
    assert "30 frames of bees" in told
    again = run.invoke(app, ["book", "add", file, "--book", book])
    assert "0 new entries" in again.stdout
    assert "30 frames" not in again.stdout


def test_a_refused_change_is_said_once_and_keeps_no_draft_in_the_terminal(
    paths: tuple[str, str],
) -> None:
    file, book = paths
    typed("book", "add", file, "--book", book)
    shown = json.loads(typed("book", "show", "Alder", "--json", "--book", book).stdout)
    ids = {each["kind"]: each["id"] for each in shown["entries"]}
    mend = ("book", "mend", "--reason", "slip", "--book", book)
    refused = typed(*mend, ids["colony"], "--strike")
    assert refused.returncode == 2
    assert refused.stderr.count("There is no colony “Alder” in the book") == 1
    assert "draft" not in refused.stderr
    assert "Nothing was changed." in refused.stderr
    mended = typed(*mend, ids["visit"][:8], "--set", "frames of bees=9")
    assert "frames of bees 9" in mended.stdout
    assert (
        mended.stdout.split()[-1].strip(".")
        in typed("book", "show", "Alder", "--book", book).stdout
    )


def test_who_adds_a_sheet_of_their_own_is_told_what_reads_it(tmp_path: Path) -> None:
    sheet = tmp_path / "diary.csv"
    sheet.write_text("Date,Colony,Site,FoB\n2026-04-11,Oak,Low,5\n", "utf-8")
    refused = typed("book", "add", str(sheet), "--book", str(tmp_path / "a.book"))
    assert refused.returncode == 2
    assert "combwright book import" in refused.stderr
