"""The science that is tested is the science that runs: a user reaches every public function."""

import ast
from collections.abc import Iterator, Mapping
from pathlib import Path

import pytest

import combwright

PACKAGE = Path(combwright.__file__).parent
Name = tuple[str, str]  # module, what it defines


def reached(texts: Mapping[str, str]) -> tuple[set[Name], set[Name]]:
    """Give what the modules of science define, and what of it other rooms use, in the end.

    The evidence does not count: it checks a formula, it does not need one.
    """
    uses: dict[Name, set[Name]] = {}
    asked: set[Name] = set()
    for module, text in texts.items():
        tree = ast.parse(text)
        borrowed = _borrowed(tree, texts)
        if not module.startswith("science."):
            if not module.startswith("evidence"):
                asked |= set(_used(tree, module, borrowed))
            continue
        for node in tree.body:
            for name in _defined(node):
                uses[module, name] = set(_used(node, module, borrowed)) - {(module, name)}
    found: set[Name] = set()
    while asked:
        one = asked.pop()
        if one in uses and one not in found:
            found.add(one)
            asked |= uses[one]
    return set(uses), found


def _borrowed(tree: ast.Module, texts: Mapping[str, str]) -> dict[str, str | Name]:
    """Give what each imported name stands for: a module, or a name in one."""
    borrowed: dict[str, str | Name] = {}
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom) and (node.module or "").startswith("combwright."):
            place = str(node.module).removeprefix("combwright.")
            for alias in node.names:
                whole = f"{place}.{alias.name}"
                borrowed[alias.asname or alias.name] = (
                    whole if whole in texts else (place, alias.name)
                )
    return borrowed


def _used(node: ast.AST, module: str, borrowed: Mapping[str, str | Name]) -> Iterator[Name]:
    for each in ast.walk(node):
        if isinstance(each, ast.Name):
            meant = borrowed.get(each.id, (module, each.id))
            if isinstance(meant, tuple):
                yield meant
        elif isinstance(each, ast.Attribute) and isinstance(each.value, ast.Name):
            meant = borrowed.get(each.value.id, "")
            if isinstance(meant, str):
                yield meant, each.attr


def _defined(node: ast.stmt) -> Iterator[str]:
    if isinstance(node, ast.FunctionDef | ast.ClassDef):
        yield node.name
    elif isinstance(node, ast.Assign | ast.AnnAssign):
        targets = node.targets if isinstance(node, ast.Assign) else [node.target]
        named = (each for target in targets for each in ast.walk(target))
        yield from (each.id for each in named if isinstance(each, ast.Name))


def _texts() -> dict[str, str]:
    return {
        path.relative_to(PACKAGE).with_suffix("").as_posix().replace("/", "."): path.read_text(
            "utf-8"
        )
        for path in PACKAGE.rglob("*.py")
    }


def test_a_user_reaches_every_public_function() -> None:
    """One that fails here needs a caller in the product, or goes with its checks."""
    defined, found = reached(_texts())
    public = {name for name in defined if name[1][0] != "_"}
    assert ("science.syrup.strength", "density_kg_per_l") in public
    assert sorted(public - found) == []


SCIENCE = """
def used(): return below()
def below(): return 1
def alone(): return below()
def itself(): return itself()
"""


@pytest.mark.parametrize(
    ("caller", "expected"),
    [
        ({"services.one": "from combwright.science.two import used\nused()"}, {"used", "below"}),
        ({"services.one": "from combwright.science import two\ntwo.alone()"}, {"alone", "below"}),
        ({"services.one": "from combwright.science.two import used"}, set()),
        ({"evidence.one": "from combwright.science.two import used\nused()"}, set()),
        ({"science.three": "from combwright.science.two import used\nx = used()"}, set()),
    ],
    ids=["by name", "by module", "imported only", "by the evidence", "by science nobody uses"],
)
def test_what_counts_as_a_use(caller: dict[str, str], expected: set[str]) -> None:
    _, found = reached({"science.two": SCIENCE, **caller})
    assert found == {("science.two", name) for name in expected}
