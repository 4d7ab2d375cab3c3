"""The register of medicines: worked examples from the law, and what does not add up.

Sources: Regulation (EU) 2019/6, Article 108 (read in German); the Veterinary Medicines Regulations
2013 (S.I. 2013/2033), regulations 17 to 19, as at 1 October 2013 (read).
"""

import csv
import io
from collections.abc import Sequence
from datetime import date
from pathlib import Path
from typing import Any
from uuid import UUID

import pytest

from combwright.paper.record_paper import record_pdf
from combwright.records.store.book_handle import Book
from combwright.services.book.book import RefusedError, add_entries
from combwright.services.register.medicines import Register, register
from combwright.services.register.record import as_csv
from combwright.services.register.tables import as_record
from combwright.terms.entries import ENTRY, AnyEntry
from combwright.terms.errors import NotFoundError

SUPPLY = {"supplier": "Example Supply", "supplier_address": "1 Main St, Athlone"}
USED = {"substance": "other", "product": "Example strip", "batch": "B123", "until": "2026-10-08"}


def noted(kind: str, number: int, on: str, **told: object) -> AnyEntry:
    return ENTRY.validate_python({"id": UUID(int=number), "kind": kind, "on": on, **told})


def bought(number: int = 4, **told: object) -> AnyEntry:
    whole = {"product": "Example strip", "quantity": 10, "unit": "strips", "batch": "B123"}
    whole |= SUPPLY | {"proof": "INV-77", "no_prescription": True}
    return noted("purchase", number, "2026-08-01", **(whole | told))


def treated(number: int, colony: str, on: str = "2026-08-20", **told: object) -> AnyEntry:
    return noted("treatment", number, on, colony=colony, quantity=2, **(USED | told))


YARD = noted(
    "yard", 1, "2026-01-01", yard="A1", district="lowland mixed farmland", climate="Armagh"
)
CARD = noted("product", 3, "2026-08-01", product="Example strip", withdrawal_days=0)
COLONIES = [
    noted("colony", 20 + n, "2026-01-02", colony=f"A1-0{n}", yard="A1", hive="national timber")
    for n in (3, 4)
]
BEES = [YARD, *COLONIES]
BOTH = [treated(5, "A1-03"), treated(6, "A1-04")]


def of(folder: Path, entries: Sequence[AnyEntry], country: str = "IE") -> Register:
    folder.mkdir(exist_ok=True)
    book = Book(folder / "keeper.book")
    add_entries(book, [*BEES, *entries])
    return register(book, country, [2026])


def test_a_complete_treatment_is_complete(tmp_path: Path) -> None:
    found = of(tmp_path, [CARD, bought(), *BOTH])
    (one,) = found.treatments
    assert (found.missing, one.missing) == ((), ())
    assert (one.days, one.quantity, one.colonies) == (49, 4.0, ("A1-03", "A1-04"))
    assert (one.keep_until, one.honey_from) == (date(2031, 10, 8), date(2026, 10, 8))
    assert (one.supplier, one.prescriber) == (
        "Example Supply, 1 Main St, Athlone",
        "no prescription",
    )


def test_what_is_missing_is_named_and_stands_first(tmp_path: Path) -> None:
    found = of(tmp_path, [CARD, bought(supplier_address="", no_prescription=None), *BOTH])
    assert found.treatments[0].missing == ("supplier with address", "prescribing vet if any")
    assert found.missing[0].startswith("2026-08-20, Example strip, A1: supplier with address")


def test_a_prescription_names_the_vet_the_contact_and_its_copy(tmp_path: Path) -> None:
    ticked: dict[str, Any] = {"no_prescription": False, "prescriber": ""}
    (one,) = of(tmp_path / "none", [CARD, bought(**ticked), *BOTH]).treatments
    assert one.missing == (
        *("name of the prescribing vet", "contact of the prescribing vet"),
        "copy of the prescription, or its code",
    )
    told = {"prescriber": "A. Vet", "prescriber_contact": "Athlone", "prescription_copy": "folder"}
    (whole,) = of(tmp_path / "all", [CARD, bought(**(ticked | told)), *BOTH]).treatments
    assert (whole.missing, whole.prescriber) == ((), "A. Vet, Athlone")


