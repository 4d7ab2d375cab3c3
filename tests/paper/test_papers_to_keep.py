"""Papers for inspectors and drawers, read by another program: archive form, fonts, languages.

No validator of PDF/A is in the registries that are used here, so it is not the whole standard that
is looked at: what each file says of itself, and what the standard demands of it that can be seen
from outside. Read by pdfminer.six, which knows nothing of the program that wrote them.
"""

from collections.abc import Callable
from datetime import date
from io import BytesIO
from typing import Any
from xml.etree import ElementTree as ET

import pytest
from pdfminer.pdfdocument import PDFDocument
from pdfminer.pdfparser import PDFParser
from pdfminer.pdftypes import resolve1

from combwright.paper.hand_over_sheet import hand_over_pdf
from combwright.paper.hive_labels import hive_label_pdf
from combwright.paper.label_sheet import label_pdf
from combwright.paper.record_paper import record_pdf
from combwright.records.store.book_handle import Book
from combwright.services.bees_sold.hand_over import hand_over
from combwright.services.demo import Paths
from combwright.services.honey.labels import labels_of
from combwright.services.register.medicines import register
from combwright.services.register.tables import as_record

PAPERS: dict[str, Callable[[Book], bytes]] = {
    "register": lambda book: record_pdf(as_record(register(book, "IE", [2027]))),
    "hand-over sheet": lambda book: hand_over_pdf(hand_over(book, "26-1")),
    "jar labels": lambda book: label_pdf(labels_of(book, "L26275-1"), count=2),
    "hive labels": lambda _: hive_label_pdf([("Alder", "Mill")], "http://x", date(2027, 1, 1)),
}
IDENTIFIED = {"{http://www.aiim.org/pdfa/ns/id/}part": "2",
              "{http://www.aiim.org/pdfa/ns/id/}conformance": "A",
              "{http://www.aiim.org/pdfua/ns/id/}part": "1"}  # fmt: skip


@pytest.mark.parametrize("paper", PAPERS)
def test_another_program_finds_a_paper_to_be_kept(demo: Paths, paper: str) -> None:
    made = PDFDocument(PDFParser(BytesIO(PAPERS[paper](Book(demo.book)))))
    root = made.catalog
    about = ET.fromstring(resolve1(root["Metadata"]).get_data())  # noqa: S314  (of our own making)
    told = {each.tag: each.text for each in about.iter()} | {
        name: value for each in about.iter() for name, value in each.attrib.items()
    }
    assert {name: told[name] for name in IDENTIFIED} == IDENTIFIED
    assert resolve1(root["MarkInfo"])["Marked"] is True
    assert resolve1(root["Lang"]).startswith(b"en")
    assert made.encryption is None
    assert resolve1(root["OutputIntents"])
    assert not {"OpenAction", "AA", "AcroForm"} & set(root)
    fonts = [each for each in objects(made) if each.get("Type") and each["Type"].name == "Font"]
    described = [resolve1(each["FontDescriptor"]) for each in fonts if "FontDescriptor" in each]
    assert described
    assert all(any(name.startswith("FontFile") for name in each) for each in described)


def objects(made: PDFDocument) -> list[dict[str, Any]]:
    found = (made.getobj(key) for xref in made.xrefs for key in xref.get_objids())
    return [each for each in found if isinstance(each, dict)]
