"""Honey from the hives to the jars and back: what adds up, what waits, who has which jar."""

from collections.abc import Sequence
from datetime import date
from pathlib import Path
from uuid import UUID

import pytest

from combwright.paper.label_sheet import label_pdf
from combwright.paper.record_paper import record_pdf
from combwright.records.store.book_handle import Book
from combwright.services.book.book import RefusedError, Report, add_entries
from combwright.services.honey.labels import labels_of
from combwright.services.honey.tanks import honey_now, next_lot
from combwright.services.honey.tracing import recall, trace
from combwright.services.register.record import as_csv
from combwright.terms.entries import ENTRY, AnyEntry
from combwright.terms.errors import NotFoundError, OutOfRangeError

FILLED = date(2026, 8, 10)
LINE = "2026-07-30"


def noted(kind: str, number: int, on: str, **told: object) -> AnyEntry:
    return ENTRY.validate_python({"id": UUID(int=number), "kind": kind, "on": on, **told})


BEES = [
    noted(
        "yard", 1, "2026-01-01", yard="Home", district="lowland mixed farmland", climate="Armagh"
    ),
    noted(
        "yard", 2, "2026-01-01", yard="Heath", district="lowland mixed farmland", climate="Armagh"
    ),
    *(
        noted("colony", 10 + n, "2026-01-02", colony=name, yard=yard, hive="national timber")
        for n, (name, yard) in enumerate(
            [("Alder", "Home"), ("Birch", "Home"), ("Ling", "Heath"), ("Furze", "Heath")]
        )
    ),
]
LABEL = noted("product", 20, "2026-01-02", product="Example strip", withdrawal_days=14)
TREATED = noted(
    "treatment", 21, "2026-06-20", colony="Alder", substance="other", product="Example strip",
    until="2026-07-20",
)  # fmt: skip
TAKEN = [
    noted("harvest", 30, LINE, colony="Birch", honey_kg=20, supers=0),
    noted("harvest", 31, LINE, colony="Ling", honey_kg=12, supers=0),
]
BATCHES = [
    noted("honey batch", 40, "2026-08-01", honey="Summer", kg=25, reading=18.0, reading_c=25),
    noted("honey source", 41, LINE, honey="Summer", yard="Home", kg=25.5, supers=2),
    noted("honey batch", 42, "2026-08-02", honey="Heather", kg=12, sort="heather", reading=22),
    noted("honey source", 43, LINE, honey="Heather", colony="Ling", kg=12.2),
    noted("honey batch", 44, "2026-08-04", honey="Mixed", kg=10),
    noted("honey source", 45, "2026-08-04", honey="Mixed", from_honey="Heather", kg=6.2),
    noted(
        "honey source", 46, "2026-08-04", honey="Mixed", supplier="Example Honey, Sevilla",
        country="Spain", kg=3.8,
    ),
]  # fmt: skip
JARS = [
    noted("jar run", 50, "2026-08-10", lot="L26222-1", honey="Summer", jars=60, jar_g=340,
          best_before="2028-12-31", shows="year"),
    noted("jar run", 51, "2026-08-10", lot="L26222-2", honey="Mixed", jars=20, jar_g=454,
          best_before="2028-08-10"),
    noted("jar weights", 52, "2026-08-10", lot="L26222-1", weights="341 339 342 340"),
    noted("honey sale", 53, "2026-09-01", lot="L26222-1", jars=24, buyer="Example Stores",
          address="2 Main St"),
    noted("honey sale", 54, "2026-09-02", lot="L26222-1", jars=3),
    noted("honey sale", 55, "2026-09-03", lot="L26222-2", jars=12, buyer="Example Café"),
]  # fmt: skip
KEEPER = noted(
    "keeper", 60, "2026-01-01", keeper="A. Keeper", address="1 Main St, Athlone, N37 X1Y2",
    country="IE", honey_name="Irish Honey", label_text="From Home and Heath.",
)  # fmt: skip
ALL = [*TAKEN, *BATCHES, *JARS, KEEPER]


