"""Bees sold: the sheet that goes with them, the register, and yards from which nothing may go."""

from collections.abc import Sequence
from datetime import date
from pathlib import Path
from typing import Any
from uuid import UUID, uuid4

import pytest

from combwright.paper.hand_over_sheet import hand_over_pdf
from combwright.records.store.book_handle import Book
from combwright.services.bees_sold.hand_over import hand_over
from combwright.services.bees_sold.reporting import bees_page
from combwright.services.bees_sold.sales_register import sales_register
from combwright.services.book.book import RefusedError, add_entries
from combwright.services.book.entry_form import take_entry
from combwright.terms.entries import ENTRY, AnyEntry
from combwright.terms.errors import NotFoundError

PLACE = {"district": "lowland mixed farmland", "climate": "Armagh"}
WHOLE = {
    "buyer": "Byrne",
    "address": "3 Main Street, Exampletown",
    "contact": "byrne@example.org",
    "colony": "Nuc",
    "queen_raised": "2025-06-10",
    "mark": "blue",
    "clipped": True,
    "combs": 5,
    "combs_of_bees": 5,
    "combs_of_brood": 3,
    "combs_of_food": 1,
    "inspected": "2026-05-28",
    "inspected_by": "A. Keeper",
    "found": "nothing",
    "no_treatment": True,
    "standard": "FIBKA",
}


def noted(kind: str, number: int, on: str, **told: object) -> AnyEntry:
    return ENTRY.validate_python({"id": UUID(int=number), "kind": kind, "on": on, **told})


def sold(number: int = 50, on: str = "2026-06-02", **told: object) -> AnyEntry:
    return noted("bees sold", number, on, **({"sale": "1"} | WHOLE | told))


BEES = [
    noted("yard", 1, "2025-01-01", yard="A", **PLACE),
    noted("yard", 2, "2025-01-01", yard="B", **PLACE),
    noted("colony", 10, "2025-04-02", colony="A1-03", yard="A", hive="national timber"),
    noted("colony", 11, "2025-04-02", colony="A1-07", yard="A", hive="national timber"),
    noted("colony", 12, "2025-04-02", colony="Nuc", yard="B", hive="nuc 6 polystyrene"),
]
KEEPER = noted(
    "keeper", 13, "2025-01-01", keeper="A. Keeper", address="1 Main St, Athlone", country="IE",
    terms="Tell me within two weeks what is wrong; I replace or take back.",
)  # fmt: skip
SUSPECTED = noted("suspicion", 20, "2026-06-01", yard="A", of="American foulbrood", sick="A1-03")


def book_of(folder: Path, entries: Sequence[AnyEntry]) -> Book:
    book = Book(folder / "keeper.book")
    add_entries(book, [*BEES, *entries])
    return book


def refused(book: Book, *entries: AnyEntry) -> str:
    with pytest.raises(RefusedError) as error:
        add_entries(book, entries)
    return " ".join(f"{one.what} {one.remedy}" for one in error.value.problems)


def test_a_whole_sheet_lacks_nothing_and_is_made_to_be_kept(tmp_path: Path) -> None:
    found = hand_over(book_of(tmp_path, [KEEPER, sold()]), "1")
    assert (found.missing, found.cautions) == ((), ())
    assert found.treatments == ("None in the last 12 months.",)
    assert b"<pdfaid:part>2</pdfaid:part>" in hand_over_pdf(found)


@pytest.mark.parametrize(
    ("changed", "missing"),
    [
        ({"no_treatment": None}, "treatments, or that there were none"),
        ({"combs_of_food": None}, "combs of food"),
        ({"inspected": None}, "last inspection"),
        ({"contact": ""}, "phone or e-mail"),
        ({"queen_raised": None}, "when the queen emerged"),
    ],
)
def test_what_the_sheet_does_not_tell_is_named(
    tmp_path: Path, changed: dict[str, Any], missing: str
) -> None:
    (one,) = hand_over(book_of(tmp_path, [KEEPER, sold(**changed)]), "1").missing
    assert missing in one


def test_the_sheet_is_filled_from_the_book_and_from_the_mother_colony(tmp_path: Path) -> None:
    book = book_of(
        tmp_path,
        [
            KEEPER,
            noted("treatment", 30, "2025-09-01", colony="A1-03", substance="thymol",
                  product="Example gel", batch="T1", until="2025-10-01"),
            noted("split", 31, "2026-05-01", colony="A1-03", new_colony="Nuc 2",
                  hive="nuc 6 polystyrene", frames_of_bees=2),
            noted("tray count", 32, "2026-05-20", colony="Nuc 2", mites=3, days=7),
            noted("feed", 33, "2026-05-20", colony="Nuc 2", grams=500),
            sold(colony="Nuc 2", no_treatment=None),
        ],
    )  # fmt: skip
    found = hand_over(book, "1")
    assert found.treatments == (
        "Example gel (thymol), batch T1: 1 September 2025 to 1 October 2025",
    )
    told = dict(row for _, rows in found.sections for row in rows)
    assert told["Last mite count"] == "20 May 2026: 3 mites on the tray in 7 days"
    assert told["Fed"] == "20 May 2026 0.5 kg of syrup"
    assert told["From the yard"] == "A"


