"""Cells that a spreadsheet would take for a formula, made harmless and brought back."""

from typing import Final

FORMULA: Final = ("=", "+", "-", "@", "\t", "\r")
MARK: Final = "'"  # before it, spreadsheets take a cell for text


def harmless(cell: str) -> str:
    """Mark a text that would be taken for a formula, or that looks marked.

    Examples
    --------
    >>> harmless("=1+1"), harmless("calm"), harmless("'=1")
    ("'=1+1", 'calm', "''=1")

    """
    return MARK + cell if cell.lstrip(MARK).startswith(FORMULA) else cell


def as_meant(cell: str) -> str:
    """Take the mark away again.

    Examples
    --------
    >>> as_meant("'=1+1"), as_meant("'t was calm"), as_meant("-8.5")
    ('=1+1', "'t was calm", '-8.5')

    """
    is_marked = cell.startswith(MARK) and cell.lstrip(MARK).startswith(FORMULA)
    return cell.removeprefix(MARK) if is_marked else cell
