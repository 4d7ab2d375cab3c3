"""The round on the command line: JSON, terminal, PDF, and what cannot be done."""

import json
import os
import shutil
import subprocess
import sys
from pathlib import Path
from typing import IO, Any
from uuid import uuid4

import pytest
from tests.cli.typed import typed
from tests.commands import COMMANDS
from tests.noted import noted
from tests.paper.conftest import round_sheet
from typer.testing import CliRunner

from combwright.cli.main import app
from combwright.cli.round import show
from combwright.planning.sheet import LeftOut
from combwright.planning.supplies import ALWAYS
from combwright.records.store.book_handle import Book
from combwright.services.book.entry_form import take_entry
from combwright.services.rounds.kept_plans import plans_folder

run = CliRunner()
PROGRAM = Path(sys.executable).with_name("combwright")
LINES = (
    "2027-04-10,Top,Oak,national timber,2026,Dublin Airport,7,3,yes,2",
    "2027-04-10,Top,Ash,nuc 6 polystyrene,2026,Dublin Airport,3,1.5,yes,1",
    "2027-04-10,Low,[b]Elm,national timber,2025,Dublin Airport,7,3,yes,6",
)
PLAN = ("round", "--on", "2027-04-17", "--members", "20")
BANDS = ("frames_of_bees", "frames_of_brood", "stores_kg", "room_cells")


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return noted(tmp_path_factory.mktemp("round"), *LINES)


@pytest.fixture(scope="module")
def told(book: Path) -> dict[str, Any]:
    answer = run.invoke(app, [*PLAN, "--book", str(book), "--json"])
    assert answer.exit_code == 0
    sheet: dict[str, Any] = json.loads(answer.stdout)
    return sheet


def combwright(
    *words: str, env: dict[str, str] | None = None, stdout: int | IO[bytes] = subprocess.PIPE
) -> "subprocess.CompletedProcess[bytes]":
    command = [str(PROGRAM), *words]
    return subprocess.run(
        command, check=False, timeout=120, env=env, stdout=stdout, stderr=subprocess.PIPE
    )


def test_the_sheet_has_what_issue_two_lists(told: dict[str, Any]) -> None:
    assert told["on"] == "2027-04-17"
    assert {"on", "colonies", "bench", "load"} <= set(told)
    assert [each["colony"] for each in told["colonies"]] == ["Oak", "Ash", "[b]Elm"]
    for each in told["colonies"]:
        assert {"colony", "yard", "jobs", "because", "branches"} <= set(each)
        for name in BANDS:
            band = each["expected"][name]
            assert 0 <= band["low"] <= band["mid"] <= band["high"]
        assert {"syrup_g", "per_day_g", "days", "sugar_fraction"} <= set(each["portion"])
        wanted = {"frames", "dummy_boards", "supers", "excluder", "entrance_mm", "tray_open_mm"}
        assert wanted <= set(each["set_up"])
        assert each["because"]
        assert each["branches"]
    assert {"sugar_kg", "water_kg", "syrup_l", "frames_drawn", "boxes"} <= set(told["bench"])
    assert [stop["yard"] for stop in told["load"]] == ["Top", "Low"]


def test_a_colony_without_a_portion_has_zeros(told: dict[str, Any]) -> None:
    without = [c["portion"] for c in told["colonies"] if c["portion"]["syrup_g"] == 0]
    assert without
    for portion in without:
        assert portion["per_day_g"] == portion["days"] == portion["sugar_fraction"] == 0


def test_the_terminal_names_every_colony_literally_and_says_it_once(book: Path) -> None:
    shown = run.invoke(app, [*PLAN, "--book", str(book)]).stdout
    for name in ("1. Oak", "2. Ash", "3. [b]Elm"):
        assert shown.count(name) == 1
    assert "Saturday 17 April 2027" in shown
    assert shown.count("Look for queen cells.") == 1
    for part in ("if you find", "why:", "expect", "Bench", "Load", "Take care"):
        assert part in shown


def test_two_processes_write_the_same_bytes(book: Path, tmp_path: Path) -> None:
    answers, papers = [], []
    for number in (1, 2):
        pdf = tmp_path / f"{number}.pdf"
        shutil.rmtree(plans_folder(), ignore_errors=True)  # neither takes the other's plans
        environment = os.environ | {"PYTHONHASHSEED": str(number)}
        words = [*PLAN, "--book", str(book), "--json", "--pdf", str(pdf)]
        done = combwright(*words, env=environment)
        assert done.returncode == 0, done.stderr
        answers.append(done.stdout)
        papers.append(pdf.read_bytes())
    assert answers[0] == answers[1]
    assert papers[0] == papers[1]
    assert papers[0].startswith(b"%PDF")


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--on", "2027-04-09"], "9 April 2027 lies before the first note"),
        (["--on", "3/4/2027"], "could be 3 April or 4 March 2027"),
        (["--on", "soon"], "“soon” is not a day"),
        (["--on", "2027-04-17", "--days", "0"], "Give 1 to 60 days"),
        (["--on", "2027-04-17", "--yard", "Nowhere"], "There are: Low, Top"),
        (["--on", "2027-04-17", "--pdf", "/dev/full"], "No space left"),
        (["--on", "2027-04-17", "--book", "."], "cannot be opened"),
        (["--on", "2027-04-17", "--book", "none.book"], "no book here yet"),
    ],
)
def test_what_is_wrong_is_said_with_code_two(book: Path, words: list[str], said: str) -> None:
    named = words if "--book" in words else [*words, "--book", str(book)]
    before = book.read_bytes()
    done = typed("round", "--members", "20", *named)
    assert done.returncode == 2
    assert said in done.stderr
    assert book.read_bytes() == before


