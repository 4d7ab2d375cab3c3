"""Every number that one could argue about, gathered from the modules that use it."""

import pkgutil
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, fields, is_dataclass
from importlib import import_module
from types import ModuleType

import combwright
from combwright.terms.parameters import Parameter

LAYERS = ("kit", "science", "weather", "simulation", "belief", "advice", "planning")


@dataclass(frozen=True, slots=True)
class Assumption:
    """A parameter and where it is used; ``name`` is that of the constant, with its key if any."""

    module: str
    name: str
    parameter: Parameter


def assumptions() -> list[Assumption]:
    """List the parameters of all layers in the order of layer, module and name.

    A constant that a module borrows from another is listed once, where it is met first.

    Examples
    --------
    >>> all(found.parameter.source for found in assumptions())
    True

    """
    listed: dict[int, Assumption] = {}
    for module in _modules():
        place = module.__name__.removeprefix("combwright.")
        for name, parameter in _inside("", vars(module)):
            listed.setdefault(id(parameter), Assumption(place, name, parameter))
    return list(listed.values())


def _modules() -> Iterator[ModuleType]:
    for layer in LAYERS:
        package = import_module(f"{combwright.__name__}.{layer}")
        found = pkgutil.walk_packages(package.__path__, f"{package.__name__}.")
        yield from map(import_module, sorted(module.name for module in found))


def _inside(name: str, held: object) -> Iterator[tuple[str, Parameter]]:
    """Look into tables, tuples and dataclasses; keys and fields lengthen the name."""
    if isinstance(held, Parameter):
        yield name, held
        return
    for key, value in _parts(held):
        yield from _inside(f"{name} {key}".strip(), value)


def _parts(held: object) -> Iterator[tuple[object, object]]:
    if isinstance(held, Mapping):
        yield from ((key, held[key]) for key in held if not str(key).startswith("__"))
    elif isinstance(held, tuple):
        yield from enumerate(held)
    elif is_dataclass(held) and not isinstance(held, type):
        yield from ((field.name, getattr(held, field.name)) for field in fields(held))
