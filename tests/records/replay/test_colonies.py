from datetime import date

from tests.records.samples import noted_as

from combwright.kit.catalogue import catalogue
from combwright.records.replay.colonies import standings

BOOK = [
    noted_as("colony", 1, "2026-04-01", colony="Alder", yard="Mill Lane", hive="national timber"),
    noted_as("stack", 2, "2026-04-01", colony="Alder", frames=8, supers=0, dummy_boards=1),
    noted_as("change", 3, "2026-04-10", colony="Alder", part="foundation frame", count=2),
    noted_as("change", 4, "2026-04-20", colony="Alder", part="super", count=2),
    noted_as("change", 10, "2026-04-20", colony="Alder", part="feeder", count=-1),
    noted_as("queen", 5, "2026-05-01", colony="Alder", event="introduced", queen_year=2026),
    noted_as("split", 6, "2026-05-10", colony="Alder", new_colony="Elm", hive="nuc 5 ply",
             frames_of_bees=3),
    noted_as("move", 7, "2026-06-01", colony="Alder", yard="Hill Top"),
    noted_as("harvest", 8, "2026-07-01", colony="Alder", honey_kg=11, supers=1),
    noted_as("unite", 9, "2026-08-01", colony="Elm", into="Alder"),
]  # fmt: skip


def test_a_colony_is_replayed_up_to_the_evening_of_a_day() -> None:
    assert standings(BOOK, catalogue(), date(2026, 3, 31)) == {}
    april = standings(BOOK, catalogue(), date(2026, 4, 10))["Alder"]
    assert (april.frames, april.dummy_boards, april.supers, april.queen_year) == (10, 1, 0, None)
    assert april.foundation is None  # never counted, so not known
    now = standings(BOOK, catalogue())["Alder"]
    assert (now.yard, now.supers, now.queen_year, now.ended) == ("Hill Top", 1, 2026, None)


def test_a_split_starts_where_its_mother_stood_and_a_unite_ends_it() -> None:
    elm = standings(BOOK, catalogue(), date(2026, 7, 31))["Elm"]
    assert (elm.yard, elm.hive, elm.since, elm.split_from) == (
        "Mill Lane",
        "nuc 5 ply",
        date(2026, 5, 10),
        "Alder",
    )
    assert elm.ended is None
    assert standings(BOOK, catalogue())["Elm"].ended == date(2026, 8, 1)
    assert standings(BOOK, catalogue())["Elm"].ended_by == "united"