@pytest.mark.parametrize("form", [[], ["--json"]])
def test_a_full_output_is_said_in_a_sentence(book: Path, form: list[str]) -> None:
    with Path("/dev/full").open("wb") as full:
        done = combwright(*PLAN, "--book", str(book), *form, stdout=full)
    assert done.returncode == 2
    assert b"cannot be written out: No space left on device." in done.stderr
    assert b"Traceback" not in done.stderr


def test_a_reader_who_leaves_early_is_no_error(book: Path) -> None:
    words = [str(PROGRAM), *PLAN, "--book", str(book), "--json"]
    with subprocess.Popen(words, stdout=subprocess.PIPE, stderr=subprocess.PIPE) as done:
        assert done.stdout is not None
        assert done.stderr is not None
        done.stdout.close()
        assert done.stderr.read() == b""


def test_a_folder_that_may_not_be_written_keeps_the_old_sheet(book: Path, tmp_path: Path) -> None:
    pdf = tmp_path / "no" / "such" / "folder.pdf"
    done = typed(*PLAN, "--book", str(book), "--pdf", str(pdf))
    assert done.returncode == 2
    assert "cannot be written" in done.stderr
    assert not pdf.parent.exists()


@pytest.mark.parametrize("words", ["round", "why", "whatif", "book show", "book export"])
def test_every_command_that_reads_the_book_takes_the_book(words: str) -> None:
    options = [name for each in COMMANDS[words].params for name in each.opts]  # type: ignore[attr-defined]
    assert "--book" in options


def test_the_terminal_says_apiary_where_the_keeper_does(tmp_path: Path) -> None:
    book = noted(tmp_path, *LINES[:1])
    take_entry(Book(book), "wording", {"id": str(uuid4()), "on": "2027-04-10", "place": "apiary"})
    done = typed(*PLAN, "--yard", "Nowhere", "--book", str(book))
    assert "no apiary “Nowhere”" in done.stderr
    planned = typed(*PLAN, "--book", str(book)).stdout
    assert "apiary" in planned
    assert " yard" not in planned


def test_notes_of_the_day_itself_are_said_not_to_be_in_it(tmp_path: Path) -> None:
    given = ["round", "--book", str(noted(tmp_path, LINES[0])), "--members", "20", "--on"]
    said = "What was noted on 10 April 2027 itself is not in it yet."
    assert said in run.invoke(app, [*given, "2027-04-10"]).stdout
    assert "not in it yet" not in run.invoke(app, [*given, "2027-04-11"]).stdout


@pytest.mark.parametrize("question", ["Which? Say it once, under “How you count”.", "Is that so?"])
def test_how_a_terminal_is_told_how_one_counts_is_said_where_it_is_asked(
    question: str, capsys: pytest.CaptureFixture[str]
) -> None:
    sheet = round_sheet()
    asked = sheet.colonies[0].model_copy(update={"questions": [question]})
    show(sheet.model_copy(update={"colonies": [asked]}))
    told = " ".join(capsys.readouterr().out.split())
    assert question in told
    assert ("“brood counted in”" in told) == ("How you count" in question)


@pytest.mark.parametrize(
    ("boxes", "said"), [(1, "on 9 frames"), (2, "on 9 frames in 2 brood boxes")]
)
def test_how_many_brood_boxes_there_are_is_said(
    boxes: int, said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    sheet = round_sheet()
    stack = sheet.colonies[0].set_up.model_copy(update={"frames": 9, "brood_boxes": boxes})
    show(
        sheet.model_copy(
            update={"colonies": [sheet.colonies[0].model_copy(update={"set_up": stack})]}
        )
    )
    told = " ".join(capsys.readouterr().out.split())
    assert f"{said} + 1 dummy board" in told


def test_what_one_yard_alone_needs_is_not_called_always(capsys: pytest.CaptureFixture[str]) -> None:
    sheet = round_sheet()
    stop = sheet.load[0].model_copy(update={"items": [*ALWAYS, "thymol (gel) for 2 colonies"]})
    show(sheet.model_copy(update={"load": [stop]}))
    told = " ".join(capsys.readouterr().out.split())
    assert f"always: {'; '.join(ALWAYS)} {stop.yard}: thymol (gel) for 2 colonies" in told


def test_a_colony_that_waits_is_marked_where_it_stands(capsys: pytest.CaptureFixture[str]) -> None:
    sheet = round_sheet()
    waits = LeftOut(colony="Q2 Furze", yard="Old Quarry", minutes=9, costs=1, cannot_wait=False)
    show(sheet.model_copy(update={"left_out": [waits]}))
    told = " ".join(capsys.readouterr().out.split())
    assert told.count("(no time today)") == 1
    assert told.index("Q2 Furze") < told.index("(no time today)") < told.index("Q3 Gorse")
