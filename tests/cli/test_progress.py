"""Progress goes to the error stream: a bar for eyes, a line for logs, nothing for programs."""

import sys
from io import StringIO

import pytest

from combwright.cli.progress import counted
from combwright.services.progress import PLANNING, READING, Step

STEPS = (Step(READING), Step(PLANNING, 1, 3), Step(PLANNING, 3, 3))


class Screen(StringIO):
    def isatty(self) -> bool:
        return True


def told(stream: StringIO, monkeypatch: pytest.MonkeyPatch, *, shown: bool) -> str:
    monkeypatch.setattr(sys, "stderr", stream)
    monkeypatch.setenv("TERM", "xterm")
    with counted(shown=shown) as tell:
        for step in STEPS:
            tell(step)
    return stream.getvalue()


def test_a_log_gets_one_line_when_all_is_done(monkeypatch: pytest.MonkeyPatch) -> None:
    assert told(StringIO(), monkeypatch, shown=True) == f"{PLANNING}: 3 of 3 colonies\n"


def test_a_screen_gets_a_bar_that_is_gone_at_the_end(monkeypatch: pytest.MonkeyPatch) -> None:
    shown = told(Screen(), monkeypatch, shown=True)
    assert PLANNING in shown
    assert "3 of 3 colonies" in shown
    assert shown.rstrip("\n").endswith(("\x1b[2K", "\x1b[?25h\r\x1b[1A\x1b[2K"))


@pytest.mark.parametrize("stream", [StringIO, Screen])
def test_nothing_is_shown_where_nobody_asked(
    stream: type[StringIO], monkeypatch: pytest.MonkeyPatch
) -> None:
    assert told(stream(), monkeypatch, shown=False) == ""