def test_nothing_is_sold_from_a_yard_under_suspicion_until_it_is_cleared(tmp_path: Path) -> None:
    book = book_of(tmp_path, [SUSPECTED])
    assert "Nothing may leave “A”: American foulbrood" in refused(book, sold(colony="A1-07"))
    assert "Nothing may leave" in refused(
        book, noted("move", 51, "2026-06-03", colony="A1-07", yard="B")
    )
    assert "Nothing may leave" in refused(
        book, noted("movement", 52, "2026-06-03", what="combs", from_yard="A", yard="B")
    )
    assert add_entries(book, [sold(colony="Nuc")]).new == 1
    cleared = {"yard": "A", "of": "American foulbrood", "state": "cleared"}
    add_entries(book, [noted("suspicion", 53, "2026-06-20", **cleared)])
    later = sold(54, "2026-06-21", sale="2", colony="A1-07")
    assert add_entries(book, [later]).new == 1


def test_a_yard_that_got_a_comb_from_it_is_a_contact_and_warned_of(tmp_path: Path) -> None:
    comb = {"what": "brood comb", "count": 1, "from_yard": "A", "yard": "B"}
    book = book_of(tmp_path, [noted("movement", 40, "2026-05-20", **comb), SUSPECTED])
    report = add_entries(book, [sold(colony="Nuc")])
    assert report.new == 1
    assert "“B” is a contact" in " ".join(one.what for one in report.problems)


def test_varroa_stops_no_move(tmp_path: Path) -> None:
    varroa = noted("suspicion", 20, "2026-06-01", yard="A", of="varroa")
    assert add_entries(book_of(tmp_path, [varroa]), [sold(colony="A1-07")]).new == 1


@pytest.mark.parametrize(
    ("changed", "what"),
    [
        ({"colony": None}, "Name the colony or the yard"),
        ({"inspected": "2026-06-03"}, "after it was handed over"),
        ({"order": "7"}, "no order “7”"),
        ({"colony": None, "yard": "C"}, "no yard “C”"),
    ],
)
def test_a_sale_that_cannot_be_is_refused(
    tmp_path: Path, changed: dict[str, Any], what: str
) -> None:
    assert what in refused(book_of(tmp_path, []), sold(**changed))


def test_a_number_of_a_sale_stands_once(tmp_path: Path) -> None:
    book = book_of(tmp_path, [sold()])
    assert "sale “1” already" in refused(book, sold(51, colony="A1-07"))


def test_with_the_sale_the_colony_leaves_and_the_order_is_met(tmp_path: Path) -> None:
    wanted = {"order": "7", "customer": "Byrne", "wanted_by": "2026-06-10"}
    book = book_of(tmp_path, [noted("order", 60, "2026-05-01", **wanted)])
    form = {name: str(value) for name, value in WHOLE.items() if not isinstance(value, bool)}
    fields = form | {"id": str(uuid4()), "on": "2026-06-02", "sale": "1", "order": "7"}
    take_entry(book, "bees sold", fields)
    take_entry(book, "bees sold", fields)
    now = book.now()
    assert now.standings["Nuc"].ended_by == "sold"
    assert (now.orders["7"].delivered, now.orders["7"].open) == (1, 0)


def test_the_register_answers_who_got_bees_of_a_yard_between_two_days(tmp_path: Path) -> None:
    other = sold(51, "2026-07-01", sale="2", colony="A1-07", buyer="Kelly", contact="")
    gone = noted("end", 52, "2026-12-24", colony="A1-03", reason="dead")
    move = noted("move", 53, "2026-08-01", colony="A1-03", yard="B")
    book = book_of(tmp_path, [sold(), other, move, gone])
    found = sales_register(book, date(2026, 6, 1), date(2026, 6, 30), "B")
    assert [row[5] for row in found.tables[0].rows] == ["Byrne"]
    year = sales_register(book, date(2026, 1, 1), date(2026, 12, 31))
    assert [row[5] for row in year.tables[0].rows] == ["Byrne", "Kelly"]
    assert year.tables[1].rows == (("2026-08-01", "colony A1-03", "A", "B", ""),)
    assert year.tables[2].rows == (("2026-12-24", "A1-03", "B", "dead"),)
    assert year.missing == ("2026-07-01, sale 2: contact of the buyer.",)


def test_what_stands_still_is_shown_with_whom_to_tell(tmp_path: Path) -> None:
    page = bees_page(book_of(tmp_path, [SUSPECTED, KEEPER]))
    assert [one.yard for one in page.stopped] == ["A"]
    assert "agriculture department" in page.duties[0].to
    assert "check the current law" in page.caution


def test_an_unknown_sale_is_said(tmp_path: Path) -> None:
    with pytest.raises(NotFoundError, match="no sale “9”"):
        hand_over(book_of(tmp_path, []), "9")
