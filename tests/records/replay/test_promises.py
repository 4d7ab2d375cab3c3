"""Orders, batches and queens: how they stand, and notes of them that cannot be."""

from datetime import date
from typing import Any

import pytest
from tests.records.samples import noted_as

from combwright.kit.catalogue import catalogue
from combwright.records.notebook.from_lines import read_notebook
from combwright.records.replay.clashes import check
from combwright.records.replay.known_orders import known_orders
from combwright.records.replay.known_queens import known_batches, known_queens
from combwright.terms.entries import AnyEntry

KIT = catalogue()


def order(name: str, number: int, on: str = "2027-01-10", **told: object) -> AnyEntry:
    whole = {"customer": "Byrne", "wanted_by": "2027-06-20", "count": 2, **told}
    return noted_as("order", number, on, order=name, **whole)


def news(name: str, number: int, event: str, on: str = "2027-03-01", **told: object) -> AnyEntry:
    return noted_as("order news", number, on, order=name, event=event, **told)


BATCH = noted_as("batch", 11, "2027-05-01", batch="B1", day_0="2027-05-10", begun=30)
ORDERS = [order("A", 1), order("B", 2, "2027-01-05"), order("C", 3, "2027-02-01")]


def counted(number: int, on: str = "2027-05-15", **told: object) -> AnyEntry:
    return noted_as("batch counts", number, on, batch="B1", **told)


def test_first_promised_is_first_served_and_what_is_delivered_is_no_longer_owed() -> None:
    told: list[Any] = [
        *ORDERS,
        news("C", 4, "promised", week="2027-06-07", percent=90),
        news("A", 5, "promised", "2027-03-02", week="2027-06-07"),
        news("C", 6, "delayed", "2027-05-20", week="2027-06-21"),
        news("C", 7, "delivered", "2027-06-22", count=1),
        news("B", 8, "cancelled", "2027-06-22"),
    ]
    found = known_orders(told)
    assert list(found) == ["C", "A", "B"]
    late = found["C"]
    assert (late.week, late.delays, late.open) == (date(2027, 6, 21), 1, 1)
    assert late.first_promised == date(2027, 3, 1)
    assert (found["B"].open, found["A"].open, found["A"].frames) == (0, 2, 5)
    assert check(told, KIT) == []
    before = known_orders(each for each in told if each.on <= date(2027, 3, 1))
    assert before["A"].week is None


def test_a_batch_and_a_queen_stand_as_last_counted() -> None:
    told: list[Any] = [
        BATCH,
        counted(12, accepted=24),
        counted(13, "2027-05-20", sealed=22, given=15),
        noted_as("own queen", 14, "2027-05-20", queen="Q1", batch="B1", year=2027, mark="yellow"),
        noted_as("own queen news", 15, "2027-05-21", queen="Q1", event="cell given"),
        noted_as("own queen news", 16, "2027-06-08", queen="Q1", event="laying", pattern="solid"),
    ]
    batch, queen = known_batches(told)["B1"], known_queens(told)["Q1"]
    assert (batch.accepted, batch.sealed, batch.given, batch.laying) == (24, 22, 15, None)
    assert batch.left((0.8, 0.95)) == 7
    assert (queen.state, queen.since, queen.pattern) == ("laying", date(2027, 6, 8), "solid")
    assert check(told, KIT) == []


@pytest.mark.parametrize(
    ("event", "state", "stays_in"),
    [
        ("cell given", "cell", "Ash"),
        ("emerged", "virgin", "Ash"),
        ("seen", "not noted", "Ash"),
        ("laying", "laying", "Ash"),
        ("drone layer", "drone layer", "Ash"),
        ("moved", "not noted", "Ash"),
        ("sold", "sold", None),
        ("lost", "lost", None),
    ],
)
def test_each_event_of_a_queen_says_how_she_stands(
    event: str, state: str, stays_in: str | None
) -> None:
    told = [
        noted_as("own queen", 1, "2027-05-20", queen="Q1", colony="Birch"),
        noted_as("own queen news", 2, "2027-06-01", queen="Q1", event=event, colony="Ash"),
    ]
    now = known_queens(told)["Q1"]
    assert (now.state, now.colony, now.is_gone) == (state, stays_in, stays_in is None)


@pytest.mark.parametrize(
    ("entry", "field", "what"),
    [
        (order("D", 1, wanted_by="2027-01-09"), "wanted_by", "was over when it was ordered"),
        (order("D", 1, frames=12), "frames", "more than a nuc box holds: 6 at most"),
        (order("D", 1, what="colony", frames=6), "frames", "not sold by its frames"),
        (news("D", 1, "promised", week="2027-06-07"), "order", "no order “D”"),
        (news("A", 4, "promised"), "week", "needs its week"),
        (news("A", 4, "promised", week="2027-02-07"), "week", "was over on 1 March 2027"),
        (news("A", 4, "delivered", count=3), "count", "only 2 were still"),
        (order("A", 4, "2027-03-01"), "order", "order “A” already"),
        (counted(12, accepted=31), "accepted", "31 accepted, but only 30 begun"),
        (counted(12, sealed=20, given=21), "given", "21 given, but only 20 sealed"),
        (counted(12, emerged=10, laying=12), "laying", "12 laying, but only 10 emerged"),
        (counted(12, "2027-05-09", accepted=3), "on", "before the batch began"),
    ],
)
def test_what_cannot_be_is_said_beside_its_field(entry: AnyEntry, field: str, what: str) -> None:
    (problem,) = [one for one in check([*ORDERS, BATCH, entry], KIT) if one.blocks]
    assert problem.field == field
    assert what in problem.what
    assert problem.remedy


def test_a_mark_of_another_year_is_worth_a_second_look() -> None:
    marked = noted_as("own queen", 1, "2027-05-20", queen="Q1", year=2027, mark="white")
    (problem,) = check([marked], KIT)
    assert not problem.blocks
    assert "marked yellow" in problem.what


def test_a_notebook_notes_orders_batches_and_queens_without_a_colony() -> None:
    lines = (
        "date,colony,order,customer,how many,wanted by,order event,promised for,"
        "batch of cells,day 0,begun,accepted,queen,her year\n"
        "2027-01-10,,A,Byrne,2,2027-06-20,,,,,,,,\n"
        "2027-03-01,,A,,,,promised,2027-06-07,,,,,,\n"
        "2027-05-10,,,,,,,,B1,2027-05-10,30,,,\n"
        "2027-05-11,,,,,,,,B1,,,24,,\n"
        "2027-05-12,,,,,,,,,,,,Q1,2026\n"
    )
    found = read_notebook(lines.encode())
    assert not [one for line in found.lines for one in line.problems]
    kinds = [each.kind for line in found.lines for each in line.entries]
    assert kinds == ["order", "order news", "batch", "batch counts", "own queen"]
