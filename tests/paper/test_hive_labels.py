"""Labels for hives."""

from datetime import date

import pytest

from combwright.paper.hive_labels import hive_label_pdf
from combwright.terms.errors import OutOfRangeError

ON = date(2027, 4, 24)


def test_every_hive_has_its_label_made_to_be_kept() -> None:
    hives = [(f"Hive {number}", "Home") for number in range(9)]
    made = hive_label_pdf(
        [*hives, ("A_very_long_name_without_a_blank_in_it", "Heath")], "http://a", ON
    )
    assert b"<pdfaid:part>2</pdfaid:part>" in made
    assert made == hive_label_pdf(
        [*hives, ("A_very_long_name_without_a_blank_in_it", "Heath")], "http://a", ON
    )


def test_no_hives_and_no_such_sheet_are_said() -> None:
    with pytest.raises(OutOfRangeError, match="No hive"):
        hive_label_pdf([], "http://a", ON)
    with pytest.raises(OutOfRangeError, match="no sheet of 7"):
        hive_label_pdf([("A", "B")], "http://a", ON, sheet=7)