def book_of(folder: Path, entries: Sequence[AnyEntry]) -> Book:
    book = Book(folder / "keeper.book")
    add_entries(book, [*BEES, *entries])
    return book


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    return book_of(tmp_path_factory.mktemp("honey"), ALL)


def refused(book: Book, *entries: AnyEntry) -> str:
    before = book.now().last
    with pytest.raises(RefusedError) as error:
        add_entries(book, entries)
    assert book.now().last == before
    return " ".join(f"{one.what} {one.remedy}" for one in error.value.problems)


def test_what_goes_in_and_out_adds_up(book: Book) -> None:
    found = honey_now(book, FILLED)
    summer = next(one for one in found.tanks if one.honey == "Summer")
    assert (summer.in_kg, summer.kg) == (25.5, 25.0)
    assert summer.jarred_kg == pytest.approx(60 * 0.34)
    assert summer.left_kg == pytest.approx(25.0 - 20.4)
    assert summer.lost_percent == pytest.approx(100 * 0.5 / 25.5)
    heather = next(one for one in found.tanks if one.honey == "Heather")
    assert (heather.given_kg, heather.left_kg) == (6.2, 5.8)


def test_water_is_corrected_for_the_warmth_and_held_against_the_sort(book: Book) -> None:
    told = {one.honey: one for one in honey_now(book, FILLED).tanks}
    assert told["Summer"].water_percent == 17.5  # read 18 at 25 °C
    assert "within the 23 %" in told["Heather"].says
    assert told["Mixed"].says == "Its water is not measured yet."


@pytest.mark.parametrize(
    ("changed", "what"),
    [
        ({"lot": "L26222-1", "jars": 5}, "a lot “L26222-1” already"),
        ({"lot": "L26222-3", "jars": 14}, "fills 13 at most"),
        ({"lot": "L26222-3", "honey": "Sumer", "jars": 1}, "Did you mean “Summer”?"),
    ],
)
def test_a_run_of_jars_that_cannot_be_is_refused_with_the_remedy(
    book: Book, changed: dict[str, object], what: str
) -> None:
    told = {"honey": "Summer", "jar_g": 340, "best_before": "2028-12-31", "shows": "year"}
    assert what in refused(book, noted("jar run", 70, "2026-08-11", **(told | changed)))


@pytest.mark.parametrize(
    ("kind", "told", "what"),
    [
        ("honey batch", {"honey": "Summer", "kg": 3}, "batch of honey “Summer” already"),
        ("honey source", {"honey": "Summer"}, "Name one of the four"),
        ("honey source", {"honey": "Mixed", "colony": "Ling", "yard": "Home"}, "Name one"),
        ("honey source", {"honey": "Mixed", "from_honey": "Summer"}, "must be weighed"),
        ("honey source", {"honey": "Mixed", "from_honey": "Summer", "kg": 9}, "4.4 kg less"),
        ("honey source", {"honey": "Summer", "supplier": "Example"}, "country of bought honey"),
        ("honey source", {"honey": "Mixed", "yard": "Hom"}, "Did you mean “Home”?"),
        ("honey sale", {"lot": "L26222-1", "jars": 34}, "60 were filled"),
        ("jar weights", {"lot": "L26222-7", "weights": "340"}, "no lot “L26222-7”"),
    ],
)
def test_honey_that_cannot_be_is_refused(
    book: Book, kind: str, told: dict[str, object], what: str
) -> None:
    assert what in refused(book, noted(kind, 71, "2026-09-04", **told))


def test_more_in_the_tank_than_came_in_is_refused(tmp_path: Path) -> None:
    book = book_of(tmp_path, [BATCHES[0]])
    less = noted("honey source", 41, LINE, honey="Summer", colony="Birch", kg=24.0)
    assert "only 24 kg came in" in refused(book, less)


@pytest.mark.parametrize(
    ("on", "waits"), [("2026-06-19", False), ("2026-06-20", True), ("2026-08-02", True),
                      ("2026-08-03", False)],
)  # fmt: skip
def test_honey_waits_for_the_withdrawal_period(tmp_path: Path, on: str, waits: bool) -> None:
    book = book_of(tmp_path, [LABEL, TREATED])
    taken = noted("harvest", 80, on, colony="Alder", honey_kg=8)
    if not waits:
        assert add_entries(book, [taken]).new == 1
        return
    told = refused(book, taken)
    assert "waits until 3 August 2026" in told
    assert "Take it after that day" in told


