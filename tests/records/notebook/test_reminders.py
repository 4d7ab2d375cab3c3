from datetime import date

from tests.records.samples import noted_as

from combwright.records.notebook.from_lines import Line
from combwright.records.notebook.reminders import wrong_reminders

BOOK = [
    noted_as("colony", 1, "2026-04-01", colony="Alder", yard="Mill Lane", hive="national timber",
             queen_year=2024),
    noted_as("move", 2, "2026-05-01", colony="Alder", yard="Hill Top"),
    noted_as("queen", 3, "2026-06-01", colony="Alder", event="introduced", queen_year=2026),
]  # fmt: skip


def line(on: date, yard: str = "", year: int | None = None) -> Line:
    return Line(7, on=on, colony="Alder", yard=yard, queen_year=year)


def test_what_the_book_says_of_that_day_may_be_repeated() -> None:
    right = [
        line(date(2026, 4, 1), "Mill Lane", 2024),
        line(date(2026, 4, 30), "Mill Lane", 2024),
        line(date(2026, 5, 1), "Mill Lane"),  # the morning of the move
        line(date(2026, 5, 1), "Hill Top"),  # its evening
        line(date(2026, 6, 1), "Hill Top", 2024),
        line(date(2026, 7, 1), "Hill Top", 2026),
        line(date(2026, 3, 1), "Nowhere"),  # before the book: another check's business
    ]
    assert list(wrong_reminders(right, BOOK)) == []


def test_another_yard_is_refused() -> None:
    (problem,) = wrong_reminders([line(date(2026, 5, 2), "Mill Lane")], BOOK)
    assert problem.place == "line 7, “yard”"
    assert problem.what == "“Alder” stands at “Hill Top”, not at “Mill Lane”."
    assert "moved to" in problem.remedy
    assert problem.blocks


def test_another_climate_is_refused() -> None:
    yard = noted_as("yard", 9, yard="Mill Lane", climate="Birr")
    told = Line(7, on=date(2026, 4, 2), colony="Alder", yard="Mill Lane", climate="Cork Airport")
    (problem,) = wrong_reminders([told], [yard, *BOOK])
    assert problem.place == "line 7, “climate”"
    assert "has the climate “Birr” in the book" in problem.what


def test_another_queen_is_refused() -> None:
    (problem,) = wrong_reminders([line(date(2026, 5, 2), year=2026)], BOOK)
    assert "is of 2024, not of 2026" in problem.what
    assert "queen event" in problem.remedy
