"""Labels for hives."""

from datetime import date
from io import BytesIO

import pytest
from pdfminer.high_level import extract_pages
from pdfminer.layout import LTTextContainer, LTTextLine

from combwright.paper.hive_labels import hive_label_pdf
from combwright.paper.label_sheet import SHEETS
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


@pytest.mark.parametrize("sheet", SHEETS)
def test_nothing_of_a_long_name_or_yard_stands_outside_its_label(sheet: int) -> None:
    hive = ("The colony by the old gate with the broken hinge", "The yard behind the lime kiln")
    (page,) = extract_pages(BytesIO(hive_label_pdf([hive], "http://a", ON, sheet=sheet)))
    boxes = [box for box in page if isinstance(box, LTTextContainer)]
    lines = [line for box in boxes for line in box if isinstance(line, LTTextLine)]
    label, mm = SHEETS[sheet], 72 / 25.4
    assert lines
    for line in lines:
        assert line.y1 <= page.height - label["top"] * mm
        assert line.y0 >= page.height - (label["top"] + label["height"]) * mm
        assert line.x1 <= (label["left"] + label["width"]) * mm
