"""Every parameter is found, wherever it is kept, and once."""

import ast
import re
from importlib import import_module
from pathlib import Path

import combwright
from combwright.evidence.assumptions import LAYERS, assumptions
from combwright.evidence.check_files import read_checks
from combwright.evidence.targets import targets
from combwright.science.queens import mating
from combwright.simulation.biology import PARAMETERS
from combwright.terms.parameters import Parameter

PACKAGE = Path(combwright.__file__).parent


def test_a_constant_is_found_under_its_name() -> None:
    found = {(one.module, one.name): one.parameter for one in assumptions()}
    assert found["science.queens.mating", "DRY_BELOW_MM"] is mating.DRY_BELOW_MM


def test_a_table_is_found_key_by_key() -> None:
    found = {id(one.parameter) for one in assumptions()}
    assert {id(parameter) for parameter in PARAMETERS.values()} <= found


def test_none_is_listed_twice() -> None:
    found = [id(one.parameter) for one in assumptions()]
    assert len(found) == len(set(found))


def test_no_module_that_makes_parameters_is_missed() -> None:
    makers = {
        path.relative_to(PACKAGE).with_suffix("").as_posix().replace("/", ".")
        for layer in LAYERS
        for path in (PACKAGE / layer).rglob("*.py")
        for node in ast.walk(ast.parse(path.read_text("utf-8")))
        if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "Parameter"
    }
    found = {id(one.parameter) for one in assumptions()}
    for maker in makers:
        held = vars(import_module(f"combwright.{maker}")).values()
        made = [value for value in held if isinstance(value, Parameter)]
        assert all(id(parameter) in found for parameter in made), maker


def test_what_was_read_says_of_which_source_where_it_names_others_that_were_not() -> None:
    """“Read” means read: a source that was only quoted elsewhere or remembered is no reading."""
    told = [(one.parameter.verified, one.parameter.source) for one in assumptions()]
    told += [(one.verified, one.source) for one in read_checks()]
    told += [(one.verified, one.source) for one in targets().values()]
    for verified, source in told:
        if verified == "read" and re.search("second-hand|from memory", source):
            assert re.search(r"\bread\b", source.replace("read second-hand", "")), source
