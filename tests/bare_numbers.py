"""Numbers of a module that have no name: what one could argue about belongs into a data file."""

import ast
from collections.abc import Container, Iterator, Mapping


def numbers(tree: ast.AST) -> Iterator[ast.Constant]:
    """All numbers in a piece of code."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and type(node.value) in (int, float):
            yield node


def bare(
    source: str,
    *,
    counting: Container[float],
    named: Mapping[str, float] | None = None,
    places: bool = False,
) -> list[str]:
    """Numbers with their lines, but for those that count and those named at the head of a module.

    With ``places`` those do not matter either that say where in an array one reads.
    """
    tree = ast.parse(source)
    fine = set(_of_places(tree)) if places else set()
    for node in tree.body:
        given = (named or {}).get(_name(node), None)
        fine |= {id(number) for number in numbers(node) if number.value == given}
    return [
        f"line {number.lineno}: {number.value!r}"
        for number in numbers(tree)
        if id(number) not in fine and number.value not in counting
    ]


def _name(node: ast.stmt) -> str:
    target = node.targets[0] if isinstance(node, ast.Assign) else getattr(node, "target", None)
    return target.id if isinstance(target, ast.Name) else ""


def _of_places(tree: ast.AST) -> Iterator[int]:
    for node in ast.walk(tree):
        if isinstance(node, ast.Subscript):
            yield from map(id, numbers(node.slice))
        if isinstance(node, ast.Call) and ast.unparse(node.func) in {"range", "np.empty"}:
            yield from map(id, numbers(node))