@pytest.mark.parametrize(("country", "asked"), [("IE", False), ("GB", True), ("NI", True)])
def test_a_batch_is_asked_for_where_the_law_asks_for_it(
    tmp_path: Path, country: str, asked: bool
) -> None:
    given = [treated(5, "A1-03", batch=""), treated(6, "A1-04", batch="")]
    found = of(tmp_path, [CARD, bought(batch=""), *given], country)
    assert ("batch number" in " ".join(found.missing)) is asked


def test_more_used_than_bought_is_told_but_the_treatment_stays(tmp_path: Path) -> None:
    more = [treated(7, "A1-03", "2026-12-20", until="2026-12-30"), *BOTH]
    thrown = noted(
        "disposal", 9, "2026-12-31", product="Example strip", quantity=5, unit="strips",
        batch="B123", how="returned to the supplier",
    )  # fmt: skip
    found = of(tmp_path, [CARD, bought(), *more, thrown])
    assert found.stock[0].left == -1
    assert "Example strip, batch B123: 1 strips more used than bought." in found.missing
    assert len(found.treatments) == 2


def test_use_after_the_expiry_is_told(tmp_path: Path) -> None:
    found = of(tmp_path, [CARD, bought(expiry="2026-08-15"), *BOTH])
    assert "used on 20 August 2026, after it expired on 15 August 2026" in " ".join(found.missing)


def test_a_dead_colony_keeps_its_record(tmp_path: Path) -> None:
    dead = noted("end", 11, "2027-01-05", colony="A1-03", reason="dead")
    assert of(tmp_path, [CARD, bought(), *BOTH, dead]).treatments[0].colonies[0] == "A1-03"


def test_a_29_february_is_kept_to_the_first_of_march(tmp_path: Path) -> None:
    book = Book(tmp_path / "keeper.book")
    leap = treated(5, "A1-03", "2028-02-01", until="2028-02-29")
    add_entries(book, [*BEES, CARD, leap], today=date(2028, 3, 1))
    (one,) = register(book, "GB", [2028]).treatments
    assert one.keep_until == date(2033, 3, 1)


def test_nought_days_of_withdrawal_is_an_answer_and_a_blank_is_not() -> None:
    assert ENTRY.validate_python(CARD.model_dump()) == CARD
    with pytest.raises(ValueError, match="withdrawal_days"):
        noted("product", 3, "2026-08-01", product="Example strip")


@pytest.mark.parametrize(
    ("entry", "what"),
    [
        (bought(product="Exampel strip"), "Did you mean “Example strip”"),
        (bought(expiry="2026-07-01"), "expired on 1 July 2026, before it was bought"),
    ],
)
def test_a_purchase_that_cannot_be_is_refused(tmp_path: Path, entry: AnyEntry, what: str) -> None:
    book = Book(tmp_path / "keeper.book")
    with pytest.raises(RefusedError) as refused:
        add_entries(book, [CARD, entry])
    assert what in " ".join(f"{one.what} {one.remedy}" for one in refused.value.problems)


def test_an_unknown_country_is_refused_with_those_that_are_known(tmp_path: Path) -> None:
    with pytest.raises(NotFoundError) as refused:
        of(tmp_path, [], "FR")
    assert "IE, GB, NI" in refused.value.remedy


def test_no_cell_acts_as_a_formula(tmp_path: Path) -> None:
    found = of(tmp_path, [CARD, bought(proof="=HYPERLINK(1)"), *BOTH])
    cells = [cell for row in csv.reader(io.StringIO(as_csv(as_record(found)))) for cell in row]
    assert "'=HYPERLINK(1)" in cells
    assert not [cell for cell in cells if cell.startswith(("=", "+", "-", "@"))]


def test_the_paper_is_made_to_be_kept_and_read_aloud(tmp_path: Path) -> None:
    made = record_pdf(as_record(of(tmp_path, [CARD, bought(), *BOTH])))
    assert b"<pdfaid:part>2</pdfaid:part>" in made
    assert b"<pdfuaid:part>1</pdfuaid:part>" in made


def test_what_a_purchase_does_not_tell_is_missing_though_nothing_was_used(tmp_path: Path) -> None:
    found = of(tmp_path, [CARD, bought(proof="", supplier="")], "GB")
    (missing,) = found.missing
    assert missing == (
        "2026-08-01, purchase of Example strip: supplier with address, proof of purchase."
    )
