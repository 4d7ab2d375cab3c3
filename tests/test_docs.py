"""Documentation that a machine can prove wrong."""

import re
import shlex
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from tests.cli.typed import typed
from tests.commands import COMMANDS

ROOT = Path(__file__).parent.parent
DOCS = ROOT / "docs"
PAGES = sorted([*ROOT.glob("*.md"), *DOCS.rglob("*.md")])
GENERATED = {"cli.md", "evidence.md", "glossary.md", "licences.md", "numbers.md"}
SCHEMAS = {"entries.schema.json", "round.schema.json"}

FENCE = re.compile(r"^ *```(\w*)\n(.*?)^ *```", re.MULTILINE | re.DOTALL)
LINK = re.compile(r"\[[^]]*\]\(([^)\s]+)\)")


def name_of(page: Path) -> str:
    return page.relative_to(ROOT).as_posix()


@pytest.fixture(scope="module")
def command_page() -> dict[str, str]:
    """The sections of docs/cli.md by the command that they show."""
    sections = re.split(
        r"^## combwright ?", (DOCS / "cli.md").read_text("utf-8"), flags=re.MULTILINE
    )
    return {section.split("\n", 1)[0]: section for section in sections[1:]}


def test_every_command_is_documented_with_an_example(command_page: dict[str, str]) -> None:
    assert [
        command
        for command in COMMANDS
        if not re.search(rf"Example:\s+`?combwright {command}", command_page[command])
    ] == []


def test_the_page_shows_no_command_that_is_gone(command_page: dict[str, str]) -> None:
    groups = {command.rsplit(" ", 1)[0] for command in COMMANDS if " " in command}
    assert set(command_page) == {"", *COMMANDS, *groups}


def test_generated_pages_are_current() -> None:
    """But for that of the evidence, which stands with the checks, as they take long to run."""
    quick = (GENERATED | SCHEMAS) - {"evidence.md"}
    made = subprocess.run(
        [sys.executable, DOCS / "generate.py", "--check", *quick],
        check=False,
        capture_output=True,
        text=True,
    )
    assert made.returncode == 0, made.stdout + made.stderr


def test_links_lead_somewhere() -> None:
    assert [(name_of(page), link) for page in PAGES for link in broken_links(page)] == []


def broken_links(page: Path) -> Iterator[str]:
    for link in LINK.findall(FENCE.sub("", page.read_text("utf-8"))):
        if re.match(r"[a-z]+:", link):
            continue
        path, _, anchor = link.partition("#")
        target = (page.parent / path).resolve() if path else page
        if not target.exists() or (anchor and anchor not in anchors(target)):
            yield link


def anchors(page: Path) -> set[str]:
    """The names under which headings of a page can be linked to."""
    headings = re.findall(r"^#+ (.+)$", page.read_text("utf-8"), re.MULTILINE)
    return {re.sub(r"[^\w -]", "", text).strip().lower().replace(" ", "-") for text in headings}


def test_every_page_can_be_reached_from_the_readme() -> None:
    reached: set[Path] = set()
    ahead = [ROOT / "README.md"]
    while ahead:
        page = ahead.pop()
        if page in reached:
            continue
        reached.add(page)
        for link in LINK.findall(page.read_text("utf-8")):
            target = (page.parent / link.partition("#")[0]).resolve()
            if target.is_dir():
                ahead += target.glob("*.md")
            elif target.suffix == ".md" and target.exists():
                ahead.append(target)
    assert set(PAGES) <= reached


def test_decisions_are_numbered_in_order() -> None:
    decisions = sorted((DOCS / "decisions").iterdir())
    assert decisions
    for number, decision in enumerate(decisions, start=1):
        assert re.fullmatch(rf"{number:04}-[a-z0-9-]+\.md", decision.name)
        assert decision.read_text("utf-8").startswith(f"# {number}. ")


def shown_commands(page: Path) -> list[str]:
    """What a reader of a page is told to type in its console blocks."""
    blocks = [text for kind, text in FENCE.findall(page.read_text("utf-8")) if kind == "console"]
    lines = [line.strip() for block in blocks for line in block.splitlines()]
    return [line.removeprefix("$ ") for line in lines if line.startswith("$ ")]


SHOWN = {name_of(page): shown_commands(page) for page in PAGES if page.name not in GENERATED}


def test_the_readme_shows_commands() -> None:
    assert len(SHOWN["README.md"]) > 5


def test_console_blocks_hold_our_command_only() -> None:
    strange = [line for lines in SHOWN.values() for line in lines if line[:11] != "combwright "]
    assert not strange, "what this test cannot run belongs into a block marked sh"


@pytest.fixture(scope="module")
def folder_with_demo(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder in which `make demo` has been run."""
    folder = tmp_path_factory.mktemp("reader")
    assert typed("demo", "--dir", str(folder / "demo")).returncode == 0
    return folder


@pytest.mark.parametrize("page", [page for page, lines in SHOWN.items() if lines])
def test_shown_commands_run(
    page: str, folder_with_demo: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shutil.copytree(folder_with_demo, tmp_path, dirs_exist_ok=True)
    monkeypatch.chdir(tmp_path)
    for line in SHOWN[page]:
        _, *words = shlex.split(line)
        ran = typed(*words)
        assert ran.returncode == 0, f"{line}\n{ran.stdout[-2000:]}{ran.stderr[-2000:]}"
        assert ran.stdout.strip() or "--pdf" in words, f"{line} printed nothing"
