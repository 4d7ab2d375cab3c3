import pytest
from hypothesis import given
from hypothesis import strategies as st

from combwright.records.notebook.lines import lengths, table
from combwright.terms.errors import NotebookError


@pytest.mark.parametrize("separator", [",", ";", "\t"])
@pytest.mark.parametrize("ending", ["\n", "\r\n", "\r"])
@pytest.mark.parametrize("mark", [b"", b"\xef\xbb\xbf"])
def test_separators_line_ends_and_byte_order_marks_are_understood(
    separator: str, ending: str, mark: bytes
) -> None:
    text = ending.join(["date,colony,remark", " 2026-04-01 ,Alder,calm", "", ",,", "2026-04-02,Ó,"])
    found = table(mark + text.replace(",", separator).encode())
    assert found.headings == ("date", "colony", "remark")
    assert [row.cells for row in found.rows] == [
        ("2026-04-01", "Alder", "calm"),
        ("2026-04-02", "Ó", ""),
    ]
    assert [row.line for row in found.rows] == [2, 5]


def test_lines_are_counted_as_in_the_file_when_a_remark_has_several() -> None:
    found = table(b'date,remark\n2026-04-01,"one\ntwo"\n2026-04-02,three\n')
    assert [(row.line, row.cells[1]) for row in found.rows] == [(2, "one\ntwo"), (4, "three")]


@pytest.mark.parametrize(
    ("data", "what", "where"),
    [
        (b"", "empty", ""),
        (b"\xef\xbb\xbf \n\n", "empty", ""),
        ("date,colony\n".encode("utf-16"), "UTF-16", ""),
        ("date,colony\n".encode("utf-16-le"), "zero bytes", "line 1, column 1"),
        (b"date,colony\n2026-04-01,\xc1lder\n", "0xc1 is not UTF-8", "line 2, column 2"),
        (b"date,colony\n2026-04-01,Al\0der\n", "zero bytes", "line 2, column 2"),
        (b"PK\x03\x04rest", "spreadsheet's own file", ""),
        (b"\xd0\xcf\x11\xe0rest", "spreadsheet's own file", ""),
    ],
)
def test_files_that_are_no_text_are_named_for_what_they_are(
    data: bytes, what: str, where: str
) -> None:
    with pytest.raises(NotebookError) as caught:
        table(data)
    assert what in caught.value.what
    assert caught.value.where == where
    assert caught.value.remedy


def test_the_letter_of_an_older_encoding_is_shown() -> None:
    with pytest.raises(NotebookError, match="“Á”"):
        table("date,colony\n2026-04-01,Álder\n".encode("cp1252"))


def test_a_quotation_mark_that_is_never_closed_stops_the_reading_there() -> None:
    found = table(b'date,remark\n2026-04-01,calm\n2026-04-02,"cut of')
    assert [row.line for row in found.rows] == [2]
    assert found.cut_line == 3
    assert "never closed" in str(found.cut_off)


def test_text_after_a_closing_quotation_mark_stops_the_reading_there() -> None:
    found = table(b'date,remark\n2026-04-01,"calm" bees\n2026-04-02,x\n')
    assert found.cut_line == 2
    assert "follows a closing quotation mark" in str(found.cut_off)


def test_short_and_long_lines_are_named_with_the_column() -> None:
    found = table(b"date,colony,remark\n2026-04-01,Alder,a,b\n2026-04-01,A,a,,\n2026-04-02,Ald")
    told = [(row.line, error) for row, error in lengths(found)]
    assert told[0][1] is not None
    assert told[0][1].where == "column 4"
    assert told[1][1] is None  # blank columns at the end are what spreadsheets leave behind
    assert told[2][1] is not None
    assert told[2][1].where == "column 3 “remark”"
    assert "half-written" in told[2][1].what


@given(st.binary(max_size=60))
def test_any_bytes_are_a_table_or_an_error_with_a_remedy(data: bytes) -> None:
    try:
        found = table(data)
    except NotebookError as error:
        assert error.remedy  # noqa: PT017  (either outcome is right)
    else:
        assert found.headings
