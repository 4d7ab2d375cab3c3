import csv
import io
import json
from datetime import date
from io import BytesIO
from uuid import uuid4

import pytest
from hypothesis import given
from openpyxl import load_workbook
from tests.records.samples import a_visit, histories

from combwright.records.notebook.entry_table import (
    from_csv,
    from_json,
    is_entry_table,
    to_csv,
    to_json,
    to_xlsx,
)
from combwright.records.problems import Problem
from combwright.terms.entries import AnyEntry, Visit
from combwright.terms.errors import NotebookError


@given(histories())
def test_a_table_gives_the_same_entries_back(entries: list[AnyEntry]) -> None:
    data = to_csv(entries).encode()
    assert is_entry_table(data)
    assert [one for _, one in from_csv(data)] == entries


@given(histories())
def test_a_list_of_objects_gives_the_same_entries_back(entries: list[AnyEntry]) -> None:
    assert [one for _, one in from_json(to_json(entries).encode())] == entries


def test_no_cell_can_act_as_a_formula() -> None:
    texts = ["=1+1", "+1", "-1", "@SUM(A1)", "\tx", "'=1", "''@", "' calm"]
    entries = [a_visit(at, remark=text) for at, text in enumerate(texts)]
    data = to_csv(entries)
    cells = [cell for row in csv.reader(io.StringIO(data)) for cell in row]
    assert not [cell for cell in cells if cell.startswith(("=", "+", "-", "@", "\t", "\r"))]
    assert [one for _, one in from_csv(data.encode())] == entries


@pytest.mark.parametrize(
    "text", ["[" * 200_000, '[{"a":' * 50_000, "[" + "9" * 6000 + "]", "[NaN]"]
)
def test_json_that_no_export_writes_is_a_sentence(text: str) -> None:
    try:
        told = [one for _, one in from_json(text.encode())]
    except NotebookError:
        return
    assert all(isinstance(one, Problem) for one in told)


def test_a_bad_value_is_named_by_line_and_column() -> None:
    data = to_csv([a_visit(1, frames_of_bees=6)]).replace("6.0", "66").encode()
    ((line, problem),) = from_csv(data)
    assert isinstance(problem, Problem)
    assert line == problem.line == 2
    assert "“frames_of_bees”" in problem.column
    assert "less than or equal to 40" in problem.what


@pytest.mark.parametrize(
    ("text", "what"),
    [('[{"id": "x"}]', "what kind of entry it is."), ('[{"kind": "x"}]', "no such kind of entry.")],
)
def test_what_is_no_kind_of_entry_is_said_in_short(text: str, what: str) -> None:
    ((_, problem),) = from_json(text.encode())
    assert isinstance(problem, Problem)
    assert problem.what.endswith(what)


def test_a_table_that_was_cut_off_says_where() -> None:
    data = to_csv([a_visit(1), a_visit(2, remark="calm\nand sunny")]).encode()
    cut = data[: data.index(b"and sunny")]
    found = list(from_csv(cut))
    assert found[0][1] == a_visit(1)
    assert isinstance(found[1][1], Problem)
    assert "never closed" in found[1][1].what


@pytest.mark.parametrize(
    ("text", "what", "where"),
    [
        ('[{"kind": "visit"', "not complete JSON", "line 1, column 18"),
        ('{"kind": "visit"}', "not a list", ""),
    ],
)
def test_broken_json_says_where(text: str, what: str, where: str) -> None:
    with pytest.raises(NotebookError) as caught:
        list(from_json(text.encode()))
    assert what in caught.value.what
    assert caught.value.where == where


def test_an_object_that_is_no_entry_is_named() -> None:
    text = json.dumps([{"kind": "visit", "id": "x", "on": "2026-04-01", "colony": "A"}, 7])
    told = [one for _, one in from_json(text.encode())]
    assert [isinstance(one, Problem) and one.line for one in told] == [1, 2]


def test_no_cell_of_the_spreadsheet_is_a_formula() -> None:
    remarks = ["=HYPERLINK(1)", "+1", "-1", "@x", "bell\x07", "calm"]
    visits = [
        Visit.model_construct(id=uuid4(), kind="visit", on=date(2027, 4, 3), colony="A", remark=one)
        for one in remarks
    ]
    sheet = load_workbook(BytesIO(to_xlsx(visits))).active
    told = [str(cell.value) for row in sheet.iter_rows(min_row=2) for cell in row if cell.value]
    assert not [one for one in told if one.startswith(("=", "+", "-", "@"))]
    assert all(cell.data_type != "f" for row in sheet.iter_rows() for cell in row)
