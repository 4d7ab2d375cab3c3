"""Rules of the house that a machine can hold us to."""

import ast
import re
import shutil
import subprocess
from collections import Counter
from collections.abc import Iterator
from functools import cache
from graphlib import TopologicalSorter
from pathlib import Path

import grimp
import pytest

from combwright.evidence.assumptions import assumptions

ROOT = Path(__file__).parent.parent
SOURCE = ROOT / "src" / "combwright"
MODULES = sorted(SOURCE.rglob("*.py"))

LONGEST = 300
LONGER_FOR_A_REASON: dict[str, str] = {}

# rooms whose modules decide, but for those that only word, hold or read what others decide by
DECIDING = ("advice.", "belief.", "planning.")
WITHOUT_CHOICE = {"food_words", "money_words", "space_words", "building", "supply_numbers"}

FORBIDDEN_NAMES = {"utils", "util", "helpers", "helper", "common", "core", "base", "manager"}

# Split, so that this list is not what it finds.
REGISTRIES = ["pypi" + ".org", "python" + "hosted", "registry" + ".npmjs", "deb." + "debian.org"]
FORBIDDEN_WORDS = ["tran" + "script", "seed " + "document", "chat" + "gpt", "/" + "shared"]
MACHINE_PATH = re.compile(r"(?<![\w.:/~$}>-])/(?:home|root|work|tmp|Users|opt)/\w")

COUNTING = {0, 1, 2, 3, 0.5, 10, 100, 1000, 1e-9}

HASHES = re.compile(r"--hash=sha256:[0-9a-f]{64}")


@cache
def kept_files() -> list[Path]:
    """Everything that is, or could be, committed; also where git is not installed."""
    if shutil.which("git") and (ROOT / ".git").exists():
        names = subprocess.run(
            ["git", "ls-files", "-z"], cwd=ROOT, check=True, capture_output=True, text=True
        ).stdout.split("\0")
        return [ROOT / name for name in names if name and (ROOT / name).is_file()]
    ignored = {name.strip("/") for name in (ROOT / ".gitignore").read_text().splitlines()} | {
        ".git"
    }
    return [
        path
        for path in ROOT.rglob("*")
        if path.is_file() and not ignored.intersection(path.relative_to(ROOT).parts)
    ]


def kept_texts() -> Iterator[tuple[str, int, str]]:
    """Every line of every text file, with its place."""
    for path in kept_files():
        try:
            lines = path.read_text("utf-8").splitlines()
        except UnicodeDecodeError:
            continue
        for number, line in enumerate(lines, start=1):
            yield str(path.relative_to(ROOT)), number, line


def test_there_is_something_to_look_at() -> None:
    assert len(kept_files()) > 20
    assert len(MODULES) > 20


def test_no_module_is_too_long_to_read() -> None:
    lengths = {
        path.relative_to(SOURCE).as_posix(): len(path.read_text("utf-8").splitlines())
        for path in MODULES
    }
    long = {name for name, lines in lengths.items() if lines > LONGEST}
    assert long == set(LONGER_FOR_A_REASON), {name: lengths[name] for name in long}


def test_no_name_says_nothing() -> None:
    places = [path.relative_to(SOURCE) for path in MODULES]
    assert [each for each in places if {each.stem, *each.parts[:-1]} & FORBIDDEN_NAMES] == []


def test_what_decides_has_a_test_that_names_its_room() -> None:
    """One that imports the module, or one called after it."""
    tests = [path for path in (ROOT / "tests").rglob("test_*.py") if "validation" not in path.parts]
    told = " ".join(path.read_text("utf-8") for path in tests)
    called_after = {path.stem.removeprefix("test_") for path in tests}
    assert [
        module
        for path in MODULES
        if (module := ".".join(path.relative_to(SOURCE).with_suffix("").parts)).startswith(DECIDING)
        and path.stem not in {"__init__", *WITHOUT_CHOICE, *called_after}
        and not re.search(named(module), told)
    ] == []


def named(module: str) -> str:
    """A pattern of the two ways to import a module."""
    room, _, name = module.rpartition(".")
    inside = rf"from combwright\.{re.escape(room)} import (\([^)]*|[^\n(]*)\b{name}\b"
    return rf"from combwright\.{re.escape(module)} import|{inside}"


def test_one_word_is_one_thing() -> None:
    named = Counter(
        node.name
        for path in MODULES
        for node in ast.walk(ast.parse(path.read_text("utf-8")))
        if isinstance(node, ast.ClassDef)
    )
    assert {name for name, times in named.items() if times > 1} == set()