def test_a_batch_of_a_whole_yard_waits_with_its_colonies(tmp_path: Path) -> None:
    book = book_of(tmp_path, [LABEL, TREATED, BATCHES[0]])
    assert "Honey of “Alder” waits" in refused(book, BATCHES[1])
    # of Birch alone it may be noted: then Alder's supers were not among them
    assert add_entries(book, [TAKEN[0], BATCHES[1]]).new == 2


def test_a_treatment_noted_after_the_harvest_is_taken_and_told(tmp_path: Path) -> None:
    book = book_of(tmp_path, [LABEL, noted("harvest", 80, LINE, colony="Alder", honey_kg=8)])
    report: Report = add_entries(book, [TREATED])
    assert report.new == 1
    assert [one for one in add_entries(book, [TREATED]).problems if one.blocks] == []


def test_honey_of_before_the_first_note_still_names_its_colony(tmp_path: Path) -> None:
    source = noted("honey source", 81, "2025-08-01", honey="Old", colony="Ling", kg=9.2)
    book = book_of(tmp_path, [noted("honey batch", 80, "2025-08-02", honey="Old", kg=9), source])
    (traced,) = trace(book, "Old").sources
    assert traced.colonies == ("Ling",)
    unknown = noted("honey source", 82, "2025-08-01", honey="Old", colony="Lnig", kg=0.1)
    assert "Did you mean “Ling”?" in refused(book, unknown)


def test_one_question_traces_both_ways(book: Book) -> None:
    found = trace(book, "Ling")
    assert {each.batch.honey for each in found.batches} == {"Heather", "Mixed"}
    assert [each.run.lot for each in found.lots] == ["L26222-2"]
    assert [each.buyer for each in found.sales] == ["Example Café"]
    back = trace(book, "L26222-2")
    assert {name for each in back.sources for name in each.colonies} == {"Ling"}
    assert trace(book, "Example Honey").lots == back.lots
    assert trace(book, "Home").lots == trace(book, "Summer").lots == trace(book, "L26222-1").lots
    assert trace(book, "Furze").lots == ()
    with pytest.raises(NotFoundError):
        trace(book, "nobody")


def test_the_recall_says_who_has_how_many_and_what_cannot_be_known(book: Book) -> None:
    record = recall(trace(book, "L26222-1"), FILLED)
    assert "27 jars are out, 33 should be on the shelf" in record.title
    assert "3 jars of L26222-1" in record.missing[0]
    assert "Example Stores" in as_csv(record)
    assert b"<pdfaid:part>2</pdfaid:part>" in record_pdf(record)


def test_the_label_is_made_from_the_book(book: Book) -> None:
    own, blend = labels_of(book, "L26222-1"), labels_of(book, "L26222-2")
    assert (own.origin, own.faults) == ("Origin: Ireland", ())
    assert blend.origin == "Ireland 62 %, Spain 38 %"
    assert blend.faults == ()
    assert next_lot(book, FILLED) == "L26222-3"
    assert b"<pdfaid:part>2</pdfaid:part>" in label_pdf(own, sheet=24, used=3)
    with pytest.raises(OutOfRangeError, match="no sheet of 7"):
        label_pdf(own, sheet=7)


def test_words_that_do_not_fit_on_a_label_are_said_not_cut(tmp_path: Path) -> None:
    long = KEEPER.model_copy(update={"address": "Home, " * 50, "label_text": "of hedges " * 20})
    found = labels_of(book_of(tmp_path, [*TAKEN, *BATCHES, *JARS, long]), "L26222-1")
    with pytest.raises(OutOfRangeError, match="does not fit"):
        label_pdf(found, sheet=24)


def test_without_a_name_the_label_says_what_is_missing(tmp_path: Path) -> None:
    found = labels_of(book_of(tmp_path, [*TAKEN, *BATCHES, *JARS]), "L26222-1")
    assert found.faults == ("Name of the producer is missing.", "The address is missing.")
