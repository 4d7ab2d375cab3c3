"""A command as a keeper types it, run within this process: quicker, and coverage sees it."""

import sys
from contextlib import redirect_stderr, redirect_stdout
from dataclasses import dataclass
from io import StringIO

import pytest

from combwright.cli.main import main


@dataclass(frozen=True)
class Done:
    """What came of it."""

    returncode: int
    stdout: str
    stderr: str


def typed(*words: str) -> Done:
    """Type a command and wait for its end."""
    out, err = StringIO(), StringIO()
    code: object = 0
    with pytest.MonkeyPatch.context() as patch, redirect_stdout(out), redirect_stderr(err):
        patch.setattr(sys, "argv", ["combwright", *words])
        patch.setenv("COLUMNS", "120")
        try:
            main()
        except SystemExit as end:
            code = end.code or 0
    assert isinstance(code, int), code
    return Done(code, out.getvalue(), err.getvalue())