def test_no_file_name_stands_three_times() -> None:
    names = Counter(path.name for path in MODULES if path.name != "__init__.py")
    assert {name for name, times in names.items() if times > 2} == set()


def test_no_module_needs_itself_by_way_of_others() -> None:
    """Imports inside functions and those for types alone are counted too."""
    graph = grimp.build_graph("combwright")
    needs = {name: graph.find_modules_directly_imported_by(name) for name in graph.modules}
    assert any(needs.values())
    TopologicalSorter(needs).prepare()  # it raises a CycleError that names the modules


def test_the_path_pattern_finds_paths_of_a_machine_only() -> None:
    assert MACHINE_PATH.search("open('" + "/" + "home/ann/demo.book')")
    assert MACHINE_PATH.search("/" + "tmp/x")
    assert not MACHINE_PATH.search("https://example.org/home/page")
    assert not MACHINE_PATH.search("demo/home/page")


@pytest.mark.parametrize("words", [FORBIDDEN_WORDS, REGISTRIES], ids=["how", "where from"])
def test_nothing_is_told_of_how_this_was_written_or_where_from(words: list[str]) -> None:
    for place, number, line in kept_texts():
        assert not [word for word in words if word in line.lower()], (place, number)


def test_no_file_names_a_path_of_one_machine() -> None:
    found = [
        place
        for place in kept_texts()
        if MACHINE_PATH.search(place[2]) and place[0] != "tests/test_house.py"
    ]
    assert not found


@pytest.mark.parametrize(
    "lock", sorted(ROOT.glob("requirements*.lock")), ids=lambda path: path.name
)
def test_every_locked_package_is_hashed(lock: Path) -> None:
    entries = re.split(r"\n(?=\w)", lock.read_text("utf-8").strip())
    assert len(entries) > 3
    for entry in entries:
        assert re.match(r"[\w.-]+==\S+", entry), entry
        assert HASHES.search(entry), entry


@cache
def formulas() -> list[tuple[str, ast.FunctionDef]]:
    """The public functions of the science by module, but for the gates that refuse numbers."""
    return [
        (path.stem, node)
        for path in sorted((SOURCE / "science").rglob("*.py"))
        for node in ast.parse(path.read_text("utf-8")).body
        if isinstance(node, ast.FunctionDef)
        and not node.name.startswith(("_", "looks_like"))
        and not node.name.endswith("_within")
    ]


def called(call: ast.Call) -> str:
    return getattr(call.func, "id", getattr(call.func, "attr", ""))


def own_numbers(function: ast.FunctionDef) -> set[float]:
    """The numbers that a formula brings along itself, not those of limits and of counting."""
    limits = {
        id(part)
        for call in ast.walk(function)
        if isinstance(call, ast.Call) and called(call).endswith(("within", "inverse", "round"))
        for part in ast.walk(call)
    }
    return {
        part.value
        for line in function.body
        for part in ast.walk(line)
        if isinstance(part, ast.Constant)
        and isinstance(part.value, int | float)
        and id(part) not in limits
    } - COUNTING


def has(section: str, function: ast.FunctionDef) -> bool:
    docstring = ast.get_docstring(function) or ""
    return f"{section}\n{'-' * len(section)}" in docstring


def test_every_formula_shows_a_case() -> None:
    assert [(room, each.name) for room, each in formulas() if not has("Examples", each)] == []


def test_every_number_in_a_formula_has_a_source() -> None:
    """A formula that only joins others or follows from a definition needs no publication."""
    alone = [(room, each) for room, each in formulas() if not has("References", each)]
    assert [(room, each.name) for room, each in alone if own_numbers(each)] == []


def test_every_assumption_says_where_it_comes_from() -> None:
    found = assumptions()
    assert len(found) > 50
    silent = [
        f"{one.module} {one.name}"
        for one in found
        if len(one.parameter.source) < len("judgement") or not one.parameter.unit
    ]
    assert not silent


def test_data_from_elsewhere_is_cited() -> None:
    for folder in (ROOT / "tests" / "data").glob("*/"):
        text = (folder / "README.md").read_text("utf-8").lower()
        assert "licence" in text or "license" in text, folder


def test_percent_is_written_with_its_space_everywhere() -> None:
    """Through ``terms.percent`` or by hand, never as Python formats it: “1%” beside “1 %”."""
    assert not [
        (path.name, number)
        for path in MODULES
        for number, line in enumerate(path.read_text("utf-8").splitlines(), 1)
        if re.search(r":\.\d%\}|\d%[^\d\w]", line)
    ]
