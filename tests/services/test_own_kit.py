"""A keeper's own kit, from a folder of files to a book that knows it."""

import json
import re
from pathlib import Path

import pytest
from tests.records.samples import noted_as
from typer.testing import CliRunner

from combwright.cli.main import app
from combwright.records.store.book_handle import Book
from combwright.services.beliefs.kept_beliefs import version
from combwright.services.book.book import RefusedError, add_entries
from combwright.services.own_kit import kit_in_use
from combwright.terms.errors import NotFoundError, OutOfRangeError

ROOT = Path(__file__).parents[2]
(EXAMPLE,) = re.findall(r"```toml\n(.*?)```", (ROOT / "docs/kit.md").read_text("utf-8"), re.DOTALL)
ENTRIES = [
    noted_as("yard", 1, "2026-03-01", yard="Mill Lane"),
    noted_as("colony", 2, "2026-03-01", colony="Alder", yard="Mill Lane", hive="home nuc 2"),
]


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    found = tmp_path / "my kit"
    found.mkdir()
    (found / "nucs.toml").write_text(EXAMPLE, "utf-8")
    return found


def test_the_example_of_the_docs_is_a_hive_like_any_other(folder: Path) -> None:
    kit = kit_in_use(folder)
    assert kit.hive("home nuc 2").capacity == 2
    assert kit.hive("national timber").capacity == 12


def test_a_book_knows_the_kit_that_it_was_opened_with(folder: Path, tmp_path: Path) -> None:
    with pytest.raises(RefusedError, match="home nuc 2"):
        add_entries(Book(tmp_path / "plain.book"), ENTRIES)
    own = Book(tmp_path / "own.book", kit=kit_in_use(folder))
    assert add_entries(own, ENTRIES).new == len(ENTRIES)
    full = noted_as("stack", 3, "2026-03-01", colony="Alder", frames=3)
    with pytest.raises(RefusedError, match="holds 2 frames at most"):
        add_entries(own, [full])


def test_a_changed_file_is_another_kit(folder: Path) -> None:
    before = kit_in_use(folder)
    (folder / "nucs.toml").write_text(EXAMPLE.replace("mm = 22", "mm = 25"), "utf-8")
    assert kit_in_use(folder).own != before.own != ""
    assert version()


@pytest.mark.parametrize(
    ("wrong", "line", "what"),
    [
        ("inner_width_mm = 8.5", 1, "centimetres or inches"),
        ('frame = "dn44"', 1, "dn4"),
        ('key = "national timber"', 1, "in the catalogue already"),
    ],
)
def test_what_is_wrong_in_a_file_is_named_with_its_line(
    folder: Path, wrong: str, line: int, what: str
) -> None:
    field = wrong.split(" = ", maxsplit=1)[0]
    text = re.sub(rf"^{field} = \S+.*$", wrong, EXAMPLE, flags=re.MULTILINE)
    (folder / "nucs.toml").write_text(f"# ours\n\n{text}", "utf-8")
    with pytest.raises(
        (NotFoundError, OutOfRangeError), match=rf"nucs\.toml, line {line + 2}"
    ) as told:
        kit_in_use(folder)
    assert what in str(told.value)


def test_what_is_no_text_is_refused_with_its_name(folder: Path) -> None:
    (folder / "nucs.toml").write_bytes(b"\xff\xfe\x00")
    with pytest.raises(OutOfRangeError, match=r"nucs\.toml"):
        kit_in_use(folder)


def test_a_folder_that_is_not_there_is_named(tmp_path: Path) -> None:
    with pytest.raises(NotFoundError, match="no such folder"):
        kit_in_use(tmp_path / "nowhere")


@pytest.mark.parametrize("named", ["option", "environment"])
def test_the_command_line_takes_the_folder(folder: Path, named: str) -> None:
    asked = ["warm", "--hive", "home nuc 2", "--frames-of-bees", "2", "--json"]
    option = ["--kit", str(folder)] if named == "option" else []
    environment = {"COMBWRIGHT_KIT": str(folder)} if named == "environment" else {}
    result = CliRunner().invoke(app, [*option, *asked], env=environment)
    assert result.exit_code == 0, result.output
    assert json.loads(result.stdout)["loss_w_per_k"]
