"""Frames that stand too wide are told of; a usual pitch, or one never measured, is not."""

from dataclasses import replace
from datetime import date

import pytest
from tests.advice.situations import Case, situation

from combwright.advice.deciding import Deciding
from combwright.advice.decisions.spacing import decide
from combwright.advice.kit_acts import Respace


@pytest.mark.parametrize(("pitch_mm", "wide"), [(None, False), (35.0, False), (38.0, True)])
def test_a_wide_pitch_is_told_with_what_was_measured(pitch_mm: float | None, *, wide: bool) -> None:
    at = situation(Case(date(2027, 5, 8), 9.0, 5.0, 5.0, 11))
    told = decide(Deciding(replace(at, pitch_mm=pitch_mm)))
    assert [each.pitch_mm for each in told.asks(Respace)] == ([pitch_mm] if wide else [])
